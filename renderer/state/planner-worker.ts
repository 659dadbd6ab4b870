import { z } from 'zod'
import type { PaidPlan } from '../../core/price/paid-plan.ts'
import { applyDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
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

/** A worker's own `postMessage`, which the page's type library does not have. */
const post = self.postMessage as (message: PlannerTell) => void

self.onmessage = (event: MessageEvent<PlannerAsk>) => {
  take(event.data)
  go()
}

function take(message: PlannerAsk): void {
  if (message.kind === 'prepare') {
    prepare(catchUp(message.news), message.now)
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
  else if (Object.keys(news.edit).length > 0) told = applyDiff(told as Job, news.edit)
  return told as Job
}

/** A first plan nobody asked for yet. If the job has changed by then, what was remembered and compiled still makes the next one come sooner. */
function prepare(job: Job, now: string): void {
  try {
    prepared = prepareSearch(job, now)
  } catch {
    // The search that follows meets the same mistake, and tells it.
  }
}

function begin({ search: name, turn, job, now, promised, seconds }: SearchAsk): void {
  asked.delete(name)
  guarded(name, turn, () => {
    const search = searchAsked(prepared, job, now, promised)
    prepared = null
    const until = performance.now() + seconds * 1000
    const begun: Running = {
      turn,
      search,
      until,
      isResting: false,
      proof: 'none',
      hasNews: false,
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
  go()
}

function go(): void {
  const isNeeded =
    asked.size > 0 ||
    payAsked !== null ||
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

function work(name: SearchName, each: Running): void {
  const { isFinished, isBetter } = each.search.step()
  const now = performance.now()
  each.hasNews ||= isBetter
  each.isResting = isFinished || now >= each.until
  const about = { search: name, turn: each.turn }
  if (each.hasNews && (each.isResting || now >= each.toldAt + betweenTellings)) tellFound(name, each)
  if (!each.isResting) return
  const clash = each.search.clash()
  if (clash !== null) post({ ...about, kind: 'clash', clash })
  post({ ...about, kind: 'rest', isFinished })
}

function tellFound(name: SearchName, each: Running): void {
  const found = each.search.current()
  if (found !== null) post({ search: name, turn: each.turn, kind: 'found', found })
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
    const why = error instanceof Error ? error.message : String(error)
    post({ search: name, turn, kind: 'broken', sentence: `The planner failed: ${why}` })
  }
}
