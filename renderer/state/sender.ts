import type { StoreApi } from 'zustand/vanilla'
import type { Ask, OpenedJob } from '../../core/contract/requests.ts'
import { diffJobs, isEmptyDiff } from '../../core/project/diff.ts'
import { graftJob, sameJob } from '../../core/project/graft.ts'
import type { Job } from '../../core/project/job.ts'
import type { Problem } from '../../core/project/problem.ts'
import { changesOf, rebaseJob } from '../../core/project/rebase.ts'
import { type Deed, stillRedoable, stillUndoable } from './history.ts'
import type { JobState, Unfit } from './job-store.ts'
import { answerOf, isFailure, isJobGone, pauseAfter } from './road.ts'
import type { Timer } from './timer.ts'

/** One step of the page that the book does not have yet, and the job after it. A deed undone or done again is a step of its own. */
interface Step {
  readonly name: string
  readonly deed: Deed | null
  readonly job: Job
}

/** A job as the book holds it. */
type Held = Pick<OpenedJob, 'job' | 'revision'>

/** Older steps are taken together, which only makes a refusal name a later one. */
const longestQueue = 200
/** Sent states whose answer was lost are remembered this far back. */
const longestDoubt = 100

/**
 * Brings the page's job into the book: keeps what the book acknowledged last, and sends the difference from there to the page, one
 * request at a time. What fails is sent again by itself, what is refused waits for the user, and a newer state in the book is taken
 * over where the page has nothing of its own.
 */
