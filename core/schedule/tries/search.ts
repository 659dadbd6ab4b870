import type { Clash } from '../explain-clashes.ts'
import { Decoder } from '../fitting/decoder.ts'
import { buildNet, type Net } from '../fitting/net.ts'
import { none, openTask } from '../fitting/numbers.ts'
import { verifyPlan } from '../judge/verify.ts'
import type { Plan, ScheduleProblem } from '../model.ts'
import { randomStream } from '../random.ts'
import { createAnnealing, weightOf, weightOfBroken } from './annealing.ts'
import { dispatch } from './dispatch.ts'
import { createForeman } from './foreman.ts'
import { decode, type Genes, newGenes } from './genes.ts'
import { keptGenes } from './kept-genes.ts'
import { planFrom } from './read-off.ts'
import { triesFor } from './tries-for.ts'

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
  /** What the best plan costs by the search's own sums, in cents; null while there is none. */
  weight(): number | null
  /** What is in the way of the best try, while there is no plan; undefined before the first try and as soon as there is one. */
  clash(): Clash | undefined
}

/** Plans given out by a foreman's rule before one is changed little by little, in a usual and in a very large house. */
const mostForemanTries = 240
const leastForemanTries = 12
/** So many rules are gone through in the first try where the ones before do not give a plan. */
const rulesInFirstTry = 12
/** A rule that gives a dearer plan is gone on from with some chance, which falls to nothing; cents. */
const foremanTemperature = 20_000

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
  // Without rooms all rules give the same plan.
  const foremanTries = net.rooms.length === 0 ? 1 : triesFor(net.count, mostForemanTries, leastForemanTries)
  let done = 0
  let bestBroken = true
  let plan: Plan | undefined
  let leastForeman = Number.POSITIVE_INFINITY

  let rules = 0
  function tryForeman(): boolean {
    const rule = foreman.next(rules++)
    const isWhole = dispatch(decoder, rule, genes)
    completeGenes(net, genes)
    const weight = isWhole && decode(decoder, genes) ? weightOf(decoder) : Number.POSITIVE_INFINITY
    const temperature = foremanTemperature * (1 - done / foremanTries) + 1
    if (weight < leastForeman || random() < Math.exp((leastForeman - weight) / temperature)) {
      leastForeman = weight
      foreman.keep(rule)
      if (weight < annealing.bestWeight()) {
        annealing.goOnFrom(genes, weight)
        return true
      }
    }
    return false
  }
  /** What comes near to the plan that is to be kept is tried before anything else. */
  function tryKept(): boolean {
    const kept = keptGenes(net)
    if (kept === null || !decode(decoder, kept)) return false
    annealing.goOnFrom(kept, weightOf(decoder))
    return true
  }
  /** The very first try goes through some rules until one of them holds. */
  function tryPlainRules(): void {
    for (let count = 1; count < rulesInFirstTry && annealing.bestWeight() >= weightOfBroken; count++)
      tryForeman()
  }
  function tryOnce(): boolean {
    const hasKept = done === 0 && tryKept()
    if (done === 0) tryPlainRules()
    const isBetter = (done < foremanTries ? tryForeman() : annealing.step()) || done === 0 || hasKept
    done++
    if (isBetter) {
      plan = undefined
      bestBroken = annealing.bestWeight() >= weightOfBroken
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
    weight: () => (bestBroken ? null : annealing.bestWeight()),
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
