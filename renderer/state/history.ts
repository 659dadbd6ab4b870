import { applyDiff, type JobDiff, reverseDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import { changesOf, recordIn } from '../../core/project/rebase.ts'
import { sameValue } from '../../core/project/same-value.ts'

/** One thing the user did, as they would name it in "Undo ...", and the edit it made. */
export interface Action {
  readonly name: string
  readonly diff: JobDiff
}

/** So many actions can be undone; older ones are forgotten. What this costs in memory stands in DEVELOPERS.md. */
export const longestPast = 200

export function withAction(past: readonly Action[], action: Action): readonly Action[] {
  return [...past, action].slice(-longestPast)
}

/** The newest actions that can still be taken back from `job`, which may have changed elsewhere meanwhile. */
export function stillUndoable(job: Job, past: readonly Action[]): readonly Action[] {
  const fitting: Action[] = []
  let at = job
  for (const action of past.toReversed()) {
    if (!leadsTo(at, action.diff)) break
    fitting.unshift(action)
    at = applyDiff(at, reverseDiff(action.diff))
  }
  return fitting
}

/** The next actions that can still be done again on `job`. */
export function stillRedoable(job: Job, future: readonly Action[]): readonly Action[] {
  const fitting: Action[] = []
  let at = job
  for (const action of future) {
    if (!leadsTo(at, reverseDiff(action.diff))) break
    fitting.push(action)
    at = applyDiff(at, action.diff)
  }
  return fitting
}

function leadsTo(job: Job, diff: JobDiff): boolean {
  return changesOf(diff).every((change) => sameValue(recordIn(job, change), change.after))
}
