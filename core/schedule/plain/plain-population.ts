import { type RandomStream, randomBelow } from '../random.ts'

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

/** How a population breeds. */
export interface Breeding {
  /** Members of each side in the first population. */
  readonly size: number
  /** Each member breeds so often, and its best child counts. */
  readonly children: number
  /** Whether a member stays until a child is no worse, or gives way to its best child at once. */
  readonly keepsParents: boolean
  /** Share of its costs by which a side has to gain in a generation, if it has no new best plan, or it stands still. */
  readonly leastGain: number
  /** Generations standing still after which breeding has stalled: polishing one good plan then gains more. */
  readonly patience: number
}

/** Told of every decoded plan; true when it was the best so far. */
export type Witness = (starts: Int32Array, cost: number, direction: 0 | 1) => boolean

/**
 * Two populations of plans, one packed towards the start and one towards the end. A child of two plans of one side is decoded
 * in the other direction, so that every child is justified as well (bi-directional population search with window crossover,
 * after Debels and Vanhoucke 2007). When breeding stalls, the best plan is polished, then a larger population starts afresh.
 * Yields after each decoded plan, true when it was the best so far.
 * Starts of the backward side are counted from the end, in the mirrored net.
 */
export function* searchPopulations(
  stock: Stock,
  directions: readonly [Direction, Direction],
  random: RandomStream,
  breeding: Breeding,
  witness: Witness,
): Generator<boolean, void, void> {
  const breeder = createBreeder(stock, directions, random)
  const keys = new Int32Array(stock.count)
  const champion = newMember(stock)
  let { size } = breeding
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
    yield* breedGenerations(breeder, breeding, sides, witness)
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
  breeder: Breeder,
  { children, keepsParents, leastGain, patience }: Breeding,
  sides: readonly [readonly Member[], readonly Member[]],
  witness: Witness,
): Generator<boolean, void, void> {
  let source: 0 | 1 = 0
  let least = Math.min(...sides[0].map((member) => member.end))
  const totals = sides.map(totalOf)
  for (let stale = 0; stale < patience; stale++) {
    const parents = sides[source]
    const target: 0 | 1 = source === 0 ? 1 : 0
    for (const [index, place] of sides[target].entries()) {
      for (let time = 0; time < children; time++) {
        const child = breeder.breed(parents, index, target, time % 2 === 0)
        yield witness(child.starts, child.end, target)
        if (child.end <= place.end || (time === 0 && !keepsParents)) copyMember(child, place)
      }
      if (place.end < least) {
        least = place.end
        stale = 0
      }
    }
    const total = totalOf(sides[target])
    if (total < (totals[target] as number) * (1 - leastGain)) stale = 0
    totals[target] = total
    source = target
  }
}

function totalOf(members: readonly Member[]): number {
  return members.reduce((total, member) => total + member.end, 0)
}

function newMember(stock: Stock): Member {
  return { starts: new Int32Array(stock.count), end: Number.POSITIVE_INFINITY }
}

function newMembers(stock: Stock, size: number): readonly Member[] {
  return Array.from({ length: size }, () => newMember(stock))
}

/**
 * Moves a few tasks of the champion to the turn of others nearby, decodes backwards and forwards again, and keeps what is not
 * worse: plans of equal length are walked through until one of them can be shortened.
 */
function* polish(
  stock: Stock,
  directions: readonly [Direction, Direction],
  random: RandomStream,
  champion: Member,
  witness: Witness,
): Generator<boolean, void, void> {
  const { count } = stock
  const keys = new Int32Array(count)
  const back = newMember(stock)
  const forth = newMember(stock)
  const rounds = 100 * count
  for (let round = 0; round < rounds; round++) {
    writeEnds(stock, champion, keys)
    const span = spanOf(stock, champion)
    for (let moves = randomBelow(random, 3); moves >= 0; moves--)
      moveNearby(champion, keys, Math.max(1, 0.15 * span), random)
    back.end = directions[1].decode(keys, back.starts)
    yield witness(back.starts, back.end, 1)
    // Decoding forwards rarely wins back more than this.
    if (back.end > champion.end + Math.max(2, 0.01 * span)) continue
    writeEnds(stock, back, keys)
    forth.end = directions[0].decode(keys, forth.starts)
    yield witness(forth.starts, forth.end, 0)
    if (forth.end < champion.end) round = 0
    if (forth.end <= champion.end) copyMember(forth, champion)
  }
}

/** Keys that repeat a plan in the other direction: what ends last comes first. */
function writeEnds({ count, durations }: Stock, plan: Member, keys: Int32Array): void {
  for (let task = 0; task < count; task++)
    keys[task] = -((plan.starts[task] as number) + (durations[task] as number))
}

/** Gives one task the turn just before or after another that starts within `reach` of it, half the time the other way about too. */
function moveNearby(plan: Member, keys: Int32Array, reach: number, random: RandomStream): void {
  const task = randomBelow(random, keys.length)
  const start = plan.starts[task] as number
  for (let attempt = 0; attempt < 20; attempt++) {
    const other = randomBelow(random, keys.length)
    if (other === task || Math.abs((plan.starts[other] as number) - start) > reach) continue
    const own = keys[task] as number
    keys[task] = (keys[other] as number) + (random() < 0.5 ? 1 : -1)
    if (random() < 0.5) keys[other] = own
    return
  }
}

function spanOf({ count, durations }: Stock, plan: Member): number {
  let span = 0
  for (let task = 0; task < count; task++) {
    const end = (plan.starts[task] as number) + (durations[task] as number)
    if (end > span) span = end
  }
  return span
}

interface Breeder {
  /** A child of the member and a partner, valid until the next call; the window is the partner's or the member's own. */
  breed(parents: readonly Member[], index: number, target: 0 | 1, isWindowOfPartner: boolean): Member
}

function createBreeder(
  stock: Stock,
  directions: readonly [Direction, Direction],
  random: RandomStream,
): Breeder {
  const { count, durations, weights } = stock
  const keys = new Int32Array(count)
  const child = newMember(stock)

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

  /** A stretch of a parent's time in which much work starts, out of three tries. */
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

  /** One parent's window in the middle, the other's tasks before and after it; read as ends of the other direction. */
  function cross(window: Member, rest: Member): void {
    const [from, to] = busyWindow(window)
    const early = spanOf(stock, rest)
    const late = spanOf(stock, window)
    for (let task = 0; task < count; task++) {
      const own = window.starts[task] as number
      if (own >= from && own < to) {
        keys[task] = -(own + (durations[task] as number))
        continue
      }
      const other = rest.starts[task] as number
      keys[task] = -(other + (durations[task] as number) + (other < from ? -early : late))
    }
    if (random() < 0.5) shiftSomeKeys(early + late)
  }

  /** Large mutations were measured to do harm: half of the children with swapped keys cost 2 % on 120 tasks. */
  function shiftSomeKeys(span: number): void {
    const times = 1 + randomBelow(random, 2)
    for (let time = 0; time < times; time++) {
      const task = randomBelow(random, count)
      keys[task] = (keys[task] as number) + Math.round((random() - 0.5) * 0.025 * span)
    }
  }

  return {
    breed(parents, index, target, isWindowOfPartner) {
      const own = parents[index] as Member
      const partner = tournament(parents, index)
      if (isWindowOfPartner) cross(partner, own)
      else cross(own, partner)
      child.end = directions[target].decode(keys, child.starts)
      return child
    },
  }
}
