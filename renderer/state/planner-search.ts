import { gatherPasses } from '../../core/passes/gather.ts'
import { minutesByStep } from '../../core/price/labour.ts'
import type { PaidPlan } from '../../core/price/paid-plan.ts'
import { forecastInputs } from '../../core/progress/forecast-inputs.ts'
import { type Job, records } from '../../core/project/job.ts'
import { sameValue } from '../../core/project/same-value.ts'
import { createTakeOff } from '../../core/quantities/take-off.ts'
import { boundOf, type PlanBound } from '../../core/schedule/bound/bound.ts'
import {
  type Busy,
  type PlanningFacts,
  type ProblemOfJob,
  problemOfJob,
} from '../../core/schedule/job/problem-of-job.ts'
import { jobPlanOf } from '../../core/schedule/job-plan.ts'
import { createKeepingSearch } from '../../core/schedule/keeping-search.ts'
import type { Plan } from '../../core/schedule/model.ts'
import { refusalOf } from '../../core/schedule/plan-job.ts'
import { firstPlanToPay } from '../../core/schedule/plan-to-pay.ts'
import type { ScheduleSearch } from '../../core/schedule/tries/search.ts'
import { clashSentence } from '../../core/schedule/words/clash-words.ts'
import { wordsOfJob } from '../../core/schedule/words/job-words.ts'
import { createSpecify } from '../../core/specification/specify.ts'
import type { Specification } from '../../core/specification/types.ts'
import { capital } from '../../core/words/text.ts'
import type { WorkPlan } from '../../core/work-order/work-plan.ts'
import { acceptedPlan } from './planner-accepted.ts'
import type { FoundPlan, PlanClash } from './planner-messages.ts'

/** The search of one job value, taken a slice at a time so that it can be stopped between two. */
export interface SlicedSearch {
  readonly step: () => {
    readonly isFinished: boolean
    readonly isBetter: boolean
  }
  /** It was looked for long enough for its dates to be an answer; a first plan is a guess. */
  readonly isSettled: () => boolean
  /** The best plan so far, judged; null while there is none. */
  readonly current: () => FoundPlan | null
  /** What no plan can beat; takes a while when first asked for. Null when there can be no plan. */
  readonly bound: () => PlanBound | null
  readonly clash: () => PlanClash | null
}

/** The search runs by this seed, so that the same job gives the same plan everywhere. */
export const seed = 1
/** Before so many tries a plan is a first guess: all of a foreman's rules and as many changes several times over. Shop assumption. */
const triesToSettle = 1200
/** Attempts in one slice once there is a plan; before that one at a time, so that the first plan is told at once. */
const usualSlice = 16
const takeOff = createTakeOff()
const specify = createSpecify()

/** A search made before it is asked for, with its first plan. */
export interface PreparedSearch {
  readonly job: Job
  readonly now: string
  readonly busy: Busy
  readonly search: SlicedSearch
}

/** The plan that labor of the job is priced by while none is accepted. */
export function planToPayOf(job: Job): PaidPlan | null {
  const specification = specify(job, takeOff(job))
  const minutes = minutesByStep(job, specification)
  return firstPlanToPay(job, specification, minutes)
}

export function prepareSearch(job: Job, now: string, busy: Busy = {}): PreparedSearch {
  const search = createSliced(job, now, null, busy)
  search.step()
  search.current()
  return { job, now, busy, search }
}

/** The prepared search where it is of what is asked for, else a new one. The moment matters only once something was marked on site. */
export function searchAsked(
  prepared: PreparedSearch | null,
  job: Job,
  now: string,
  shown: WorkPlan | null,
  busy: Busy = {},
): SlicedSearch {
  const isSame =
    prepared?.job === job &&
    shown === null &&
    sameValue(prepared.busy, busy) &&
    (prepared.now === now || records(job.marks).length === 0)
  return isSame ? prepared.search : createSliced(job, now, shown, busy)
}

/** `shown` is the plan on screen, to which a new one stays near; `busy` when people of the crew are on other jobs. */
export function createSliced(job: Job, now: string, shown: WorkPlan | null, busy: Busy = {}): SlicedSearch {
  const { asked, keeps } = askedOf(job, now, shown, busy)
  const refusal = refusalOf(job, asked)
  if (refusal !== null) return refusedSearch({ isProved: true, sentence: refusal.sentence, taskIds: [] })
  return slicedSearch(job, asked, createKeepingSearch(asked, keeps, seed))
}

/** The job as a problem, and the plan a new one keeps to. */
export function askedOf(
  job: Job,
  now: string,
  shown: WorkPlan | null,
  busy: Busy,
): { readonly asked: ProblemOfJob; readonly keeps: PlanningFacts['keeps'] } {
  const specification = specify(job, takeOff(job))
  const minutes = minutesByStep(job, specification)
  const passes = gatherPasses(job, specification, minutes)
  const facts = planningFacts(job, specification, now, shown, busy)
  return { asked: problemOfJob(job, specification, passes, minutes, facts), keeps: facts.keeps }
}

/** Until something was marked on site, work is planned from the job's first day; then from now on. */
function planningFacts(
  job: Job,
  specification: Specification,
  now: string,
  shown: WorkPlan | null,
  busy: Busy,
): PlanningFacts {
  const hasMarks = records(job.marks).length > 0
  const accepted = acceptedPlan(job)?.plan
  const kept = accepted ?? shown
  return {
    now: hasMarks ? now : null,
    facts: hasMarks ? forecastInputs(job, specification) : [],
    keeps: kept == null ? null : { as: accepted === undefined ? 'shown' : 'promised', tasks: kept.tasks },
    busy,
  }
}

function refusedSearch(clash: PlanClash): SlicedSearch {
  return {
    step: () => ({ isFinished: true, isBetter: false }),
    isSettled: () => true,
    current: () => null,
    bound: () => null,
    clash: () => clash,
  }
}

function slicedSearch(job: Job, tasks: ProblemOfJob, search: ScheduleSearch): SlicedSearch {
  let found: FoundPlan | null = null
  let bound: PlanBound | null = null
  let tries = 0
  return {
    step: () => {
      const slice = search.best() === undefined ? 1 : usualSlice
      const isBetter = search.step(slice)
      tries += slice
      return { isFinished: search.isFinished(), isBetter }
    },
    isSettled: () => search.isFinished() || tries >= triesToSettle,
    current: () => {
      const plan = search.best()
      if (plan !== undefined && found?.plan !== plan) found = foundPlan(tasks, plan)
      return found
    },
    bound: () => {
      bound ??= boundOf(tasks.problem)
      return bound
    },
    clash: () => {
      const clash = search.clash()
      if (clash === undefined) return null
      const { sentence, ids } = clashSentence(clash, wordsOfJob(job, tasks))
      return { isProved: false, sentence: capital(sentence), taskIds: ids }
    },
  }
}

/** Judged by `verifyPlan` on the way; a plan that breaks a rule is a mistake of the program and is never shown. */
export function foundPlan(tasks: ProblemOfJob, plan: Plan): FoundPlan {
  const workPlan = jobPlanOf(tasks, plan)
  const [violation] = workPlan.violations
  if (violation !== undefined) throw new Error(`a plan breaks a rule: ${JSON.stringify(violation)}`)
  return { problem: tasks.problem, plan, workPlan }
}
