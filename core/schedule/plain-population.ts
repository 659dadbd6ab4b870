import { type RandomStream, randomBelow } from './random.ts'

/** One side of the two-direction search: decodes keys (least first) in the net as this side sees it. */
export interface Direction {
  decode(keys: Int32Array, starts: Int32Array): number
  /** Writes keys for a first plan, another one at each call. */
  sample(keys: Int32Array): void
}

interface Member {
  readonly starts: Int32Array
  /** Latest end, or the cost of a failure. */
  end: number
}

/** The tasks as the breeding sees them: their lengths and how much work they are, for finding busy stretches. */
export interface Stock {
  readonly count: number
  readonly durations: Int32Array
  readonly weights: Float64Array
}

/** Told of every decoded plan; true when it was the best so far. */
export type Witness = (starts: Int32Array, cost: number, direction: 0 | 1) => boolean

/**
 * Two populations of plans, one packed towards the start and one towards the end. A child of two plans of one side is decoded
 * in the other direction, so that every child is justified as well (bi-directional population search with window crossover,
 * after Debels and Vanhoucke 2007). Yields after each decoded plan, true when it was the best so far.
 * Starts of the backward side are counted from the end, in the mirrored net.
 */
export function* searchPopulations(
  stock: Stock,
  directions: readonly [Direction, Direction],
  random: RandomStream,
  firstSize: number,
  witness: Witness,
): Generator<boolean, void, void> {
  const breeder = createBreeder(stock, directions, random)
  const keys = new Int32Array(stock.count)
  const [champion] = newMembers(stock, 1) as readonly [Member]
  let size = firstSize
  for (;;) {
    const sides = [newMembers(stock, size), newMembers(stock, size)] as const
    for (const [index, member] of sides[0].entries()) {
      if (index === 0 && champion.end < Number.POSITIVE_INFINITY) {
        copyMember(champion, member)
        continue
      }
      directions[0].sample(keys)
      member.end = directions[0].decode(keys, member.starts)
      yield witness(member.starts, member.end, 0)
    }
    yield* breedGenerations(stock, breeder, sides, witness)
    for (const member of sides[0]) if (member.end < champion.end) copyMember(member, champion)
    yield* polish(stock, directions, random, champion, witness)
    size = Math.min(400, Math.round(size * 1.7))
  }
}

function copyMember(from: Member, to: Member): void {
  to.starts.set(from.starts)
  to.end = from.end
}

function* breedGenerations(
  stock: Stock,
  breeder: Breeder,
  sides: readonly [readonly Member[], readonly Member[]],
  witness: Witness,
): Generator<boolean, void, void> {
  // Large nets gain more from polishing one good plan than from breeding on.
  const patience = Math.round(Math.max(6, Math.min(24, 1200 / Math.max(1, stock.count))))
  let source: 0 | 1 = 0
  let least = Math.min(...sides[0].map((member) => member.end))
  for (let stale = 0; stale < patience; stale++) {
    const parents = sides[source]
    const target: 0 | 1 = source === 0 ? 1 : 0
    const children = sides[target]
    for (let index = 0; index < parents.length; index++) {
      const child = children[index] as Member
      breeder.breed(parents, index, target, child)
      yield witness(child.starts, child.end, target)
      breeder.breedSecond(target)
      yield witness(breeder.second.starts, breeder.second.end, target)
      breeder.keepBetter(child)
      if (child.end < least) {
        least = child.end
        stale = 0
      }
    }
    source = target
  }
}

function newMembers(stock: Stock, size: number): readonly Member[] {
  return Array.from({ length: size }, () => ({
    starts: new Int32Array(stock.count),
    end: Number.POSITIVE_INFINITY,
  }))
}

/**
 * Shakes a stretch of the champion's time, decodes backwards and forwards again, and keeps what is not worse: plans of equal
 * length are walked through until one of them can be shortened.
 */
