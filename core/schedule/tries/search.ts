import type { Clash } from '../explain.ts'
import { Decoder } from '../fitting/decoder.ts'
import { buildNet, type Net, none, openTask } from '../fitting/net.ts'
import { verifyPlan } from '../judge/verify.ts'
import type { Plan, ScheduleProblem } from '../model.ts'
import { type RandomStream, randomBelow, randomStream } from '../random.ts'
import { createAnnealing, weightOf } from './annealing.ts'
import { dispatch, type ForemanRule } from './dispatch.ts'
import { decode, type Genes, newGenes } from './genes.ts'
import { planFrom } from './read-off.ts'

/**
 * A search that can be stopped and gone on with at will: nothing happens outside `step`. What is found depends only on the problem, the
 * seed and the number of tries, not on how they are sliced.
 */
export interface ScheduleSearch {
  /** So many tries more; true when a better plan came of them. */
  step(tries: number): boolean
  /** The best plan so far; undefined while there is none in which everything holds. */
  best(): Plan | undefined
  /** The same plan again is all there is: nothing is open. */
  isFinished(): boolean
  /** Tries done. */
  tries(): number
  /** What is in the way of the best try, while there is no plan; undefined before the first try and as soon as there is one. */
  clash(): Clash | undefined
}

/** Plans given out by a foreman's rule before one is changed little by little. */
const foremanTries = Number(
  (globalThis as never as { process: { env: Record<string, string> } }).process.env.FT ?? 240,
)

/** Needs a problem without faults (`validateProblem`). */
export function createSearch(problem: ScheduleProblem, seed: number): ScheduleSearch {
  const net = buildNet(problem)
  const decoder = new Decoder(net)
  const random = randomStream(seed)
  const annealing = createAnnealing(decoder, random)
  const foreman = createForeman(net, random)
  const genes = newGenes(net)
  const stuck = new Int32Array(net.count)
  const hasOpen = net.kind.includes(openTask)
  let done = 0
  let bestBroken = true
  let plan: Plan | undefined
  let leastForeman = Number.POSITIVE_INFINITY

  function tryForeman(): boolean {
    const rule = foreman.next(done)
    const isWhole = dispatch(decoder, rule, genes)
    completeGenes(net, genes)
    const weight = isWhole && decode(decoder, genes) ? weightOf(decoder) : Number.POSITIVE_INFINITY
    const G: Record<string, string | undefined> = (
      globalThis as never as { process: { env: Record<string, string> } }
    ).process.env
    const T = Number(G.TC ?? 20000) * (1 - done / foremanTries) + 1
    if (weight < leastForeman || random() < Math.exp((leastForeman - weight) / T)) {
      leastForeman = weight
      foreman.keep(rule)
      if (weight < annealing.bestWeight()) {
        annealing.goOnFrom(genes, weight)
        return true
      }
    }
    return false
  }
  function tryOnce(): boolean {
    const isBetter = done < foremanTries ? tryForeman() : annealing.step()
    done++
    if (isBetter) {
      plan = undefined
      bestBroken = annealing.bestWeight() >= 1e8
    }
    if (bestBroken) noteStuck(decoder, stuck)
    return isBetter
  }
  return {
    step: (tries) => {
      let found = false
      for (let count = 0; count < tries && (hasOpen || done === 0); count++) found = tryOnce() || found
      return found
    },
    best: () => {
      if (bestBroken) return undefined
      if (plan === undefined) {
        decode(decoder, annealing.best)
        plan = planFrom(decoder)
      }
      return plan
    },
    isFinished: () => !hasOpen && done > 0,
    tries: () => done,
    clash: () => (bestBroken && done > 0 ? clashOf(problem, decoder, annealing.best, stuck) : undefined),
  }
}

/** The first task that found no place. */
function noteStuck(decoder: Decoder, stuck: Int32Array): void {
  for (let task = 0; task < stuck.length; task++) {
    if (decoder.isPlaced[task] === 1 || decoder.waitsFor[task] !== 0) continue
    stuck[task] = (stuck[task] as number) + 1
    return
  }
}

