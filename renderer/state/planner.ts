import { useEffect } from 'react'
import { useStore } from 'zustand'
import { createStore, type StoreApi } from 'zustand/vanilla'
import { estimate } from '../../core/price/estimate.ts'
import type { Estimate } from '../../core/price/estimate-types.ts'
import type { PaidPlan } from '../../core/price/paid-plan.ts'
import { isAlikeBut } from '../../core/project/alike.ts'
import { type Job, records } from '../../core/project/job.ts'
import { sameValue } from '../../core/project/same-value.ts'
import type { PlanBound } from '../../core/schedule/bound/bound.ts'
import type { Busy } from '../../core/schedule/job/problem-of-job.ts'
import { acceptedPlanToPay } from '../../core/schedule/plan-to-pay.ts'
import type { WorkPlan } from '../../core/work-order/work-plan.ts'
import { afterFrame } from './after-frame.ts'
import { jobStore, useJob, useJobState } from './app.ts'
import { estimateOf, specificationOf, specifiedByRooms, takeoffOf } from './derived.ts'
import { whenIdle } from './idle.ts'
import { lastAnswer } from './last-answer.ts'
import { acceptedPlan } from './planner-accepted.ts'
import { askElsewhere, busyNow, useElsewhere } from './planner-busy.ts'
import { isToldLast, listen, newsOfJob, send } from './planner-link.ts'
import type { FoundPlan, PlanClash, SearchName, SearchTell } from './planner-messages.ts'
import { siteNow } from './planner-now.ts'

/** What is known of the plan of one job value. `job` is the one searched for; an older plan is never shown for a newer job. */
export interface SearchState {
  readonly job: Job | null
  /** When people of its crew are on other jobs. */
  readonly busy: Busy
  readonly status: 'idle' | 'searching' | 'resting'
  readonly plan: FoundPlan | null
  /** It was looked for long enough for its dates to be an answer; until then the plan is a first guess. */
  readonly isSettled: boolean
  /** What no plan can beat; null while it is not worked out. */
  readonly bound: PlanBound | null
  readonly clash: PlanClash | null
  /** Nothing better can be found. */
  readonly isFinished: boolean
  readonly broken: string | null
}

const idle: SearchState = {
  job: null,
  busy: {},
  status: 'idle',
  plan: null,
  isSettled: false,
  bound: null,
  clash: null,
  isFinished: false,
  broken: null,
}

const begun: SearchState = { ...idle, status: 'searching' }

/** After so long a search rests; "Keep improving" gives it as long again. */
const secondsPerRun = 20

const stores: Readonly<Record<SearchName, StoreApi<SearchState>>> = {
  present: createStore<SearchState>(() => idle),
  trial: createStore<SearchState>(() => idle),
}
const turns: Record<SearchName, number> = { present: 0, trial: 0 }
/** The plan that labor of a job is priced by while none is accepted; null until it is told, and where there is none. */
interface PayState {
  readonly job: Job | null
  readonly paid: PaidPlan | null
}
const payStore = createStore<PayState>(() => ({ job: null, paid: null }))
let payTurn = 0
/** The plan of a job that was on screen last: the next one of that job stays near to it. */
let lastShown: { readonly jobId: string; readonly plan: WorkPlan } | null = null

listen({
  hear: (tell) => {
    if (tell.kind === 'compared') return
    if (tell.kind === 'paid') {
      if (tell.turn === payTurn) payStore.setState({ paid: tell.paid })
      return
    }
    if (tell.turn !== turns[tell.search]) return
    stores[tell.search].setState(newsOf(tell))
    if (tell.kind === 'found' && tell.search === 'present') noteShown(tell.found)
  },
  fail: (sentence) => {
    for (const name of ['present', 'trial'] as const)
      stores[name].setState({ status: 'resting', broken: sentence })
  },
})

function noteShown({ workPlan }: FoundPlan): void {
  const { job } = stores.present.getState()
  if (job !== null) lastShown = { jobId: job.header.id, plan: workPlan }
}

function shownOf({ header }: Job): WorkPlan | null {
  return lastShown?.jobId === header.id ? lastShown.plan : null
}

function newsOf(tell: SearchTell): Partial<SearchState> {
  switch (tell.kind) {
    case 'found':
      return { plan: tell.found, isSettled: tell.isSettled, clash: null }
    case 'settled':
      return { isSettled: true }
    case 'bound':
      return { bound: tell.bound }
    case 'clash':
      return { clash: tell.clash }
    case 'rest':
      return { status: 'resting', isSettled: true, isFinished: tell.isFinished }
    case 'broken':
      return { status: 'resting', broken: tell.sentence }
  }
}

/** The planner gets to know a job when it is opened, long before its calendar is looked at; its steps, which name the bars, follow in idle time. */
export function usePreparedPlanner(): void {
  const jobKey = useJobState((state) => state.jobKey)
  useEffect(() => {
    if (jobKey !== null) void prepareOpened(jobKey)
  }, [jobKey])
}

async function prepareOpened(opened: string): Promise<void> {
  await askElsewhere()
  const { jobKey, job } = jobStore.store.getState()
  if (jobKey !== opened || job === null || isToldLast(job)) return
  send({ kind: 'prepare', news: newsOfJob(job), now: siteNow(job), busy: busyNow(job) })
  whenIdle(specifiedByRooms(job), () => undefined)
}

