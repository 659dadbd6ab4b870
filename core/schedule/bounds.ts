import { type Heads, propagateHeads } from './heads.ts'
import { mirrorNet } from './mirror.ts'
import type { SiteNet } from './site-net.ts'

/** What no plan can beat, in the units of `PlanValue`. */
export interface PlanBound {
  readonly finish: number
  readonly roomDaysOutOfUse: number
}

type KnownHeads = Extract<Heads, { kind: 'heads' }>

/**
 * Finish: the calendar-aware critical path, then day after day as long as that day can be refuted. Room-days: each room that is
 * closed at all is out of use for a day.
 */
export function boundOf(net: SiteNet, heads: KnownHeads): PlanBound {
  const roomDays = new Set(net.tasks.flatMap((task) => (task.closing === null ? [] : [task.room]))).size
  return { finish: finishBound(net, heads), roomDaysOutOfUse: roomDays }
}

function finishBound(net: SiteNet, heads: KnownHeads): number {
  const path = criticalPathTick(net, heads)
  const first = finishOfTick(net, path)
  if (net.problem.clock.kind === 'unbroken') return first
  const mirrored = mirrorNet(net)
  const stores = energyStores(net)
  const last = net.axis.dayOfTick[net.axis.horizon - 1] ?? first
  let day = first
  while (day < last && isRefuted(net, mirrored, heads, stores, endOfDay(net, day))) day++
  return day
}

/** Calendar-aware critical path. */
function criticalPathTick(net: SiteNet, heads: KnownHeads): number {
  return net.tasks.reduce((latest, task) => {
    return task.fixed === 1 ? latest : Math.max(latest, heads.end[task.index] ?? 0)
  }, net.firstTick)
}

/** The finish (in units of `PlanValue.finish`) that follows from a finish tick. */
function finishOfTick(net: SiteNet, tick: number): number {
  if (net.problem.clock.kind === 'unbroken') return tick
  return net.axis.dayOfTick[Math.max(0, Math.min(net.axis.horizon, tick - 1))] ?? 0
}

function endOfDay(net: SiteNet, day: number): number {
  const after = net.axis.dayOfTick.findIndex((other) => other > day)
  return after === -1 ? net.axis.horizon : after
}

/** Something tasks share, with what it can give before each slot and what each task surely takes. */
interface EnergyStore {
  readonly givenBefore: Float64Array
  readonly taken: readonly number[]
}

/** One store for the people of each set of skills (all tasks that only they can do), one for each pooled resource and room. */
function energyStores(net: SiteNet): readonly EnergyStore[] {
  const open = net.tasks.filter((task) => task.fixed !== 1)
  const everybody = 2 ** net.problem.people.length - 1
  const teams = [...new Set([everybody, ...open.map((task) => task.skilled)])].filter((team) => team !== 0)
  const people = teams.map((team): EnergyStore => {
    const taken = net.tasks.map((task) => {
      const isTheirs = task.fixed !== 1 && (task.skilled & ~team) === 0
      const least = Math.min(...task.sizes.map((size, option) => size * (task.durations[option] ?? 0)))
      return isTheirs ? least : 0
    })
    return { givenBefore: sumBefore(net, (present) => bitCount(present & team)), taken }
  })
  const pooled = net.capacities.map((capacity, resource): EnergyStore => {
    const taken = net.tasks.map((task) => {
      if (task.fixed === 1) return 0
      const demand = task.demands.filter((entry) => entry.resource === resource)
      const perSlot = (size: number): number =>
        demand.reduce((sum, { amount, perPerson }) => sum + amount * (perPerson ? size : 1), 0)
      return Math.min(...task.sizes.map((size, option) => perSlot(size) * (task.durations[option] ?? 0)))
    })
    return { givenBefore: sumBefore(net, () => capacity), taken }
  })
  return [...people, ...pooled]
}

function bitCount(mask: number): number {
  let count = 0
  for (let rest = mask; rest !== 0; rest &= rest - 1) count++
  return count
}

function sumBefore(net: SiteNet, given: (present: number) => number): Float64Array {
  const { present } = net.axis
  const sums = new Float64Array(present.length + 1)
  for (let slot = 0; slot < present.length; slot++)
    sums[slot + 1] = (sums[slot] as number) + given(present[slot] as number)
  return sums
}

/** Can no plan end by this tick? Heads against latest ends, and more work in some stretch of time than it can hold. */
function isRefuted(
  net: SiteNet,
  mirrored: SiteNet,
  heads: KnownHeads,
  stores: readonly EnergyStore[],
  deadline: number,
): boolean {
  const tails = propagateHeads(mirrored, net.axis.horizon - deadline)
  if (tails.kind !== 'heads') return true
  const open = net.tasks.filter((task) => task.fixed !== 1).map((task) => task.index)
  const latest = net.tasks.map((_, index) => net.axis.horizon - (tails.start[index] as number))
  if (open.some((index) => (heads.end[index] as number) > (latest[index] as number))) return true
  return stores.some((store) => isOverfull(net, store, heads, latest, open))
}

function isOverfull(
  net: SiteNet,
  store: EnergyStore,
  heads: KnownHeads,
  latest: readonly number[],
  open: readonly number[],
): boolean {
  const taking = open.filter((index) => (store.taken[index] as number) > 0)
  const byLatest = taking.slice().sort((one, other) => (latest[one] as number) - (latest[other] as number))
  const slotAt = (tick: number): number =>
    net.axis.slotAt[Math.max(0, Math.min(net.axis.horizon, tick))] as number
  for (const from of new Set(taking.map((index) => Math.max(net.firstTick, heads.start[index] as number)))) {
    const before = store.givenBefore[slotAt(from)] as number
    let needed = 0
    for (const index of byLatest) {
      if (Math.max(net.firstTick, heads.start[index] as number) < from) continue
      needed += store.taken[index] as number
      if (needed > (store.givenBefore[slotAt(latest[index] as number)] as number) - before) return true
    }
  }
  return false
}
