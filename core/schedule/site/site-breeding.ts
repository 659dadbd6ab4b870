import { slotAtTick } from '../axis.ts'
import { never, type SiteNet } from '../net/site-net.ts'
import { type Breeding, type Direction, type Stock, searchPopulations } from '../plain/plain-population.ts'
import { failedCost } from '../plain/plain-windows.ts'
import type { RandomStream } from '../random.ts'
import type { SiteAttempts } from './site-attempts.ts'
import type { Choices } from './site-choices.ts'
import type { SiteDecoder } from './site-decoder.ts'
import type { SiteTries } from './site-tries.ts'

/** With parents kept, as plain nets keep them, a house of 580 tasks ended about a day later after a thousand decodings. */
const breeding: Breeding = { size: 24, children: 2, keepsParents: false, leastGain: 1, patience: 10 }

/**
 * The two-direction population search for an earlier finish; cost is the working time until the last end, in slots. Yields after
 * each decoding, true when it gave a new best plan. `good`: choices that led to the best plan, whose crews half of the children take.
 */
export function breedPlans(
  net: SiteNet,
  attempts: SiteAttempts,
  tries: SiteTries,
  random: RandomStream,
  heads: readonly number[],
  good: Choices,
): Generator<boolean, void, void> {
  const { trial } = attempts
  let samples = 0
  let isNewBest = false
  /** The latest end of the plans of two generations, so that backwards there is time for each of their children. */
  let reach = 0
  let latest = 0
  let noted = 0

  function noteEnd(end: number): void {
    latest = Math.max(latest, end)
    reach = Math.max(reach, end)
    if (++noted % (2 * breeding.size) !== 0) return
    reach = latest
    latest = 0
  }

  const directions: readonly [Direction, Direction] = [
    {
      sample: (keys) => {
        tries.start(trial, samples++)
        for (let task = 0; task < keys.length; task++) keys[task] = Math.round(trial.keys[task] as number)
      },
      decode: (keys, starts) => {
        choose(keys)
        isNewBest = attempts.forward()
        if (attempts.isComplete()) noteEnd(attempts.endOf(trial.value))
        return costOf(attempts.forwardDecoder, starts, net.firstTick)
      },
    },
    {
      sample: () => undefined,
      decode: (keys, starts) => {
        choose(keys)
        const end = reach === 0 ? net.axis.horizon : reach
        isNewBest = attempts.backward(end)
        return costOf(attempts.backwardDecoder(), starts, net.axis.horizon - end)
      },
    },
  ]

  function choose(keys: Int32Array): void {
    for (let task = 0; task < keys.length; task++) trial.keys[task] = keys[task] as number
    trial.delays.fill(0)
    if (samples <= tries.startCount) return
    const isFound = Number.isFinite(good.value[0] as number)
    trial.sizes.set((random() < 0.5 && isFound ? good : trial).sizes)
    trial.taste.set(good.taste)
    trial.keep.set(good.keep)
    tries.varyCrews(trial)
  }

  /** Unplaced tasks cost most; else promises first, then the last end. Ticks of both sides are those of the decoder. */
  function costOf(decoder: SiteDecoder, starts: Int32Array, from: number): number {
    const { axis, tasks } = decoder.net
    const { placements } = decoder
    let unplaced = 0
    let last = 0
    for (const { index, fixed: isFixed } of tasks) {
      const isPlaced = placements.start[index] !== -never
      if (!isPlaced) unplaced++
      starts[index] = isPlaced ? (placements.start[index] as number) - from : (heads[index] as number)
      if (isPlaced && isFixed !== 1) last = Math.max(last, placements.end[index] as number)
    }
    const slot = slotAtTick(axis, last) - slotAtTick(axis, from)
    if (unplaced > 0) return failedCost + unplaced * axis.horizon + slot
    const broken = 1_000_000 * (trial.value[0] as number) + 10_000 * (trial.value[1] as number)
    return (Number.isFinite(broken) ? broken : 0) + slot
  }

  return searchPopulations(breedingStock(net), directions, random, breeding, () => isNewBest)
}

/** Lengths in ticks without pauses; work counts people, since they are what is short. */
function breedingStock(net: SiteNet): Stock {
  const durations = Int32Array.from(net.tasks, (task) => task.durations[0] ?? 0)
  const weights = Float64Array.from(net.tasks, (task) => (task.durations[0] ?? 0) * (task.sizes[0] ?? 0))
  return { count: net.tasks.length, durations, weights }
}
