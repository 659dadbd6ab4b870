import { slotAtTick } from '../axis.ts'
import { countBits, type NetTask, type SiteNet } from '../net/site-net.ts'

/** Something tasks share, and the tasks that surely take of it. */
export interface EnergyStore {
  /** What it has given from the first slot until a tick. */
  readonly givenUntil: (tick: number) => number
  /** By earliest start. `given` is what was given until then. */
  readonly takers: readonly { readonly task: number; readonly taken: number; readonly given: number }[]
}

/**
 * One store for the people of each set of skills (all tasks that only they can do), one for each pooled resource and room.
 * `open`: tasks not done. `starts`: earliest starts in ticks.
 */
export function energyStores(
  net: SiteNet,
  open: readonly number[],
  starts: readonly number[],
): readonly EnergyStore[] {
  const tasks = open.map((index) => net.tasks[index] as NetTask)
  const everybody = 2 ** net.problem.people.length - 1
  const teams = [...new Set([everybody, ...tasks.map((task) => task.skilled)])].filter((team) => team !== 0)
  const storeOf = (given: (slot: number) => number, takenBy: (task: NetTask, size: number) => number) => {
    const takers = tasks.flatMap((task) => {
      const perSize = task.sizes.map((size, option) => takenBy(task, size) * (task.durations[option] ?? 0))
      return Math.min(...perSize) > 0 ? [{ task: task.index, taken: Math.min(...perSize) }] : []
    })
    const givenUntil = (tick: number): number => given(slotAtTick(net.axis, tick))
    const startOf = (index: number): number => starts[index] as number
    return {
      givenUntil,
      takers: takers
        .map((taker) => ({ ...taker, given: givenUntil(startOf(taker.task)) }))
        .sort((one, other) => one.given - other.given),
    }
  }
  return [
    ...teams.map((team) => {
      const before = peopleBefore(net.axis.present, team)
      const given = (slot: number): number => before[slot] as number
      return storeOf(given, (task, size) => ((task.skilled & ~team) === 0 ? size : 0))
    }),
    ...net.capacities.map((capacity, resource) => {
      const given = (slot: number): number => slot * capacity
      return storeOf(given, (task, size) => {
        return task.demands.reduce((sum, { resource: wanted, amount, perPerson }) => {
          return wanted === resource ? sum + amount * (perPerson ? size : 1) : sum
        }, 0)
      })
    }),
  ]
}

const knownSums = new WeakMap<Int32Array, Map<number, Float64Array>>()

/** For each slot how many slots of somebody of the team lie before it; counted once for each axis. */
function peopleBefore(present: Int32Array, team: number): Float64Array {
  const known = knownSums.get(present) ?? new Map<number, Float64Array>()
  knownSums.set(present, known)
  const sums = known.get(team) ?? countPeople(present, team)
  known.set(team, sums)
  return sums
}

function countPeople(present: Int32Array, team: number): Float64Array {
  const sums = new Float64Array(present.length + 1)
  for (let slot = 0; slot < present.length; slot++)
    sums[slot + 1] = (sums[slot] as number) + countBits((present[slot] as number) & team)
  return sums
}

/**
 * Do the tasks that must lie between some earliest start and some latest end take more than is given between? Tasks enter by
 * latest end into a tree over their starts; each node knows what its tasks take, and the most that what was given until one of
 * their starts comes to together with all that is taken from there on (theta tree with energy envelopes, after Vilím 2009).
 */
export function isOverfull({ takers, givenUntil }: EnergyStore, latest: readonly number[]): boolean {
  const leaves = 2 ** Math.ceil(Math.log2(Math.max(1, takers.length)))
  const taken = new Float64Array(2 * leaves)
  const most = new Float64Array(2 * leaves).fill(Number.NEGATIVE_INFINITY)
  const latestOf = (place: number): number => latest[takers[place]?.task as number] as number
  const byLatest = takers.map((_, place) => place).sort((one, other) => latestOf(one) - latestOf(other))
  for (const place of byLatest) {
    const taker = takers[place] as EnergyStore['takers'][number]
    taken[leaves + place] = taker.taken
    most[leaves + place] = taker.given + taker.taken
    for (let node = (leaves + place) >> 1; node > 0; node >>= 1) {
      const [left, right] = [2 * node, 2 * node + 1]
      taken[node] = (taken[left] as number) + (taken[right] as number)
      most[node] = Math.max((most[left] as number) + (taken[right] as number), most[right] as number)
    }
    if ((most[1] as number) > givenUntil(latestOf(place))) return true
  }
  return false
}
