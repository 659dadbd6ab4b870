import type { Job } from '../../core/project/job.ts'
import type { Problem } from '../../core/project/problem.ts'
import type { EditClash } from '../../core/project/rebase.ts'
import type { Action } from './history.ts'

/** Own edits that are not in the job any more, kept to be read and copied. */
export interface Unfit {
  readonly clashes: readonly EditClash[]
  /** The job they were made in. */
  readonly job: Job
  /** The user left them; otherwise they could not be had beside what changed elsewhere. */
  readonly isByChoice: boolean
}

export interface JobState {
  readonly jobKey: string | null
  readonly job: Job | null
  readonly past: readonly Action[]
  readonly future: readonly Action[]
  /**
   * How the page stands to the book: equal; being sent; sent again by itself after a failure; an edit refused by the book; a newer
   * state there while the page has edits of its own; the job taken out of the book.
   */
  readonly stored: 'stored' | 'storing' | 'notStored' | 'refused' | 'behind' | 'gone'
  /** Why it is not stored, and the pause before the next try (ms). */
  readonly trouble: { readonly problem: Problem; readonly pause: number } | null
  readonly refused: { readonly name: string; readonly problem: Problem } | null
  /** The newer state in the book, while the page has edits of its own. */
  readonly newer: Job | null
  readonly unfit: Unfit | null
  /** A newer state was taken over since the last action. */
  readonly hasTakenOver: boolean
  /** The last refusal or failure, shown in words until dismissed or the next action. */
  readonly problem: Problem | null
}
