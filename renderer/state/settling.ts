import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import { changesOf, rebaseJob } from '../../core/project/rebase.ts'
import { stillRedoable, stillUndoable } from './history.ts'
import type { Unfit } from './job-state.ts'
import type { Held, Sending } from './sending.ts'

/** Shows a state of the book in the place of the page's own. */
export function takeOver(own: Sending, state: Held, unfit: Unfit | null = null): void {
  settleOn(own, state, state.job, unfit)
  own.unsent = []
  own.store.setState({ stored: 'stored', hasTakenOver: true })
}

/** From now on the page counts from this state of the book and shows `job`. */
function settleOn(own: Sending, state: Held, job: Job, unfit: Unfit | null): void {
  const { past, future } = own.store.getState()
  own.held = state
  own.newer = null
  own.tries = []
  own.isCareful = false
  own.refusedEdit = null
  own.store.setState({
    job,
    past: stillUndoable(job, past),
    future: stillRedoable(job, future),
    newer: null,
    refused: null,
    trouble: null,
    unfit,
  })
}

/** Puts the page's own edits on top of the newer state; those that do not fit are told. False where there are none. */
export function reapply(own: Sending): boolean {
  const { job: mine } = own.store.getState()
  if (own.held === null || own.newer === null || mine === null) return false
  const earlier = own.tries.map((each) => each.job)
  const { job, clashes } = rebaseJob(own.held.job, mine, own.newer.job, earlier)
  settleOn(own, own.newer, job, clashes.length === 0 ? null : { clashes, job: mine, isByChoice: false })
  own.unsent = [{ name: 'your edits on top of the newer ones', action: null, job }]
  return true
}

/** Leaves the page's own edits; they stay to be copied until dismissed. */
export function takeNewer(own: Sending): void {
  const { job: mine } = own.store.getState()
  if (own.held === null || own.newer === null || mine === null) return
  const left = changesOf(diffJobs(own.held.job, mine))
  const clashes = left.map((change) => ({ change, why: 'changedThere' as const, problem: null }))
  takeOver(own, own.newer, clashes.length === 0 ? null : { clashes, job: mine, isByChoice: true })
}

/** Takes back the action that the book refuses and keeps what was done after it, where that stands without it. False where none is refused. */
export function takeBackRefused(own: Sending): boolean {
  const { job: mine, past } = own.store.getState()
  const bad = own.refusedEdit
  if (own.held === null || mine === null || bad === null) return false
  const { job, clashes } = rebaseJob(bad.job, mine, own.held.job)
  own.store.setState({ past: past.filter((action) => action !== bad.action) })
  settleOn(own, own.held, job, clashes.length === 0 ? null : { clashes, job: mine, isByChoice: false })
  own.unsent = job === own.held.job ? [] : [{ name: 'what was done since', action: null, job }]
  return true
}
