import { createStore } from 'zustand/vanilla'
import type { Ask, OpenedJob } from '../../core/contract/requests.ts'
import { applyDiff, diffJobs, isEmptyDiff, type JobDiff, reverseDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { Outcome, Problem } from '../../core/project/problem.ts'

/** One thing the user did, as they would name it in "Undo ...", and the edit it made. */
export interface Deed {
  readonly name: string
  readonly diff: JobDiff
}

export interface JobState {
  readonly jobKey: string | null
  readonly job: Job | null
  readonly past: readonly Deed[]
  readonly future: readonly Deed[]
  readonly stored: 'stored' | 'storing' | 'notStored'
  /** The last refusal or failure, shown in words until dismissed or the next deed. */
  readonly problem: Problem | null
}

const nothingOpen: JobState = {
  jobKey: null,
  job: null,
  past: [],
  future: [],
  stored: 'stored',
  problem: null,
}

/**
 * The open job, its undo history, and the one way edits are made and stored: a deed is a new job value, its diff is recorded
 * once and sent to the host in order. Undo and redo send reversed diffs by the same road.
 */
export function createJobStore(ask: Ask) {
  const store = createStore<JobState>(() => nothingOpen)
  let revision = 0
  let sending: Promise<void> = Promise.resolve()

  function show(opened: OpenedJob): void {
    revision = opened.revision
    store.setState({ ...nothingOpen, jobKey: opened.jobKey, job: opened.job })
  }

  function send(diff: JobDiff): void {
    const { jobKey } = store.getState()
    if (jobKey === null) return
    store.setState({ stored: 'storing' })
    sending = sending.then(async () => {
      const answer = await ask('storeEdit', { jobKey, revision, diff })
      if (store.getState().jobKey !== jobKey) return
      if (answer.ok) {
        revision = answer.value.revision
        store.setState({ stored: 'stored' })
      } else {
        store.setState({ stored: 'notStored', problem: answer.problem })
      }
    })
  }

  /** Makes one deed of the step from the present job to `next`; a problem is shown and changes nothing. */
  function perform(name: string, next: Outcome<Job>): boolean {
    const { job, past } = store.getState()
    if (job === null) return false
    if (!next.ok) {
      store.setState({ problem: next.problem })
      return false
    }
    const diff = diffJobs(job, next.value)
    if (isEmptyDiff(diff)) return true
    store.setState({ job: next.value, past: [...past, { name, diff }], future: [], problem: null })
    send(diff)
    return true
  }

  function undo(): void {
    const { job, past, future } = store.getState()
    const deed = past.at(-1)
    if (job === null || deed === undefined) return
    const back = reverseDiff(deed.diff)
    store.setState({
      job: applyDiff(job, back),
      past: past.slice(0, -1),
      future: [deed, ...future],
      problem: null,
    })
    send(back)
  }

  function redo(): void {
    const { job, past, future } = store.getState()
    const [deed, ...rest] = future
    if (job === null || deed === undefined) return
    store.setState({ job: applyDiff(job, deed.diff), past: [...past, deed], future: rest, problem: null })
    send(deed.diff)
  }

  return {
    store,
    show,
    perform,
    undo,
    redo,
    refuse: (problem: Problem) => store.setState({ problem }),
    dismissProblem: () => store.setState({ problem: null }),
    close: () => store.setState(nothingOpen),
    /** Resolves when everything sent so far has been answered. */
    settled: () => sending,
  }
}

export type JobStore = ReturnType<typeof createJobStore>
