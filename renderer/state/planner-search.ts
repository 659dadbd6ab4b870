import { stepMinutes } from '../../core/price/labour.ts'
import { forecastInputs } from '../../core/progress/forecast-inputs.ts'
import { type Job, records } from '../../core/project/job.ts'
import { createTakeOff } from '../../core/quantities/take-off.ts'
import type { PlanBound } from '../../core/schedule/bounds.ts'
import { clashSentence } from '../../core/schedule/clash-words.ts'
import { faultSentence } from '../../core/schedule/fault-words.ts'
import { wordsOfJob } from '../../core/schedule/job-words.ts'
import type { Plan } from '../../core/schedule/model.ts'
import { jobPlanOf } from '../../core/schedule/plan-job.ts'
import { createSearch, type ScheduleSearch } from '../../core/schedule/search.ts'
import {
  type PlanningFacts,
  type TasksOfJob,
  tasksFromSpecification,
} from '../../core/schedule/tasks-from-specification.ts'
import { validateProblem } from '../../core/schedule/validate.ts'
import { createSpecify } from '../../core/specification/specify.ts'
import type { Specification } from '../../core/specification/types.ts'
import type { WorkPlan } from '../../core/work-order/work-plan.ts'
import { acceptedPlan } from './planner-accepted.ts'
import type { FoundPlan, PlanClash } from './planner-messages.ts'

/** The search of one job value, taken a slice at a time so that it can be stopped between two. */
export interface SlicedSearch {
  readonly step: () => {
    readonly isFinished: boolean
    readonly isBetter: boolean
  }
  /** The best plan so far, judged; null while there is none. */
  readonly current: () => FoundPlan | null
  /** What no plan can beat; takes a while when first asked for. Null when there can be no plan. */
  readonly bound: () => PlanBound | null
  readonly clash: () => PlanClash | null
}

/** The search runs by this seed, so that the same job gives the same plan everywhere. */
const seed = 1
/** Attempts in one slice once there is a plan; before that one at a time, so that the first plan is told at once. */
const usualSlice = 8
const takeOff = createTakeOff()
const specify = createSpecify()

export function createSliced(job: Job, now: string, promised: WorkPlan | null): SlicedSearch {
  const specification = specify(job, takeOff(job))
  const minutes = new Map(specification.steps.map((step) => [step.key, stepMinutes(job, step)]))
  const tasks = tasksFromSpecification(
    job,
    specification,
    minutes,
    planningFacts(job, specification, now, promised),
  )
  const refusal = refusalOf(job, tasks)
  if (refusal !== null) return refusedSearch(refusal)
  return slicedSearch(job, tasks, createSearch(tasks.problem, seed))
}

/** Until something was marked on site, work is planned from the job's first day; then from now on. */
function planningFacts(
  job: Job,
  specification: Specification,
  now: string,
  promised: WorkPlan | null,
): PlanningFacts {
  const hasMarks = records(job.marks).length > 0
  const kept = (acceptedPlan(job)?.plan ?? promised)?.tasks ?? []
  return {
    now: hasMarks ? now : null,
    facts: hasMarks ? forecastInputs(job, specification) : [],
    promises: kept.flatMap(({ stepKeys, startsAt, crewMemberIds }) =>
      stepKeys.map((stepKey) => ({ stepKey, startsAt, crewMemberIds })),
    ),
  }
}

function refusalOf(job: Job, tasks: TasksOfJob): PlanClash | null {
  const { problem } = tasks
  const refuse = (sentence: string): PlanClash => ({ isProved: true, sentence, taskIds: [] })
  if (problem.tasks.length === 0) return refuse('There is nothing to plan: no step is left to do.')
  if (problem.people.length === 0) return refuse('Nobody is on the crew. Add somebody on the leaf Crew.')
  const fault = validateProblem(problem)[0]
  return fault === undefined ? null : refuse(capital(faultSentence(fault, wordsOfJob(job, tasks)).sentence))
}

function refusedSearch(clash: PlanClash): SlicedSearch {
  return {
    step: () => ({ isFinished: true, isBetter: false }),
    current: () => null,
    bound: () => null,
    clash: () => clash,
  }
}

function slicedSearch(job: Job, tasks: TasksOfJob, search: ScheduleSearch): SlicedSearch {
  return {
    step: () => {
      const slice = search.best() === undefined ? 1 : usualSlice
      const isBetter = search.step(slice).length > 0
      return { isFinished: search.isFinished(), isBetter }
    },
    current: () => {
      const plan = search.best()
      return plan === undefined ? null : foundPlan(tasks, plan)
    },
    bound: () => search.bound() ?? null,
    clash: () => {
      const clash = search.clash()
      if (clash === undefined) return null
      const { sentence, ids } = clashSentence(clash.clash, wordsOfJob(job, tasks))
      return { isProved: clash.isProved, sentence: capital(sentence), taskIds: ids }
    },
  }
}

/** Judged by `verifyPlan` on the way; a plan that breaks a rule is a mistake of the program and is never shown. */
function foundPlan(tasks: TasksOfJob, plan: Plan): FoundPlan {
  const workPlan = jobPlanOf(tasks, plan)
  const [violation] = workPlan.violations
  if (violation !== undefined) throw new Error(`a plan breaks a rule: ${JSON.stringify(violation)}`)
  return { problem: tasks.problem, plan, workPlan }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
