import { groupedBy } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import type { Specification, StepOrder } from '../specification/types.ts'
import { momentAfter, type SiteMoment } from '../time/site-moment.ts'
import { compareText } from '../words/text.ts'
import { isSettled, type StepProgress } from './step-states.ts'

/** Whether a step can be started at a moment: `waiting` says for which wait, `overdue` that an open time has run out. */
export type Readiness =
  | { readonly kind: 'settled' }
  | { readonly kind: 'ready'; readonly startBy: SiteMoment | null }
  | { readonly kind: 'after'; readonly stepKeys: readonly string[] }
  | { readonly kind: 'waiting'; readonly until: SiteMoment; readonly order: StepOrder }
  | { readonly kind: 'overdue'; readonly since: SiteMoment; readonly order: StepOrder }

type Orders = readonly StepOrder[]
/** Lists of orders never change in place. */
const known = new WeakMap<Orders, ReadonlyMap<string, Orders>>()

/** What comes before each step, by the key of the step; remembered for each list. */
export function ordersByAfter(order: Orders): ReadonlyMap<string, Orders> {
  const byAfter = known.get(order) ?? groupedBy(order, ({ after }) => after)
  known.set(order, byAfter)
  return byAfter
}

/** Readiness of every step at `now`. Steps left out on purpose hold nothing up. */
export function readiness(
  job: Job,
  specification: Specification,
  states: ReadonlyMap<string, StepProgress>,
  now: SiteMoment,
): ReadonlyMap<string, Readiness> {
  const before = ordersByAfter(specification.order)
  return new Map(
    [...states].map(([key, progress]) => [
      key,
      readinessOf(job.header.timeZone, states, progress, before.get(key) ?? [], now),
    ]),
  )
}

function readinessOf(
  timeZone: string,
  states: ReadonlyMap<string, StepProgress>,
  progress: StepProgress,
  orders: readonly StepOrder[],
  now: SiteMoment,
): Readiness {
  if (isSettled(progress.state)) return { kind: 'settled' }
  return readinessFor(timeZone, states, progress.state.kind === 'started', orders, now)
}

/** Readiness of something that is not settled, by all that has to come before it. What is under way is late for no open time. */
export function readinessFor(
  timeZone: string,
  states: ReadonlyMap<string, StepProgress>,
  isStarted: boolean,
  orders: readonly StepOrder[],
  now: SiteMoment,
): Readiness {
  const unfinished = orders.filter((order) => !isSettledKey(states, order.before))
  if (unfinished.length > 0) return { kind: 'after', stepKeys: unfinished.map((order) => order.before) }
  const timed = orders.flatMap((order) => timedOrder(timeZone, states, order))
  const waits = timed.filter((each) => each.from > now).toSorted((a, b) => (a.from < b.from ? 1 : -1))
  const wait = waits[0]
  if (wait !== undefined) return { kind: 'waiting', until: wait.from, order: wait.order }
  const limits = timed.flatMap(({ by, order }) => (by === null ? [] : [{ by, order }]))
  const soonest = limits.toSorted((a, b) => compareText(a.by, b.by))[0]
  if (soonest === undefined) return { kind: 'ready', startBy: null }
  return soonest.by < now && !isStarted
    ? { kind: 'overdue', since: soonest.by, order: soonest.order }
    : { kind: 'ready', startBy: soonest.by }
}

/** A step the specification no longer has cannot hold anything up. */
function isSettledKey(states: ReadonlyMap<string, StepProgress>, key: string): boolean {
  const found = states.get(key)
  return found === undefined || isSettled(found.state)
}

function timedOrder(timeZone: string, states: ReadonlyMap<string, StepProgress>, order: StepOrder) {
  const state = states.get(order.before)?.state
  if (state?.kind !== 'done') return []
  const from = momentAfter(state.at, order.minimumWait, timeZone)
  const by = order.maximumWait === null ? null : momentAfter(state.at, order.maximumWait, timeZone)
  return [{ order, from, by }]
}
