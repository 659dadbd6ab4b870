import { applyDiff, type JobDiff, reverseDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import { changesOf, recordIn } from '../../core/project/rebase.ts'
import { sameValue } from '../../core/project/same-value.ts'

/** One thing the user did, as they would name it in "Undo ...", and the edit it made. */
export interface Deed {
  readonly name: string
  readonly diff: JobDiff
}

/** So many deeds can be undone; older ones are forgotten. What this costs in memory stands in DEVELOPERS.md. */
export const longestPast = 200

export function withDeed(past: readonly Deed[], deed: Deed): readonly Deed[] {
  return [...past, deed].slice(-longestPast)
}

/** The newest deeds that can still be taken back from `job`, which may have changed elsewhere meanwhile. */
export function stillUndoable(job: Job, past: readonly Deed[]): readonly Deed[] {
  const fitting: Deed[] = []
  let at = job
  for (const deed of past.toReversed()) {
    if (!leadsTo(at, deed.diff)) break
    fitting.unshift(deed)
    at = applyDiff(at, reverseDiff(deed.diff))
  }
  return fitting
}

/** The next deeds that can still be done again on `job`. */
export function stillRedoable(job: Job, future: readonly Deed[]): readonly Deed[] {
  const fitting: Deed[] = []
  let at = job
  for (const deed of future) {
    if (!leadsTo(at, reverseDiff(deed.diff))) break
    fitting.push(deed)
    at = applyDiff(at, deed.diff)
  }
  return fitting
}

function leadsTo(job: Job, diff: JobDiff): boolean {
  return changesOf(diff).every((change) => sameValue(recordIn(job, change), change.after))
}