/** The first rule that the best try breaks; where no try found a place for everything, the task that was left most often. */
function clashOf(problem: ScheduleProblem, decoder: Decoder, best: Genes, stuck: Int32Array): Clash {
  const left = problem.tasks[stuck.indexOf(Math.max(...stuck))]?.id ?? ''
  if (!decode(decoder, best)) return { kind: 'stuckMost', task: left, because: 'noPlace', room: null }
  const broken = verifyPlan(problem, planFrom(decoder))[0]
  return {
    kind: 'stuckMost',
    task: broken?.tasks[0] ?? left,
    because: broken?.rule ?? 'noPlace',
    room: broken?.room ?? null,
  }
}

/** Rooms that nobody was given get a lead, so that any change of genes finds one. */
function completeGenes(net: Net, genes: Genes): void {
  for (const [room, { leads }] of net.rooms.entries()) {
    if (genes.lead[room] !== none) continue
    genes.lead[room] = leads === 0 ? 0 : 31 - Math.clz32(leads & -leads)
  }
}

/**
 * What is promised back first; then top down and towards the door: what is behind most halls, then the halls themselves, then what none of them leads to; rooms alike
 * in the order of the file.
 */
export function walkingOrder({ problem }: Net): Float64Array {
  const ways = new Set(problem.rooms.flatMap(({ reachedThrough }) => reachedThrough))
  return Float64Array.from(problem.rooms, ({ id, reachedThrough, backBy }, room) => {
    const behind = ways.has(id) ? 0.5 : reachedThrough.length
    return room - (backBy === null ? behind : 1000) * problem.rooms.length
  })
}

/** Rules to give out work by: some plain ones first, then changes of the best. */
function createForeman(net: Net, random: RandomStream) {
  const { rooms } = net
  const day = 1440 / net.axis.grid
  const limit = Math.max(1, Math.min(rooms.length, net.problem.rules.roomsOutOfUse ?? rooms.length))
  const order = walkingOrder(net)
  const byRank = Float64Array.from(order, (rank) => [...order].filter((other) => other < rank).length)
  let best: ForemanRule | null = null
  const plain = (index: number): ForemanRule => ({
    rank: byRank.map((rank) => rank * [1, 12, day][index % 3]!),
    granularity: [1, 24, 48][(index + (index >> 2)) % 3]!,
    mostOpen: Math.min(limit, Math.max(1, net.people.length + 1 - (index % 4) + (index >> 3))),
    moving: index % 2 === 0 ? 6 : 24,
    opening: index % 3 === 0 ? 12 : day / 3,
    sharing: index % 3 === 1 ? 0 : 24,
    alone: new Uint8Array(rooms.length),
  })
  function changed(rule: ForemanRule): ForemanRule {
    const rank = rule.rank.slice()
    const alone = rule.alone.slice()
    const one = randomBelow(random, rooms.length)
    const other = randomBelow(random, rooms.length)
    if (random() < 0.5) {
      const kept = rank[one]!
      rank[one] = rank[other]!
      rank[other] = kept
    } else rank[one] = rank[one]! + (random() - 0.5) * (random() < 0.5 ? 4 * day : day)
    if (random() < 0.2) alone[other] = 1 - alone[other]!
    const some = (value: number, most: number): number => (random() < 0.15 ? random() * most : value)
    return {
      rank,
      alone,
      granularity: random() < 0.1 ? 1 + randomBelow(random, 96) : rule.granularity,
      mostOpen: random() < 0.1 ? 1 + randomBelow(random, limit) : rule.mostOpen,
      moving: some(rule.moving, day / 4),
      opening: some(rule.opening, day),
      sharing: some(rule.sharing, day / 2),
    }
  }
  return {
    next: (index: number): ForemanRule => (index < 36 || best === null ? plain(index) : changed(best)),
    keep: (rule: ForemanRule): void => {
      best = rule
    },
  }
}
