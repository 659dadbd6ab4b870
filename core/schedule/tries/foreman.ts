import type { Net } from '../fitting/net.ts'
import { type RandomStream, randomBelow } from '../random.ts'
import type { ForemanRule } from './dispatch.ts'

/**
 * What is promised back first; then top down and towards the door: what is behind most halls, then the halls themselves, then what none
 * of them leads to; rooms alike
 * in the order of the file.
 */
export function walkingOrder({ problem }: Net): Float64Array {
  const ways = new Set(problem.rooms.flatMap(({ reachedThrough }) => reachedThrough))
  return Float64Array.from(problem.rooms, ({ id, reachedThrough, backBy }, room) => {
    const behind = ways.has(id) ? 0.5 : reachedThrough.length
    return room - (backBy === null ? behind : 1000) * problem.rooms.length
  })
}

/** Rules to give out work by: some plain ones first, then changes of the one that is kept. */
interface Foreman {
  readonly next: (index: number) => ForemanRule
  readonly keep: (rule: ForemanRule) => void
}

/** So many plain rules are tried before any is changed. */
const plainRules = 36

/** Nothing kept yet; `random` decides what of a kept rule is changed. */
export function createForeman(net: Net, random: RandomStream): Foreman {
  let best: ForemanRule | null = null
  return {
    next: (index) =>
      index < plainRules || best === null
        ? plainRule(net, index + likelyFirst)
        : changedRule(net, random, best),
    keep: (rule) => {
      best = rule
    },
  }
}

function mostRooms({ rooms, problem }: Net): number {
  return Math.max(1, Math.min(rooms.length, problem.rules.roomsOutOfUse ?? rooms.length))
}

/** Combinations of a few settings, gone through in an order that mixes them; this one gives a first plan most often. */
const likelyFirst = 4

function plainRule(net: Net, index: number): ForemanRule {
  const day = 1440 / net.axis.grid
  const order = walkingOrder(net)
  const ticksForRank = [1, 12, day][index % 3] ?? 1
  const one = (options: readonly [number, number], at: number): number => options[at % 2] ?? 0
  return {
    rank: order.map((rank) => order.filter((other) => other < rank).length * ticksForRank),
    granularity: [1, 24, 48][(index + (index >> 2)) % 3] ?? 1,
    mostOpen: Math.min(mostRooms(net), Math.max(1, net.people.length + 1 - (index % 4) + (index >> 3))),
    moving: one([6, 24], index),
    opening: index % 3 === 0 ? 12 : day / 3,
    sharing: index % 3 === 1 ? 0 : 24,
    alone: new Uint8Array(net.rooms.length),
    together: new Uint8Array(net.rooms.length).fill(index % 2),
  }
}

function changedRule(net: Net, random: RandomStream, rule: ForemanRule): ForemanRule {
  const day = 1440 / net.axis.grid
  const rank = rule.rank.slice()
  const alone = rule.alone.slice()
  const together = rule.together.slice()
  const one = randomBelow(random, net.rooms.length)
  const other = randomBelow(random, net.rooms.length)
  const flip = (flags: Uint8Array, at: number): void => {
    flags[at] = 1 - (flags[at] as number)
  }
  const [before, after] = [rank[one] as number, rank[other] as number]
  if (random() < 0.5) {
    rank[one] = after
    rank[other] = before
  } else rank[one] = before + (random() - 0.5) * (random() < 0.5 ? 4 * day : day)
  if (random() < 0.2) flip(together, other)
  if (random() < 0.2) flip(alone, other)
  const some = (value: number, most: number): number => (random() < 0.15 ? random() * most : value)
  return {
    rank,
    alone,
    together,
    granularity: random() < 0.1 ? 1 + randomBelow(random, 96) : rule.granularity,
    mostOpen: random() < 0.1 ? 1 + randomBelow(random, mostRooms(net)) : rule.mostOpen,
    moving: some(rule.moving, day / 4),
    opening: some(rule.opening, day),
    sharing: some(rule.sharing, day / 2),
  }
}
