import type { Decoder } from '../fitting/decoder.ts'
import type { Net } from '../fitting/net.ts'
import type { RandomStream } from '../random.ts'
import { copyGenes, decode, type Genes, keysFromOrder, newGenes } from './genes.ts'
import type { Changed } from './moves/changed-plan.ts'
import { change, changeable } from './search-moves.ts'

/** Cents that one broken tick weighs: more than any plan costs, of five hundred rooms too. */
export const weightOfBroken = 1e10

/** Cost of a plan as one number; what is broken weighs more than any money. */
export function weightOf(decoder: Decoder): number {
  const { broken, cents } = decoder.cost()
  return broken * weightOfBroken + cents
}

/** A dearer plan is gone on from with some chance, which falls from the first to the last temperature; cents. */
interface Temperatures {
  readonly first: number
  readonly last: number
}

/** On site what a few hours are worth; elsewhere about one step of the grid. */
function temperaturesOf({ problem }: Net): Temperatures {
  if (problem.clock.kind === 'site') return { first: 6000, last: 400 }
  return { first: 1.2 * problem.prices.siteDay, last: 0.15 * problem.prices.siteDay }
}

/** Tries in the first round of cooling, for each task and at most. */
const triesForTask = 40
const mostInFirstRound = 4000

/** So often a plan is put together with its gaps filled. */
const shareFilled = 0.1

/** Each round is longer than the one before by this. */
const growth = 1.1

/** Changes at once in a shake, for each task and at least: small houses are held fast by teams that only change together. */
const changesForTask = 0.3
const leastShaken = 6
const mostShakes = 20

/** After so many changes that were taken, keys are set to the order they gave. */
const changesBetweenKeys = 5

/**
 * Changes a plan little by little and goes on from what is not much dearer, in rounds of cooling: from the best, from the best shaken, from
 * where the last round ended.
 */
interface Annealing {
  /** One try; true when it is better than everything before. */
  readonly step: () => boolean
  /** Starts over from these genes, which weigh so much. */
  readonly goOnFrom: (genes: Genes, weight: number) => void
  readonly best: Genes
  readonly bestWeight: () => number
}

/** Needs a first plan (`goOnFrom`) before it is stepped. */
export function createAnnealing(decoder: Decoder, random: RandomStream): Annealing {
  const { net } = decoder
  const { first, last } = temperaturesOf(net)
  const isOnSite = net.problem.clock.kind === 'site'
  const current = newGenes(net)
  const trial = newGenes(net)
  const best = newGenes(net)
  const start = new Int32Array(net.count)
  const end = new Int32Array(net.count)
  const team = new Int32Array(net.count)
  const changed: Changed = { net, genes: trial, start, end, team, random, ...changeable(net) }
  let weight = Number.POSITIVE_INFINITY
  let bestWeight = Number.POSITIVE_INFINITY
  let round = Math.min(mostInFirstRound, triesForTask * net.count)
  let turn = 0
  let rounds = 0
  let taken = 0
  const take = (): void => {
    start.set(decoder.start)
    end.set(decoder.end)
    team.set(decoder.team)
  }
  const goOnFrom = (genes: Genes, itsWeight: number): void => {
    copyGenes(genes, current)
    weight = itsWeight
    if (weight < bestWeight) {
      bestWeight = weight
      copyGenes(genes, best)
    }
    decode(decoder, current)
    take()
    turn = 0
  }
  /** Goes on from the best with much of it changed by chance; from where it is where none of these holds together. */
  function shake(): void {
    for (let turns = 0; turns < mostShakes; turns++) {
      copyGenes(best, trial)
      for (let changes = 0; changes < Math.max(leastShaken, net.count * changesForTask); changes++)
        change(changed)
      if (!decode(decoder, trial, isOnSite)) continue
      if (isOnSite) keysFromOrder(decoder, trial)
      goOnFrom(trial, weightOf(decoder))
      return
    }
    turn = 0
  }
  return {
    best,
    bestWeight: () => bestWeight,
    goOnFrom,
    step: () => {
      if (turn === round) {
        round = Math.ceil(round * growth)
        rounds++
        if (rounds % 3 === 0) shake()
        // Another round goes on from where it is, so that the best does not hold the search where it is.
        else if (rounds % 3 === 1) turn = 0
        else goOnFrom(best, bestWeight)
      }
      const temperature = first * (last / first) ** (turn / round)
      turn++
      copyGenes(current, trial)
      change(changed)
      const fills = isOnSite && random() < shareFilled
      if (!decode(decoder, trial, fills)) return false
      if (fills) keysFromOrder(decoder, trial)
      const next = weightOf(decoder)
      if (next > weight && random() >= Math.exp((weight - next) / temperature)) return false
      weight = next
      take()
      if (++taken % changesBetweenKeys === 0) keysFromOrder(decoder, trial)
      copyGenes(trial, current)
      if (next >= bestWeight) return false
      bestWeight = next
      copyGenes(trial, best)
      return true
    },
  }
}