export function createSender(ask: Ask, timer: Timer, store: StoreApi<JobState>, hasDrafts: () => boolean) {
  let held: Held | null = null
  let steps: readonly Step[] = []
  /** Sent to a revision without being acknowledged: the book may hold one of them. */
  let tries: readonly Held[] = []
  let isDoubtful = false
  let hasNews = false
  /** Sends step by step, to find the one that is refused. */
  let isCareful = false
  let refusedStep: Step | null = null
  let newer: Held | null = null
  let failed = 0
  let stopWaiting: () => void = () => undefined
  let activity: Promise<void> | null = null
  /** There may be more to do than when the last look at it was taken. */
  let isWanted = false
  /** Rises with every job put on the table, so that late answers about another one are dropped. */
  let turn = 0

  function open(opened: OpenedJob | null): void {
    turn++
    stopWaiting()
    held = opened
    steps = []
    tries = []
    isDoubtful = false
    hasNews = false
    isCareful = false
    refusedStep = null
    newer = null
    failed = 0
    activity = null
  }

  /** The page has moved on: remembers the step, or forgets the last one where this one took it back. */
  function moved(step: Step): void {
    const before = steps.at(-2)?.job ?? held?.job
    const isTakenBack =
      activity === null && steps.length > 0 && before !== undefined && isEmptyDiff(diffJobs(before, step.job))
    steps = isTakenBack ? steps.slice(0, -1) : [...steps, step].slice(-longestQueue)
    if (refusedStep !== null && steps[0] !== refusedStep) forgetRefusal()
    void work()
  }

  function forgetRefusal(): void {
    refusedStep = null
    store.setState({ refused: null })
  }

  /** Does what there is to do until nothing is left, or something has to be waited for. */
  function work(): Promise<void> {
    isWanted = true
    activity ??= run(turn)
    return activity
  }

  async function run(mine: number): Promise<void> {
    let goesOn = true
    while (mine === turn && (goesOn || isWanted)) {
      isWanted = false
      stopWaiting()
      goesOn = await next(mine)
    }
    if (mine === turn) activity = null
  }

  async function next(mine: number): Promise<boolean> {
    const { jobKey, job, stored } = store.getState()
    if (jobKey === null || job === null || held === null || stored === 'gone') return false
    if (newer !== null && !hasNews) {
      const isFree = ownsNothing(held, job)
      if (isFree) takeOver(newer)
      else store.setState({ stored: 'behind', newer: newer.job })
      return isFree
    }
    if (isDoubtful || hasNews) return look(mine, jobKey, held)
    if (refusedStep !== null) return false
    const sent = isCareful ? (steps[0]?.job ?? job) : job
    const diff = diffJobs(held.job, sent)
    if (isEmptyDiff(diff)) return acknowledge({ job: sent, revision: held.revision })
    store.setState({ stored: 'storing' })
    const { revision } = held
    const answer = await answerOf(timer, ask('storeEdit', { jobKey, revision, diff }))
    if (mine !== turn) return false
    if (answer.ok) return acknowledge({ job: sent, revision: answer.value.revision })
    return judge(answer.problem, { job: sent, revision }, mine, jobKey)
  }

  async function judge(problem: Problem, sent: Held, mine: number, jobKey: string): Promise<boolean> {
    if (problem.kind === 'staleEdit' || isJobGone(problem, jobKey)) {
      const goesOn = await look(mine, jobKey, sent)
      // A book that calls an edit stale and then shows the same revision would be asked for ever.
      return goesOn && held?.revision === sent.revision && newer === null ? fails(problem) : goesOn
    }
    if (isFailure(problem)) {
      tries = [...tries, sent].slice(-longestDoubt)
      isDoubtful ||= problem.kind === 'hostFailed'
      return fails(problem)
    }
    if (!isCareful && steps.length > 1) {
      isCareful = true
      return true
    }
    refusedStep = steps[0] ?? { name: 'the last edit', deed: null, job: sent.job }
    store.setState({ stored: 'refused', refused: { name: refusedStep.name, problem }, trouble: null })
    return false
  }

  /** Looks what the book holds now: an own edit whose answer was lost, or what another window made. */
  async function look(mine: number, jobKey: string, from: Held): Promise<boolean> {
    const answer = await answerOf(timer, ask('openJob', { jobKey }))
    const { job } = store.getState()
    if (mine !== turn || job === null) return false
    if (!answer.ok) return isJobGone(answer.problem, jobKey) ? isGone() : fails(answer.problem)
    const known = [job, ...tries.map((each) => each.job).toReversed(), from.job, (held ?? from).job]
    const found = { job: graftJob(answer.value.job, known), revision: answer.value.revision }
    isDoubtful = false
    hasNews = false
    failed = 0
    const isOwn = known.some((each) => sameJob(each, found.job))
    if (!isOwn) newer = found
    else {
      held = found
      newer = null
      tries = tries.filter((each) => each.revision >= found.revision)
      store.setState({ newer: null })
    }
    return true
  }

  function acknowledge(now: Held): boolean {
    held = now
    failed = 0
    tries = tries.filter((each) => each.revision >= now.revision)
    const { job } = store.getState()
    const at = steps.findLastIndex((step) => step.job === now.job)
    const isEqual = job !== null && isEmptyDiff(diffJobs(now.job, job))
    if (isEqual) steps = []
    else if (at >= 0) steps = steps.slice(at + 1)
    else if (job !== null) steps = [{ name: 'the last edit', deed: null, job }]
    if (isEqual) isCareful = false
    store.setState({ trouble: null, stored: isEqual ? 'stored' : 'storing' })
    return !isEqual
  }

  function fails(problem: Problem): boolean {
    const { job } = store.getState()
    if (held === null || job === null) return false
    if (!isDoubtful && ownsNothing(held, job, () => false)) {
      // Only the look for news failed; it is made again when news come again.
      hasNews = false
      return false
    }
    const pause = pauseAfter(failed)
    failed++
    stopWaiting = timer.after(pause, () => void work())
    store.setState({ stored: 'notStored', trouble: { problem, pause } })
    return false
  }

  function isGone(): boolean {
    store.setState({ stored: 'gone', trouble: null, newer: null })
    return false
  }

  function ownsNothing(book: Held, job: Job, typing: () => boolean = hasDrafts): boolean {
    return isEmptyDiff(diffJobs(book.job, job)) && !typing()
  }

  function takeOver(state: Held, unfit: Unfit | null = null): void {
    settleOn(state, state.job, unfit)
    steps = []
    store.setState({ stored: 'stored', hasTakenOver: true })
  }

  /** From now on the page counts from this state of the book and shows `job`. */
  function settleOn(state: Held, job: Job, unfit: Unfit | null): void {
    const { past, future } = store.getState()
    held = state
    newer = null
    tries = []
    isCareful = false
    refusedStep = null
    store.setState({
      job,
      past: stillUndoable(job, past),
      future: stillRedoable(job, future),
      newer: null,
      refused: null,
      trouble: null,
      unfit,
    })
  }

  /** Puts the page's own edits on top of the newer state; those that do not fit are told. */
  function reapply(): void {
    const { job: mine } = store.getState()
    if (held === null || newer === null || mine === null) return
    const earlier = tries.map((each) => each.job)
    const { job, clashes } = rebaseJob(held.job, mine, newer.job, earlier)
    settleOn(newer, job, clashes.length === 0 ? null : { clashes, job: mine, isByChoice: false })
    steps = [{ name: 'your edits on top of the newer ones', deed: null, job }]
    void work()
  }

  /** Leaves the page's own edits; they stay to be copied until dismissed. */
  function takeNewer(): void {
    const { job: mine } = store.getState()
    if (held === null || newer === null || mine === null) return
    const left = changesOf(diffJobs(held.job, mine))
    const clashes = left.map((change) => ({ change, why: 'changedThere' as const, problem: null }))
    takeOver(newer, clashes.length === 0 ? null : { clashes, job: mine, isByChoice: true })
  }

  /** Takes back the deed that the book refuses and keeps what was done after it, where that stands without it. */
  function takeBackRefused(): void {
    const { job: mine, past } = store.getState()
    const bad = refusedStep
    if (held === null || mine === null || bad === null) return
    const { job, clashes } = rebaseJob(bad.job, mine, held.job)
    store.setState({ past: past.filter((deed) => deed !== bad.deed) })
    settleOn(held, job, clashes.length === 0 ? null : { clashes, job: mine, isByChoice: false })
    steps = job === held.job ? [] : [{ name: 'what was done since', deed: null, job }]
    void work()
  }

  /** Told by whoever hears of a revision of the open job; asks the book itself only where that one is not known. */
  function heard(revision: number): void {
    if (activity !== null || held === null || held.revision === revision) return
    if (newer?.revision === revision && !ownsNothing(held, store.getState().job ?? held.job)) return
    hasNews = true
    void work()
  }

  return {
    open,
    moved,
    work,
    heard,
    isGone,
    reapply,
    takeNewer,
    takeBackRefused,
    settled: () => activity ?? Promise.resolve(),
    /** Nothing of the page is missing in the book, as far as is known. */
    isEqual: () => {
      const { job } = store.getState()
      return job === null || held === null || (!isDoubtful && isEmptyDiff(diffJobs(held.job, job)))
    },
    /** What the page has and the book does not, record by record. */
    unsent: () => {
      const { job } = store.getState()
      return job === null || held === null ? [] : changesOf(diffJobs(held.job, job))
    },
  }
}
