import { type RandomStream, randomStream } from '../random.ts'
import { mirrorPlainNet, type PlainNet } from './plain-net.ts'
import { createSampler, createSorter } from './plain-order.ts'
import { type Breeding, type Direction, searchPopulations } from './plain-population.ts'
import { createSerialDecoder, topologicalOrder } from './plain-serial.ts'
import { allWaits, mirrorWaits, noWait } from './plain-waits.ts'
import { createWindowDecoder, failedCost } from './plain-windows.ts'

export interface PlainIncumbent {
  readonly starts: Int32Array
  end: number
}

export interface PlainSearch {
  readonly best: PlainIncumbent
  /** One decoding; true when it gave a new best plan. */
  step(): boolean
  /** How often each task was the one that found no place; all 0 where that cannot happen. */
  readonly failures: Int32Array
}

/**
 * `expected` is about how many decodings there will be: it sets the size of the first population.
 * Undefined when waits go round in a circle that cannot hold; ask `allWaits` which.
 */
export function createPlainSearch(net: PlainNet, seed: number, expected: number): PlainSearch | undefined {
  const random = randomStream(seed)
  const best = { starts: new Int32Array(net.count), end: Number.POSITIVE_INFINITY }
  const failures = new Int32Array(net.count)
  const directions = directionsOf(net, random, failures)
  if (directions === undefined) return undefined
  const stock = { count: net.count, durations: net.durations, weights: workWeights(net) }
  const steps = searchPopulations(
    stock,
    directions,
    random,
    breedingFor(net.count, expected),
    (starts, end, direction) => {
      return note(net, best, starts, end, direction)
    },
  )
  return { best, failures, step: () => steps.next().value === true }
}

function directionsOf(
  net: PlainNet,
  random: RandomStream,
  failures: Int32Array,
): readonly [Direction, Direction] | undefined {
  const mirrored = mirrorPlainNet(net)
  const ranked = net.isFinishToStart ? topologicalOrder(net) : undefined
  const mirroredRanked = ranked === undefined ? undefined : topologicalOrder(mirrored)
  if (ranked !== undefined && mirroredRanked !== undefined) {
    return [serialDirection(net, ranked, random), serialDirection(mirrored, mirroredRanked, random)]
  }
  const found = allWaits(net)
  if ('circle' in found) return undefined
  return [
    windowDirection(net, found.waits, random, failures),
    windowDirection(mirrored, mirrorWaits(net, found.waits), random, new Int32Array(net.count)),
  ]
}

function serialDirection(net: PlainNet, ranked: Int32Array, random: RandomStream): Direction {
  const decoder = createSerialDecoder(net)
  const sort = createSorter(net, ranked)
  const order = new Int32Array(net.count)
  return {
    sample: createSampler(net, ranked, random),
    decode: (keys, starts) => {
      sort(keys, order)
      return decoder.decode(order, starts)
    },
  }
}

/** First keys here are latest starts with noise of growing strength. */
function windowDirection(
  net: PlainNet,
  waits: Int32Array,
  random: RandomStream,
  failures: Int32Array,
): Direction {
  const tails = Int32Array.from(net.durations, (own, task) => {
    return net.durations.reduce((most, duration, other) => {
      const wait = waits[task * net.count + other] as number
      return wait === noWait ? most : Math.max(most, wait + duration)
    }, own)
  })
  const longest = Math.max(1, ...tails)
  let number = 0
  return {
    sample: (keys) => {
      const noise = number === 0 ? 0 : longest * (number % 4) * 0.5
      for (let task = 0; task < net.count; task++)
        keys[task] = Math.round(longest - (tails[task] as number) + noise * random())
      number++
    },
    decode: createWindowDecoder(net, waits, failures).decode,
  }
}

/** Starts of the backward side are counted from the end, in the mirrored net. */
function note(
  net: PlainNet,
  best: PlainIncumbent,
  starts: Int32Array,
  end: number,
  direction: 0 | 1,
): boolean {
  if (end >= best.end || end >= failedCost) return false
  best.end = end
  for (let task = 0; task < net.count; task++) {
    const start = starts[task] as number
    best.starts[task] = direction === 0 ? start : end - start - (net.durations[task] as number)
  }
  return true
}

function workWeights(net: PlainNet): Float64Array {
  return Float64Array.from(net.durations, (duration, task) => {
    const share = net.capacities.reduce((sum, capacity, resource) => {
      return sum + (net.demands[task]?.[resource] as number) / Math.max(1, capacity)
    }, 0)
    return duration * share
  })
}

/** The more decodings there will be for each task, the more members can be bred to the end; found by trials on 30 to 120 tasks. */
function breedingFor(count: number, expected: number): Breeding {
  const size = Math.round(Math.max(16, Math.min(400, 1.8 * (expected / Math.max(1, count)) ** 0.7)))
  // The pressure of four children gains more than as many members with one child each. While the best plan stands still the
  // others close up and then pass it: to stop for the best plan alone cost 0.3 % after 400,000 decodings of 120 tasks.
  return { size, children: 4, keepsParents: true, leastGain: 0.0005, patience: 5 }
}