/** Looks for a plan of the job, unless that is what is being looked for already. */
export function searchFor(name: SearchName, job: Job): void {
  const { job: searched, busy } = stores[name].getState()
  if (searched !== null && plansAlike(searched, job) && sameValue(busy, busyNow(job))) {
    if (searched !== job) stores[name].setState({ job })
    return
  }
  searchAnew(name, job, shownOf(job), false)
}

function searchAnew(name: SearchName, job: Job, shown: WorkPlan | null, isShownSettled: boolean): void {
  turns[name]++
  const busy = busyNow(job)
  stores[name].setState({ ...idle, job, busy, status: 'searching' })
  send({
    kind: 'search',
    search: name,
    turn: turns[name],
    news: newsOfJob(job),
    now: siteNow(job),
    shown,
    isShownSettled,
    busy,
    seconds: secondsPerRun,
  })
}

/** A plan that was tried and taken, or accepted, stays the plan shown, and what is looked for from now on keeps to it. */
export function adoptPlan(name: SearchName, job: Job): void {
  const { plan, bound, isSettled } = stores[name].getState()
  if (plan !== null) showPlan(plan, bound, job, isSettled)
}

/** One of the plans that were compared becomes the plan on screen. No rule differs between them, so neither does what none can beat. */
export function showChosenPlan(plan: FoundPlan, job: Job): void {
  showPlan(plan, stores.present.getState().bound, job, true)
}

function showPlan(plan: FoundPlan, bound: PlanBound | null, job: Job, isSettled: boolean): void {
  searchAnew('present', job, plan.workPlan, isSettled)
  stores.present.setState({ plan, bound, isSettled })
  noteShown(plan)
}

export function forget(name: SearchName): void {
  if (stores[name].getState().job === null) return
  turns[name]++
  stores[name].setState(idle)
  send({ kind: 'stop', search: name })
}

export function stopLooking(name: SearchName): void {
  send({ kind: 'stop', search: name })
}

/** What is tried is compared with one plan, which does not get better meanwhile once it is no first guess; answers how to go on looking afterwards. */
export function restPresent(): () => void {
  const { status, isSettled } = stores.present.getState()
  if (status !== 'searching' || !isSettled) return () => undefined
  stopLooking('present')
  return () => lookFurther('present')
}

export function lookFurther(name: SearchName): void {
  stores[name].setState({ status: 'searching' })
  send({ kind: 'goOn', search: name, seconds: secondsPerRun })
}

/** Papers given out change no plan; an accepted plan does, for it is a promise. */
function plansAlike(one: Job, other: Job): boolean {
  if (one === other) return true
  return isAlikeBut(one, other, ['issued']) && acceptedPlan(one)?.id === acceptedPlan(other)?.id
}

/** The plan that answers for a job now, without looking for one: what was found when it is more than a guess, else the accepted one. */
export function answeringPlan(job: Job): WorkPlan | null {
  const { job: searched, plan, isSettled } = stores.present.getState()
  const isFound = searched !== null && isSettled && plansAlike(searched, job)
  return (isFound ? plan?.workPlan : acceptedPlan(job)?.plan) ?? null
}

export function useAnsweringPlan(job: Job): WorkPlan | null {
  return useStore(stores.present, () => answeringPlan(job))
}

/** The plan of the job as it stands, looked for in the background while a station shows it; what was just changed is shown before the worker is told. */
export function useForecast(): SearchState {
  const job = useJob()
  const isPlannable = records(job.rooms).length > 0
  const elsewhere = useElsewhere()
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is said of other jobs is read where the search begins
  useEffect(() => {
    if (isPlannable) return afterFrame(() => searchFor('present', job))
  }, [job, isPlannable, elsewhere])
  const state = useStore(stores.present)
  const isOfThisJob = state.job !== null && plansAlike(state.job, job)
  return isOfThisJob ? state : isPlannable ? begun : idle
}

export function useTrial(): SearchState {
  return useStore(stores.trial)
}

function askWhatToPay(job: Job): void {
  if (payStore.getState().job === job) return
  payTurn++
  payStore.setState({ job, paid: null })
  send({ kind: 'pay', turn: payTurn, news: newsOfJob(job) })
}

const acceptedToPay = lastAnswer(acceptedPlanToPay)

/** The plan that is paid for: the accepted one, else a first plan from the worker; null until that is there. */
export function usePaidPlan(): PaidPlan | null {
  const job = useJob()
  const accepted = acceptedToPay(job)
  const isAsked = accepted === null && records(job.rooms).length > 0
  useEffect(() => {
    if (isAsked) askWhatToPay(job)
  }, [job, isAsked])
  const told = useStore(payStore)
  return accepted ?? (told.job === job ? told.paid : null)
}

const estimateByPlan = lastAnswer(estimate)

/** The price by what a plan pays; by hours until the plan is there. */
export function usePaidEstimate(): Estimate {
  const job = useJob()
  const paid = usePaidPlan()
  return paid === null ? estimateOf(job) : estimateByPlan(job, takeoffOf(job), specificationOf(job), paid)
}