function* polish(
  stock: Stock,
  directions: readonly [Direction, Direction],
  random: RandomStream,
  champion: Member,
  witness: Witness,
): Generator<boolean, void, void> {
  const { count, durations } = stock
  const keys = new Int32Array(count)
  const [back, forth] = newMembers(stock, 2) as readonly [Member, Member]
  const rounds = 100 * count
  for (let round = 0; round < rounds; round++) {
    const middle = champion.starts[randomBelow(random, count)] as number
    const reach = Math.max(2, Math.round(spanOf(stock, champion) * (0.02 + 0.1 * random())))
    for (let task = 0; task < count; task++) {
      const start = champion.starts[task] as number
      const isShaken = Math.abs(start - middle) <= reach
      keys[task] =
        -(start + (durations[task] as number)) + (isShaken ? Math.round((random() - 0.5) * 2 * reach) : 0)
    }
    back.end = directions[1].decode(keys, back.starts)
    yield witness(back.starts, back.end, 1)
    for (let task = 0; task < count; task++)
      keys[task] = -((back.starts[task] as number) + (durations[task] as number))
    forth.end = directions[0].decode(keys, forth.starts)
    yield witness(forth.starts, forth.end, 0)
    if (forth.end < champion.end) round = 0
    if (forth.end <= champion.end) copyMember(forth, champion)
  }
}

function spanOf(stock: Stock, member: Member): number {
  return member.starts.reduce(
    (latest, start, task) => Math.max(latest, start + (stock.durations[task] as number)),
    0,
  )
}

interface Breeder {
  breed(parents: readonly Member[], index: number, target: 0 | 1, child: Member): void
  breedSecond(target: 0 | 1): void
  readonly second: Member
  /** Writes the second child over the first when it ends earlier. */
  keepBetter(child: Member): void
}

function createBreeder(
  stock: Stock,
  directions: readonly [Direction, Direction],
  random: RandomStream,
): Breeder {
  const { count, durations, weights } = stock
  const keys = new Int32Array(count)
  const second: Member = { starts: new Int32Array(count), end: Number.POSITIVE_INFINITY }
  let mother: Member = second
  let father: Member = second

  function tournament(parents: readonly Member[], not: number): Member {
    let winner: Member | undefined
    for (let round = 0; round < 2; round++) {
      let at = randomBelow(random, parents.length)
      if (at === not) at = (at + 1) % parents.length
      const other = parents[at] as Member
      if (winner === undefined || other.end < winner.end) winner = other
    }
    return winner as Member
  }

  /** A stretch of the father's time in which much work starts, out of three tries. */
  function busyWindow(from: Member): readonly [number, number] {
    const span = spanOf(stock, from)
    let bestFrom = 0
    let bestTo = 0
    let densest = -1
    for (let attempt = 0; attempt < 3; attempt++) {
      const length = Math.max(1, Math.round(span * (0.2 + 0.4 * random())))
      const begin = randomBelow(random, Math.max(1, span - length + 1))
      let work = 0
      for (let task = 0; task < count; task++) {
        const start = from.starts[task] as number
        if (start >= begin && start < begin + length) work += weights[task] as number
      }
      const density = work / length
      if (density <= densest) continue
      densest = density
      bestFrom = begin
      bestTo = begin + length
    }
    return [bestFrom, bestTo]
  }

  /** Father's window in the middle, the mother's tasks before and after it; read as ends of the other direction. */
  function cross(window: Member, rest: Member): void {
    const [from, to] = busyWindow(window)
    const far = spanOf(stock, window) + spanOf(stock, rest)
    for (let task = 0; task < count; task++) {
      const own = window.starts[task] as number
      if (own >= from && own < to) {
        keys[task] = -(own + (durations[task] as number))
        continue
      }
      const other = rest.starts[task] as number
      keys[task] = -(other + (durations[task] as number) + (other < from ? -far : far))
    }
    if (random() < 0.5) shiftSomeKeys(far)
  }

  /** Large mutations were measured to do harm: half of the children with swapped keys cost 2 % on 120 tasks. */
  function shiftSomeKeys(far: number): void {
    const times = 1 + randomBelow(random, 2)
    for (let time = 0; time < times; time++) {
      const task = randomBelow(random, count)
      keys[task] = (keys[task] as number) + Math.round((random() - 0.5) * 0.025 * far)
    }
  }

  function decode(target: 0 | 1, child: Member): void {
    child.end = directions[target].decode(keys, child.starts)
  }

  return {
    second,
    breed(parents, index, target, child) {
      mother = parents[index] as Member
      father = tournament(parents, index)
      cross(father, mother)
      decode(target, child)
    },
    breedSecond(target) {
      cross(mother, father)
      decode(target, second)
    },
    keepBetter(child) {
      if (second.end > child.end) return
      child.end = second.end
      child.starts.set(second.starts)
    },
  }
}
