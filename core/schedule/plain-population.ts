import type { PlainNet } from './plain-net.ts'
import { failedCost } from './plain-windows.ts'
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

export interface PlainIncumbent {
  readonly starts: Int32Array
  end: number
}

/**
 * Two populations of plans, one packed towards the start and one towards the end. A child of two plans of one side is decoded
 * in the other direction, so that every child is justified as well (bi-directional population search with window crossover,
 * after Debels and Vanhoucke 2007). Yields after each decoded plan, true when it was the best so far.
 * Starts of the backward side are counted from the end, in the mirrored net.
 */
export function* searchPopulations(
  net: PlainNet,
  directions: readonly [Direction, Direction],
  random: RandomStream,
  best: PlainIncumbent,
  firstSize: number,
): Generator<boolean, void, void> {
  const breeder = createBreeder(net, directions, random)
  const keys = new Int32Array(net.count)
  let size = firstSize
  for (;;) {
    const sides = [newMembers(net, size), newMembers(net, size)] as const
    for (const [index, member] of sides[0].entries()) {
      if (index === 0 && best.end < Number.POSITIVE_INFINITY && size > firstSize) {
        member.starts.set(best.starts)
        member.end = best.end
        continue
      }
      directions[0].sample(keys)
      member.end = directions[0].decode(keys, member.starts)
      yield note(net, best, member, 0)
    }
    yield* breedGenerations(net, best, breeder, sides)
    size = Math.min(400, Math.round(size * 1.7))
  }
}

function* breedGenerations(
  net: PlainNet,
  best: PlainIncumbent,
  breeder: Breeder,
  sides: readonly [readonly Member[], readonly Member[]],
): Generator<boolean, void, void> {
  let source: 0 | 1 = 0
  let least = Math.min(...sides[0].map((member) => member.end))
  for (let stale = 0; stale < 24; stale++) {
    const parents = sides[source]
    const target: 0 | 1 = source === 0 ? 1 : 0
    const children = sides[target]
    for (let index = 0; index < parents.length; index++) {
      const child = children[index] as Member
      breeder.breed(parents, index, target, child)
      yield note(net, best, child, target)
      breeder.breedSecond(target)
      yield note(net, best, breeder.second, target)
      breeder.keepBetter(child)
      if (child.end < least) {
        least = child.end
        stale = 0
      }
    }
    source = target
  }
}

function newMembers(net: PlainNet, size: number): readonly Member[] {
  return Array.from({ length: size }, () => ({
    starts: new Int32Array(net.count),
    end: Number.POSITIVE_INFINITY,
  }))
}

function note(net: PlainNet, best: PlainIncumbent, member: Member, direction: 0 | 1): boolean {
  if (member.end >= best.end || member.end >= failedCost) return false
  best.end = member.end
  for (let task = 0; task < net.count; task++) {
    const start = member.starts[task] as number
    best.starts[task] = direction === 0 ? start : member.end - start - (net.durations[task] as number)
  }
  return true
}

interface Breeder {
  breed(parents: readonly Member[], index: number, target: 0 | 1, child: Member): void
  breedSecond(target: 0 | 1): void
  readonly second: Member
  /** Writes the second child over the first when it ends earlier. */
  keepBetter(child: Member): void
}

function createBreeder(
  net: PlainNet,
  directions: readonly [Direction, Direction],
  random: RandomStream,
): Breeder {
  const { count, durations } = net
  const keys = new Int32Array(count)
  const second: Member = { starts: new Int32Array(count), end: Number.POSITIVE_INFINITY }
  const weight = workWeights(net)
  let mother: Member = second
  let father: Member = second

  function spanOf(member: Member): number {
    if (member.end < failedCost) return member.end
    return member.starts.reduce(
      (latest, start, task) => Math.max(latest, start + (durations[task] as number)),
      0,
    )
  }

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
    const span = spanOf(from)
    let bestFrom = 0
    let bestTo = 0
    let densest = -1
    for (let attempt = 0; attempt < 3; attempt++) {
      const length = Math.max(1, Math.round(span * (0.25 + 0.5 * random())))
      const begin = randomBelow(random, Math.max(1, span - length + 1))
      let work = 0
      for (let task = 0; task < count; task++) {
        const start = from.starts[task] as number
        if (start >= begin && start < begin + length) work += weight[task] as number
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
    const far = spanOf(window) + spanOf(rest)
    for (let task = 0; task < count; task++) {
      const own = window.starts[task] as number
      if (own >= from && own < to) {
        keys[task] = -(own + (durations[task] as number))
        continue
      }
      const other = rest.starts[task] as number
      keys[task] = -(other + (durations[task] as number) + (other < from ? -far : far))
    }
    if (random() < 0.3) shiftSomeKeys(far)
  }

  /** Large mutations were measured to do harm: half of the children with swapped keys cost 2 % on 120 tasks. */
  function shiftSomeKeys(far: number): void {
    const times = 1 + randomBelow(random, 2)
    for (let time = 0; time < times; time++) {
      const task = randomBelow(random, count)
      keys[task] = (keys[task] as number) + Math.round((random() - 0.5) * 0.05 * far)
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

function workWeights(net: PlainNet): Float64Array {
  return Float64Array.from(net.durations, (duration, task) => {
    const share = net.capacities.reduce((sum, capacity, resource) => {
      return sum + (net.demands[task]?.[resource] as number) / Math.max(1, capacity)
    }, 0)
    return duration * share
  })
}
