import { createStore } from 'zustand/vanilla'
import type { Ask, OpenedJob } from '../../core/contract/requests.ts'
import { applyDiff, diffJobs, isEmptyDiff, reverseDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { Outcome, Problem } from '../../core/project/problem.ts'
import { withAction } from './history.ts'
import type { JobState } from './job-state.ts'
import { createSender } from './sender.ts'
import { pageTimer, type Timer } from './timer.ts'

const nothingOpen: JobState = {
  jobKey: null,
  job: null,
  past: [],
  future: [],
  stored: 'stored',
  trouble: null,
  refused: null,
  newer: null,
  unfit: null,
  hasTakenOver: false,
  problem: null,
}

interface JobStoreParts {
  readonly timer?: Timer
  /** Something is typed and not yet taken. */
  readonly hasDrafts?: () => boolean
}

/**
 * The open job, its undo history, and the one way edits are made: an action is a new job value, its diff is remembered for undo, and
 * the sender brings the page's job into the book. Undo and redo go the same road.
 */
export function createJobStore(ask: Ask, parts: JobStoreParts = {}) {
  const store = createStore<JobState>(() => nothingOpen)
  const sender = createSender(ask, parts.timer ?? pageTimer, store, parts.hasDrafts ?? (() => false))

  function show(opened: OpenedJob): void {
    store.setState({ ...nothingOpen, jobKey: opened.jobKey, job: opened.job })
    sender.open(opened)
  }

  function close(): void {
    store.setState(nothingOpen)
    sender.open(null)
  }

  /** Makes one action of the step from the present job to `next`; a problem is shown and changes nothing. */
  function perform(name: string, next: Outcome<Job>): boolean {
    const { job, past } = store.getState()
    if (job === null) return false
    if (!next.ok) {
      store.setState({ problem: next.problem })
      return false
    }
    const diff = diffJobs(job, next.value)
    if (isEmptyDiff(diff)) return true
    const action = { name, diff }
    store.setState({
      job: next.value,
      past: withAction(past, action),
      future: [],
      problem: null,
      hasTakenOver: false,
    })
    sender.moved({ name, action, job: next.value })
    return true
  }

  function undo(): void {
    const { job, past, future } = store.getState()
    const action = past.at(-1)
    if (job === null || action === undefined) return
    const before = applyDiff(job, reverseDiff(action.diff))
    store.setState({ job: before, past: past.slice(0, -1), future: [action, ...future], problem: null })
    sender.moved({ name: `undoing: ${action.name}`, action: null, job: before })
  }

  function redo(): void {
    const { job, past, future } = store.getState()
    const [action, ...rest] = future
    if (job === null || action === undefined) return
    const after = applyDiff(job, action.diff)
    store.setState({ job: after, past: withAction(past, action), future: rest, problem: null })
    sender.moved({ name: action.name, action, job: after })
  }

  return {
    store,
    show,
    close,
    perform,
    undo,
    redo,
    refuse: (problem: Problem) => store.setState({ problem }),
    dismissProblem: () => store.setState({ problem: null }),
    dismissUnfit: () => store.setState({ unfit: null }),
    /** Sends at once what is not stored, and resolves when that was answered. */
    storeNow: sender.work,
    heard: sender.heard,
    takenOut: sender.isGone,
    reapply: sender.reapply,
    takeNewer: sender.takeNewer,
    takeBackRefused: sender.takeBackRefused,
    isEqual: sender.isEqual,
    unsent: sender.unsent,
    /** Resolves when what is being sent has been answered. */
    settled: sender.settled,
  }
}

export type JobStore = ReturnType<typeof createJobStore>
