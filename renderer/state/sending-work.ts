import { diffJobs, isEmptyDiff } from '../../core/project/diff.ts'
import { graftJob, sameJob } from '../../core/project/graft.ts'
import type { Problem } from '../../core/project/problem.ts'
import { answerOf, isFailure, isJobGone, pauseAfter } from './road.ts'
import { type Held, ownsNothing, type Sending } from './sending.ts'
import { takeOver } from './settling.ts'

/** Sent states whose answer was lost are remembered this far back. */
const longestDoubt = 100

/** Does what there is to do until nothing is left, or something has to be waited for. */
export function work(own: Sending): Promise<void> {
  own.isWanted = true
  own.activity ??= run(own, own.turn)
  return own.activity
}

async function run(own: Sending, mine: number): Promise<void> {
  let goesOn = true
  while (mine === own.turn && (goesOn || own.isWanted)) {
    own.isWanted = false
    own.stopWaiting()
    goesOn = await next(own, mine)
  }
  if (mine === own.turn) own.activity = null
}

/** Does one thing; true when there may be another one to do at once. */
async function next(own: Sending, mine: number): Promise<boolean> {
  const { jobKey, job, stored } = own.store.getState()
  if (jobKey === null || job === null || own.held === null || stored === 'gone') return false
  if (own.newer !== null && !own.hasNews) {
    const isFree = ownsNothing(own, own.held, job)
    if (isFree) takeOver(own, own.newer)
    else own.store.setState({ stored: 'behind', newer: own.newer.job })
    return isFree
  }
  if (own.isDoubtful || own.hasNews) return look(own, mine, jobKey, own.held)
  if (own.refusedEdit !== null) return false
  const sent = own.isCareful ? (own.unsent[0]?.job ?? job) : job
  const diff = diffJobs(own.held.job, sent)
  if (isEmptyDiff(diff)) return acknowledge(own, { job: sent, revision: own.held.revision })
  own.store.setState({ stored: 'storing' })
  const { revision } = own.held
  const answer = await answerOf(own.timer, own.ask('storeEdit', { jobKey, revision, diff }))
  if (mine !== own.turn) return false
  if (answer.ok) return acknowledge(own, { job: sent, revision: answer.value.revision })
  return judge(own, answer.problem, { job: sent, revision }, mine, jobKey)
}

/** What follows from an answer that is no yes. */
async function judge(
  own: Sending,
  problem: Problem,
  sent: Held,
  mine: number,
  jobKey: string,
): Promise<boolean> {
  if (problem.kind === 'staleEdit' || isJobGone(problem, jobKey)) {
    const goesOn = await look(own, mine, jobKey, sent)
    // A book that calls an edit stale and then shows the same revision would be asked for ever.
    return goesOn && own.held?.revision === sent.revision && own.newer === null ? fails(own, problem) : goesOn
  }
  if (isFailure(problem)) {
    own.tries = [...own.tries, sent].slice(-longestDoubt)
    own.isDoubtful ||= problem.kind === 'hostFailed'
    return fails(own, problem)
  }
  if (!own.isCareful && own.unsent.length > 1) {
    own.isCareful = true
    return true
  }
  own.refusedEdit = own.unsent[0] ?? { name: 'the last edit', action: null, job: sent.job }
  own.store.setState({ stored: 'refused', refused: { name: own.refusedEdit.name, problem }, trouble: null })
  return false
}

/** Looks what the book holds now: an own edit whose answer was lost, or what another window made. */
async function look(own: Sending, mine: number, jobKey: string, from: Held): Promise<boolean> {
  const answer = await answerOf(own.timer, own.ask('openJob', { jobKey }))
  const { job } = own.store.getState()
  if (mine !== own.turn || job === null) return false
  if (!answer.ok) return isJobGone(answer.problem, jobKey) ? isGone(own) : fails(own, answer.problem)
  const known = [job, ...own.tries.map((each) => each.job).toReversed(), from.job, (own.held ?? from).job]
  const found = { job: graftJob(answer.value.job, known), revision: answer.value.revision }
  own.isDoubtful = false
  own.hasNews = false
  own.failed = 0
  const isOwn = known.some((each) => sameJob(each, found.job))
  if (!isOwn) own.newer = found
  else {
    own.held = found
    own.newer = null
    own.tries = own.tries.filter((each) => each.revision >= found.revision)
    own.store.setState({ newer: null })
  }
  return true
}

function acknowledge(own: Sending, now: Held): boolean {
  own.held = now
  own.failed = 0
  own.tries = own.tries.filter((each) => each.revision >= now.revision)
  const { job } = own.store.getState()
  const at = own.unsent.findLastIndex((edit) => edit.job === now.job)
  const isEqual = job !== null && isEmptyDiff(diffJobs(now.job, job))
  if (isEqual) own.unsent = []
  else if (at >= 0) own.unsent = own.unsent.slice(at + 1)
  else if (job !== null) own.unsent = [{ name: 'the last edit', action: null, job }]
  if (isEqual) own.isCareful = false
  own.store.setState({ trouble: null, stored: isEqual ? 'stored' : 'storing' })
  return !isEqual
}

function fails(own: Sending, problem: Problem): boolean {
  const { job } = own.store.getState()
  if (own.held === null || job === null) return false
  if (!own.isDoubtful && ownsNothing(own, own.held, job, () => false)) {
    // Only the look for news failed; it is made again when news come again.
    own.hasNews = false
    return false
  }
  const pause = pauseAfter(own.failed)
  own.failed++
  own.stopWaiting = own.timer.after(pause, () => void work(own))
  own.store.setState({ stored: 'notStored', trouble: { problem, pause } })
  return false
}

/** The job is no longer in the book. */
export function isGone(own: Sending): boolean {
  own.store.setState({ stored: 'gone', trouble: null, newer: null })
  return false
}
