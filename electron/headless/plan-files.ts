import { gatherPasses } from '../../core/passes/gather.ts'
import { estimate } from '../../core/price/estimate.ts'
import { minutesByStep } from '../../core/price/labour.ts'
import { forecastInputs } from '../../core/progress/forecast-inputs.ts'
import { type Job, records } from '../../core/project/job.ts'
import { type Outcome, succeed } from '../../core/project/problem.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { planJob } from '../../core/schedule/plan-job.ts'
import { planToPay } from '../../core/schedule/plan-to-pay.ts'
import { triesFor } from '../../core/schedule/tries/tries-for.ts'
import { specify } from '../../core/specification/specify.ts'
import { headlessOutputs } from '../../core/work-order/outputs.ts'
import type { PlanFiles } from './plan-command.ts'

/** The same job always gives the same plan: fixed seed, fixed number of attempts. */
const seed = 1
const mostTries = 30_000
const leastTries = 20

/**
 * Takes the job through the whole chain. Work that is marked stays where it was, and the plan is made at the moment of the last mark;
 * without marks it is made for the job's first day.
 *
 * @param madeAt moment on site, `2027-03-31T08:30`
 * @param say is told what is worked on, before it is
 */
export function planFiles(job: Job, madeAt: string, say: (line: string) => void): Outcome<PlanFiles> {
  say(`Measuring ${counted(records(job.rooms).length, 'room')} …`)
  const takeoff = takeOff(job)
  say(`Specifying ${counted(takeoff.surfaces.length, 'surface')} …`)
  const specification = specify(job, takeoff)
  const minutes = minutesByStep(job, specification)
  const passes = gatherPasses(job, specification, minutes)
  const planning = { now: lastMark(job), facts: forecastInputs(job, specification), keeps: null, busy: {} }
  const count = passes.passes.length
  say(`Planning ${specification.steps.length} steps in ${count === 1 ? '1 pass' : `${count} passes`} …`)
  const iterations = triesFor(count, mostTries, leastTries)
  const plan = planJob(job, specification, minutes, { seed, iterations, planning }, passes)
  if (!plan.ok) return plan
  say(`Pricing ${counted(plan.value.tasks.length, 'task')} and writing the papers …`)
  const priced = estimate(job, takeoff, specification, planToPay(job, specification, minutes, passes))
  return succeed(headlessOutputs({ job, takeoff, specification, estimate: priced, plan: plan.value, madeAt }))
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}

function lastMark(job: Job): string | null {
  return (
    records(job.marks)
      .map((mark) => mark.at)
      .toSorted()
      .at(-1) ?? null
  )
}
