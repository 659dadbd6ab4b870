import type { StoreApi } from 'zustand/vanilla'
import type { Ask, OpenedJob } from '../../core/contract/requests.ts'
import { diffJobs, isEmptyDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { Action } from './history.ts'
import type { JobState } from './job-state.ts'
import type { Timer } from './timer.ts'

/** One edit of the page that the book does not have yet, and the job after it. An action undone or done again is an edit of its own. */
export interface UnsentEdit {
  readonly name: string
  readonly action: Action | null
  readonly job: Job
}

/** A job as the book holds it. */
export type Held = Pick<OpenedJob, 'job' | 'revision'>

/** Older edits are taken together, which only makes a refusal name a later one. */
const longestQueue = 200

/** What is known of the way between page and book; the functions of the sender read and change it. */
export interface Sending {
  readonly ask: Ask
  readonly timer: Timer
  readonly store: StoreApi<JobState>
  readonly hasDrafts: () => boolean
  /** What the book acknowledged last. */
  held: Held | null
  unsent: readonly UnsentEdit[]
  /** Sent to a revision without being acknowledged: the book may hold one of them. */
  tries: readonly Held[]
  isDoubtful: boolean
  /** Somebody said that the book holds another revision; it has not been looked at yet. */
  hasNews: boolean
  /** Sends edit by edit, to find the one that is refused. */
  isCareful: boolean
  refusedEdit: UnsentEdit | null
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
    unsent: [],
    tries: [],
    isDoubtful: false,
    hasNews: false,
    isCareful: false,
    refusedEdit: null,
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
  own.unsent = []
  own.tries = []
  own.isDoubtful = false
  own.hasNews = false
  own.isCareful = false
  own.refusedEdit = null
  own.newer = null
  own.failed = 0
  own.activity = null
}

/** The page has moved on: remembers the edit, or forgets the last one where this one took it back. */
export function remember(own: Sending, edit: UnsentEdit): void {
  const before = own.unsent.at(-2)?.job ?? own.held?.job
  const isTakenBack =
    own.activity === null &&
    own.unsent.length > 0 &&
    before !== undefined &&
    isEmptyDiff(diffJobs(before, edit.job))
  own.unsent = isTakenBack ? own.unsent.slice(0, -1) : [...own.unsent, edit].slice(-longestQueue)
  if (own.refusedEdit === null || own.unsent[0] === own.refusedEdit) return
  own.refusedEdit = null
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
