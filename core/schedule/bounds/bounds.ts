import { dayAtTick } from '../axis.ts'
import { type Heads, propagateHeads } from '../net/heads.ts'
import { mirrorNet } from '../net/mirror.ts'
import type { SiteNet } from '../net/site-net.ts'
import { energyStores, isOverfull } from './energy.ts'
import { createRoomRefuter } from './room-bound.ts'

/** What no plan can beat, in the units of `PlanValue`. */
export interface PlanBound {
  readonly finish: number
  readonly roomDaysOutOfUse: number
}

type KnownHeads = Extract<Heads, { kind: 'heads' }>

/**
 * Finish: the calendar-aware critical path, then the first day that cannot be refuted. Room-days: each room with work in it is
 * out of use for a day. `planned`: finish of a plan, where one is known, beyond which there is nothing to refute.
 */
export function boundOf(net: SiteNet, heads: KnownHeads, planned?: number): PlanBound {
  const roomDays = new Set(net.tasks.flatMap((task) => (task.outOfUse === null ? [] : [task.room]))).size
  return { finish: finishBound(net, heads, planned), roomDaysOutOfUse: roomDays }
}

/** When no plan can end by some day, none can end by an earlier one, so that halving finds the last day refuted. */
function finishBound(net: SiteNet, heads: KnownHeads, planned?: number): number {
  const path = criticalPathTick(net, heads)
  if (net.problem.clock.kind === 'unbroken') return path
  const refute = createRefuter(net, heads)
  let first = dayAtTick(net.axis, path - 1)
  let last = planned ?? dayAtTick(net.axis, net.axis.horizon - 1)
  while (first < last) {
    const day = Math.floor((first + last) / 2)
    if (refute(endOfDay(net, day))) first = day + 1
    else last = day
  }
  return first
}

/** Calendar-aware critical path. */
function criticalPathTick(net: SiteNet, heads: KnownHeads): number {
  return net.tasks.reduce((latest, task) => {
    return task.fixed === 1 ? latest : Math.max(latest, heads.end[task.index] ?? 0)
  }, net.firstTick)
}

function endOfDay({ axis }: SiteNet, day: number): number {
  let [low, high] = [0, axis.horizon]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((axis.dayOfTick[middle] as number) > day) high = middle
    else low = middle + 1
  }
  return low
}

/**
 * Can no plan end by a tick? Heads against latest ends, more work in some stretch of time than it can hold, more rooms out of use
 * than may be.
 */
function createRefuter(net: SiteNet, heads: KnownHeads): (deadline: number) => boolean {
  const mirrored = mirrorNet(net)
  const { horizon } = net.axis
  const open = net.tasks.filter((task) => task.fixed !== 1).map((task) => task.index)
  const starts = heads.start.map((start) => Math.max(net.firstTick, start))
  const stores = energyStores(net, open, starts)
  const refutesRooms = createRoomRefuter(net, starts, createRefuter)
  return (deadline) => {
    const tails = propagateHeads(mirrored, horizon - deadline)
    if (tails.kind !== 'heads') return true
    const latest = tails.start.map((start) => horizon - start)
    if (open.some((index) => (heads.end[index] as number) > (latest[index] as number))) return true
    return stores.some((store) => isOverfull(store, latest)) || refutesRooms(deadline)
  }
}
