import { z } from 'zod'
import type { PaidPlan } from '../../core/price/paid-plan.ts'
import { applyDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { Busy } from '../../core/schedule/job/problem-of-job.ts'
import { type Comparison, createComparison } from './planner-comparison.ts'
import type { JobNews, PlannerAsk, PlannerTell, SearchName } from './planner-messages.ts'
import {
  type PreparedSearch,
  planToPayOf,
  prepareSearch,
  type SlicedSearch,
  searchAsked,
} from './planner-search.ts'

// The worker may not make code from text either, which zod's fast path would.
z.config({ jitless: true })

interface Running {
  readonly turn: number
  readonly search: SlicedSearch
  /** By this worker's clock. */
  until: number
  isResting: boolean
  proof: 'none' | 'due' | 'told'
  /** Found but not told yet. */
  hasNews: boolean
  isSettled: boolean
  toldAt: number
}

/** Better plans are told at most so often (ms): judging, sending and drawing one costs more than finding it. */
const betweenTellings = 1000

type SearchAsk = Extract<PlannerAsk, { kind: 'search' }> & { readonly job: Job }

const running = new Map<SearchName, Running>()
/** Not begun yet: a later ask takes the place of an earlier one, as while a task is dragged. */
const asked = new Map<SearchName, SearchAsk>()
const channel = new MessageChannel()
/** The job told last. */
let told: Job | null = null
let prepared: PreparedSearch | null = null
let isGoing = false
/** The last job whose plan to pay was asked for and is not told yet. */
let payAsked: { readonly turn: number; readonly job: Job } | null = null

/** One plan of each aim, being looked for. */
let comparing: Comparing | null = null

/** A worker's own `postMessage`, which the page's type library does not have. */
const post = self.postMessage as (message: PlannerTell) => void

self.onmessage = (event: MessageEvent<PlannerAsk>) => {
  take(event.data)
  go()
}

function take(message: PlannerAsk): void {
  if (message.kind === 'prepare') {
    prepare(catchUp(message.news), message.now, message.busy)
    return
  }
  if (message.kind === 'compare') {
    beginComparing(message, catchUp(message.news))
    return
  }
  if (message.kind === 'stopComparing') {
    if (comparing !== null) tellCompared(comparing, true)
    comparing = null
    return
  }
  if (message.kind === 'pay') {
    payAsked = { turn: message.turn, job: catchUp(message.news) }
    return
  }
  if (message.kind === 'search') {
    const job = catchUp(message.news)
    running.delete(message.search)
    asked.set(message.search, { ...message, job })
  }
  if (message.kind === 'stop') asked.delete(message.search)
  const found = running.get(message.search)
  if (found === undefined) return
  if (message.kind === 'goOn') {
    found.until = performance.now() + message.seconds * 1000
    found.isResting = false
  }
  if (message.kind === 'stop') found.until = 0
}

/** An edit that changes nothing leaves the job the same object, so that the search prepared for it is known again. */
function catchUp(news: JobNews): Job {
  if ('job' in news) told = news.job
  else if (told === null) throw new Error('the planner was told an edit before a job')
  else if (Object.keys(news.edit).length > 0) told = applyDiff(told, news.edit)
  return told
}

/** A first plan nobody asked for yet. If the job has changed by then, what was remembered and compiled still makes the next one come sooner. */
function prepare(job: Job, now: string, busy: Busy): void {
  try {
    prepared = prepareSearch(job, now, busy)
  } catch {
    // The search that follows meets the same mistake, and tells it.
  }
}

function begin({ search: name, turn, job, now, shown, isShownSettled, busy, seconds }: SearchAsk): void {
  asked.delete(name)
  guarded(name, turn, () => {
    const search = searchAsked(prepared, job, now, shown, busy)
    prepared = null
    const until = performance.now() + seconds * 1000
    const begun: Running = {
      turn,
      search,
      until,
      isResting: false,
      proof: 'none',
      hasNews: false,
      isSettled: isShownSettled || search.isSettled(),
      toldAt: -betweenTellings,
    }
    running.set(name, begun)
    if (search.current() !== null) tellFound(name, begun)
  })
}

// One slice at a time, so that a message that stops or replaces a search is read between two of them.
channel.port1.onmessage = () => {
  isGoing = false
  for (const ask of [...asked.values()]) begin(ask)
  if (payAsked !== null) tellPaid(payAsked)
  for (const [name, each] of running) {
    if (each.proof === 'due') guarded(name, each.turn, () => prove(name, each))
    else if (!each.isResting) guarded(name, each.turn, () => work(name, each))
  }
  if (comparing !== null) compareFurther(comparing)
  go()
}

function go(): void {
  const isNeeded =
    asked.size > 0 ||
    payAsked !== null ||
    comparing !== null ||
    [...running.values()].some((each) => !each.isResting || each.proof === 'due')
  if (isGoing || !isNeeded) return
  isGoing = true
  channel.port2.postMessage(null)
}

/** A job that cannot be planned is priced by its hours. */
function tellPaid({ turn, job }: { readonly turn: number; readonly job: Job }): void {
  payAsked = null
  let paid: PaidPlan | null = null
  try {
    paid = planToPayOf(job)
  } catch {
    // The search that follows meets the same mistake, and tells it.
  }
  post({ kind: 'paid', turn, paid })
}

interface Comparing {
  readonly turn: number
  readonly comparison: Comparison
  toldAt: number
}

function beginComparing(ask: Extract<PlannerAsk, { kind: 'compare' }>, job: Job): void {
  const { turn } = ask
  comparing = null
  guardedComparison(turn, () => {
    const comparison = createComparison(job, ask, () => performance.now())
    if (comparison === null) tellNoComparison(turn, null)
    else comparing = { turn, comparison, toldAt: performance.now() }
  })
}

function compareFurther(each: Comparing): void {
  guardedComparison(each.turn, () => {
    each.comparison.step()
    const isOver = each.comparison.share() >= 1
    if (isOver || performance.now() >= each.toldAt + betweenTellings) tellCompared(each, isOver)
    if (isOver) comparing = null
  })
}

function tellCompared(each: Comparing, isOver: boolean): void {
  const { turn, comparison } = each
  post({ kind: 'compared', turn, share: comparison.share(), plans: comparison.plans(), isOver, broken: null })
  each.toldAt = performance.now()
}

function tellNoComparison(turn: number, broken: string | null): void {
  post({ kind: 'compared', turn, share: 1, plans: new Map(), isOver: true, broken })
}

function guardedComparison(turn: number, act: () => void): void {
  try {
    act()
  } catch (error) {
    comparing = null
    tellNoComparison(turn, failureWords(error))
  }
}

function work(name: SearchName, each: Running): void {
  const { isFinished, isBetter } = each.search.step()
  const now = performance.now()
  each.hasNews ||= isBetter
  each.isResting = isFinished || now >= each.until
  const about = { search: name, turn: each.turn }
  const isSettled = each.isSettled || each.search.isSettled() || each.isResting
  const isNewlySettled = isSettled && !each.isSettled
  each.isSettled = isSettled
  if (each.hasNews && (each.isResting || isNewlySettled || now >= each.toldAt + betweenTellings))
    tellFound(name, each)
  else if (isNewlySettled) post({ ...about, kind: 'settled' })
  if (!each.isResting) return
  const clash = each.search.clash()
  if (clash !== null) post({ ...about, kind: 'clash', clash })
  post({ ...about, kind: 'rest', isFinished })
}

function tellFound(name: SearchName, each: Running): void {
  const found = each.search.current()
  const { isSettled } = each
  if (found !== null) post({ search: name, turn: each.turn, kind: 'found', found, isSettled })
  if (found !== null && each.proof === 'none') each.proof = 'due'
  each.hasNews = false
  each.toldAt = performance.now()
}

/** How good a plan can be at best comes once the first one is told, in a turn of its own. */
function prove(name: SearchName, each: Running): void {
  const bound = each.search.bound()
  if (bound !== null) post({ search: name, turn: each.turn, kind: 'bound', bound })
  each.proof = 'told'
}

/** A mistake of the program must not silence the planner: it is told, and that search ends. */
function guarded(name: SearchName, turn: number, act: () => void): void {
  try {
    act()
  } catch (error) {
    running.delete(name)
    post({ search: name, turn, kind: 'broken', sentence: failureWords(error) })
  }
}

function failureWords(error: unknown): string {
  return `The planner failed: ${error instanceof Error ? error.message : String(error)}`
}
