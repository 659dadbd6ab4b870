import type { PaidPlan } from '../../core/price/paid-plan.ts'
import type { JobDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { PlanAim } from '../../core/project/vocabulary.ts'
import type { PlanBound } from '../../core/schedule/bound/bound.ts'
import type { Busy } from '../../core/schedule/job/problem-of-job.ts'
import type { JobPlan } from '../../core/schedule/job-plan.ts'
import type { Plan, ScheduleProblem } from '../../core/schedule/model.ts'
import type { WorkPlan } from '../../core/work-order/work-plan.ts'

/** A plan that `verifyPlan` has passed, with the problem it solves. */
export interface FoundPlan {
  readonly problem: ScheduleProblem
  readonly plan: Plan
  readonly workPlan: JobPlan
}

/** Why there is no plan, named; `isProved` only where none can exist. */
export interface PlanClash {
  readonly isProved: boolean
  readonly sentence: string
  readonly taskIds: readonly string[]
}

/** Two searches can run beside each other: of the job as it is, and of a change being thought about. */
export type SearchName = 'present' | 'trial'

/**
 * The worker is told the job once and then what changed, so that records left alone stay the same objects there and what was worked
 * out from them is remembered.
 */
export type JobNews = { readonly job: Job } | { readonly edit: JobDiff }

export type PlannerAsk =
  /** Tells the job ahead of time, so that its first plan is there at once when it is asked for. */
  | { readonly kind: 'prepare'; readonly news: JobNews; readonly now: string; readonly busy: Busy }
  | {
      readonly kind: 'search'
      readonly search: SearchName
      readonly turn: number
      readonly news: JobNews
      readonly now: string
      /** The plan on screen, kept near to while none is accepted; null looks without regard to any plan. */
      readonly shown: WorkPlan | null
      /** The plan on screen is of this very job and was looked for long enough: it is no first guess while it stands. */
      readonly isShownSettled: boolean
      readonly busy: Busy
      /** After so long it rests; what it has by then stands. */
      readonly seconds: number
    }
  /** Goes on where the search stood. */
  | { readonly kind: 'goOn'; readonly search: SearchName; readonly seconds: number }
  | { readonly kind: 'stop'; readonly search: SearchName }
  /** Asks for the plan that labor is priced by while none is accepted. */
  | { readonly kind: 'pay'; readonly turn: number; readonly news: JobNews }
  /** Looks for one plan of each aim, each for so many seconds. */
  | {
      readonly kind: 'compare'
      readonly turn: number
      readonly news: JobNews
      readonly now: string
      readonly shown: WorkPlan | null
      readonly busy: Busy
      readonly seconds: number
    }
  | { readonly kind: 'stopComparing' }

/** What a worker tells the page: of a search, of a comparison, or the plan to pay. */
export type PlannerTell = SearchTell | ComparisonTell | PaidTell

/** A comparison as far as it is; it is over when it says so. */
interface ComparisonTell {
  readonly kind: 'compared'
  readonly turn: number
  /** Of the time it has, 0 to 1. */
  readonly share: number
  readonly plans: ReadonlyMap<PlanAim, FoundPlan>
  readonly isOver: boolean
  readonly broken: string | null
}

interface PaidTell {
  readonly kind: 'paid'
  readonly turn: number
  readonly paid: PaidPlan | null
}

/** `turn` is that of the `search` answered; answers to an older one are dropped. */
export type SearchTell = { readonly search: SearchName; readonly turn: number } & (
  | { readonly kind: 'found'; readonly found: FoundPlan; readonly isSettled: boolean }
  /** It was looked for long enough: the plan told last is no first guess any more. */
  | { readonly kind: 'settled' }
  /** Follows the first plan of a search, which does not wait for it. */
  | { readonly kind: 'bound'; readonly bound: PlanBound }
  | { readonly kind: 'clash'; readonly clash: PlanClash }
  | { readonly kind: 'rest'; readonly isFinished: boolean }
  | { readonly kind: 'broken'; readonly sentence: string }
)
