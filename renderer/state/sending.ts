import type { StoreApi } from 'zustand/vanilla'
import type { Ask, OpenedJob } from '../../core/contract/requests.ts'
import { diffJobs, isEmptyDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { Deed } from './history.ts'
import type { JobState } from './job-state.ts'
import type { Timer } from './timer.ts'

/** One step of the page that the book does not have yet, and the job after it. A deed undone or done again is a step of its own. */
export interface Step {
  readonly name: string
  readonly deed: Deed | null
  readonly job: Job
}

/** A job as the book holds it. */
export type Held = Pick<OpenedJob, 'job' | 'revision'>

/** Older steps are taken together, which only makes a refusal name a later one. */
const longestQueue = 200

/** What is known of the way between page and book; the functions of the sender read and change it. */
export interface Sending {
  readonly ask: Ask
  readonly timer: Timer
  readonly store: StoreApi<JobState>
  readonly hasDrafts: () => boolean
  /** What the book acknowledged last. */
  held: Held | null
  steps: readonly Step[]
  /** Sent to a revision without being acknowledged: the book may hold one of them. */
  tries: readonly Held[]
  isDoubtful: boolean
  /** Somebody said that the book holds another revision; it has not been looked at yet. */
  hasNews: boolean
  /** Sends step by step, to find the one that is refused. */
  isCareful: boolean
  refusedStep: Step | null
  /** A state of the book made elsewhere, while the page has edits of its own. */
  newer: Held | null
  /** How often sending has failed in a row. */
  failed: number
  stopWaiting: () => void
  activity: Promise<void> | null
  /** There may be more to do than when the last look at it was taken. */
  isWanted: boolean
  /** Rises with every job put on the table, so that late answers about another one are dropped. */
  turn: number
}

export function createSending(parts: Pick<Sending, 'ask' | 'timer' | 'store' | 'hasDrafts'>): Sending {
  return {
    ...parts,
    held: null,
    steps: [],
    tries: [],
    isDoubtful: false,
    hasNews: false,
    isCareful: false,
    refusedStep: null,
    newer: null,
    failed: 0,
    stopWaiting: () => undefined,
    activity: null,
    isWanted: false,
    turn: 0,
  }
}

/** Begins with a job put on the table, or with none; answers on their way about the one before are dropped. */
export function openSending(own: Sending, opened: OpenedJob | null): void {
  own.turn++
  own.stopWaiting()
  own.held = opened
  own.steps = []
  own.tries = []
  own.isDoubtful = false
  own.hasNews = false
  own.isCareful = false
  own.refusedStep = null
  own.newer = null
  own.failed = 0
  own.activity = null
}

/** The page has moved on: remembers the step, or forgets the last one where this one took it back. */
export function remember(own: Sending, step: Step): void {
  const before = own.steps.at(-2)?.job ?? own.held?.job
  const isTakenBack =
    own.activity === null &&
    own.steps.length > 0 &&
    before !== undefined &&
    isEmptyDiff(diffJobs(before, step.job))
  own.steps = isTakenBack ? own.steps.slice(0, -1) : [...own.steps, step].slice(-longestQueue)
  if (own.refusedStep === null || own.steps[0] === own.refusedStep) return
  own.refusedStep = null
  own.store.setState({ refused: null })
}

/** The page shows what that state of the book holds, and nothing is being typed. */
export function ownsNothing(
  own: Sending,
  book: Held,
  job: Job,
  typing: () => boolean = own.hasDrafts,
): boolean {
  return isEmptyDiff(diffJobs(book.job, job)) && !typing()
}

/** Told by whoever hears of a revision of the open job; true where the book must be asked because that one is not known. */
export function noteNews(own: Sending, revision: number): boolean {
  if (own.activity !== null || own.held === null || own.held.revision === revision) return false
  if (
    own.newer?.revision === revision &&
    !ownsNothing(own, own.held, own.store.getState().job ?? own.held.job)
  )
    return false
  own.hasNews = true
  return true
}
