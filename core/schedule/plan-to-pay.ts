import { gatherPasses } from '../passes/gather.ts'
import type { MinutesByStep, Passes } from '../passes/pass-types.ts'
import type { PaidPlan } from '../price/paid-plan.ts'
import { lastAcceptedPlan } from '../project/accepted-plan.ts'
import type { Job } from '../project/job.ts'
import type { Specification } from '../specification/types.ts'
import { planJob } from './plan-job.ts'
import { triesFor } from './tries/tries-for.ts'

/** A first plan has a fixed seed and number of tries, so that the same job always has the same price. */
const firstPlanSeed = 1
const mostTries = 1000
const leastTries = 12

/** The plan that labor is priced by: the accepted one, else a first plan as if nothing had happened; null where no plan can be made. */
export function planToPay(
  job: Job,
  specification: Specification,
  minutes: MinutesByStep,
  passes?: Passes,
): PaidPlan | null {
  return acceptedPlanToPay(job) ?? firstPlanToPay(job, specification, minutes, passes)
}

/** The pay of the plan accepted last. Plans accepted before attendance was kept with them have none. */
export function acceptedPlanToPay(job: Job): PaidPlan | null {
  const body = lastAcceptedPlan(job)?.body
  if (body === undefined || body.version === null) return null
  const { days, tasks } = body.plan
  return days === undefined ? null : { from: 'accepted', days, tasks }
}

/** A first plan of the job as if nothing had happened, the same one each time; null where there is none. */
export function firstPlanToPay(
  job: Job,
  specification: Specification,
  minutes: MinutesByStep,
  passes: Passes = gatherPasses(job, specification, minutes),
): PaidPlan | null {
  const iterations = triesFor(passes.passes.length, mostTries, leastTries)
  const options = { seed: firstPlanSeed, iterations }
  const plan = planJob({ ...job, pins: {} }, specification, minutes, options, passes)
  return plan.ok ? { from: 'first', days: plan.value.days, tasks: plan.value.tasks } : null
}
