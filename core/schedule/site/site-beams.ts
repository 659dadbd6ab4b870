import { never, type SiteNet } from '../net/site-net.ts'
import type { RandomStream } from '../random.ts'
import type { RoomHolds } from './room-holds.ts'
import type { SiteAttempts } from './site-attempts.ts'
import { createSiteBeam } from './site-beam.ts'
import { type Choices, copyChoices } from './site-choices.ts'

/** Partial plans kept of those with equal work in them; most of these that may hold the same tasks. */
const width = 8
const mostAlike = 6
const mostNoise = 0.2

/**
 * One beam after another, each for a plan better than the best: done a day sooner, or by the same day with rooms out of use for a day
 * less. Both take turns until the finish is proved. They differ by chance in what they think promising. `best`: choices of the best plan.
 */
export function createSiteBeams(
  net: SiteNet,
  attempts: SiteAttempts,
  holds: RoomHolds,
  random: RandomStream,
  best: Choices,
  isProved: (finish: number) => boolean,
): { step(): boolean } {
  const { bestValue, trial } = attempts
  const beam = createSiteBeam(net, holds, random)
  const sizes = new Uint8Array(net.tasks.length)
  let isForFinish = false
  let bestFinish = never
  let bestDays = never

  function begin(): void {
    bestFinish = bestValue[2] as number
    bestDays = bestValue[3] as number
    isForFinish = !isForFinish && !isProved(bestFinish)
    sizes.set(best.sizes)
    const aim = {
      deadline: holds.dayAfter(0, isForFinish ? bestFinish : bestFinish + 1),
      roomDays: isForFinish ? never : bestDays - 1,
      sizes,
    }
    const manner = {
      width,
      alike: 1 + Math.floor(random() ** 2 * mostAlike),
      roomWeight: Math.exp(2 * random() - 1),
      noise: random() * mostNoise,
    }
    beam.begin(aim, manner, attempts.fixed)
  }

  return {
    step() {
      if (beam.isOver() || bestValue[2] !== bestFinish || bestValue[3] !== bestDays) begin()
      if (!beam.step()) return false
      copyChoices(best, trial)
      trial.sizes.set(sizes)
      return attempts.offer(beam.placements)
    },
  }
}
