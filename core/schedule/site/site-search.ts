import { never, type SiteNet } from '../net/site-net.ts'
import { randomStream } from '../random.ts'
import { createRoomHolds } from './room-holds.ts'
import { createSiteAnnealing } from './site-annealing.ts'
import { createSiteAttempts } from './site-attempts.ts'
import { createSiteBeams } from './site-beams.ts'
import { breedPlans } from './site-breeding.ts'
import { copyChoices, emptyChoices } from './site-choices.ts'
import type { SitePlacements } from './site-placements.ts'
import type { Stuck } from './site-placing.ts'
import { createSiteTries } from './site-tries.ts'
import type { SiteValue } from './site-value.ts'

/** The search over one site net, in single steps; each step decodes one plan or extends a partial one in every way. */
export interface SiteSearch {
  /** True when it gave a new best plan. */
  step(): boolean
  readonly best: SitePlacements
  readonly bestValue: SiteValue
  hasPlan(): boolean
  /** Tasks on which decodings failed, with how often and why; for naming the clash. */
  readonly stuck: ReadonlyMap<number, { readonly count: number; readonly why: Stuck['why'] }>
}

/** Decodings of a wave: so many for each task, and of a large job no more than the second number. */
const decodingsPerTask = 20
const longestWave = 1000
/** How often a small job is closed up from a new first try instead of the best plan. */
const newTries = 0.8
/** In jobs of no more open tasks than this so many waves after each two others are beams. */
const mostTasksForBeams = 60
const beamWaves = 2

/**
 * Waves take turns: one breeds for an earlier finish, the next puts rooms out of use for fewer days, from the best plan or, in small jobs
 * mostly, from a new first try, since which rooms are out of use together is seldom changed by small steps. In small jobs beams follow, which
 * build plans up from their begin and find the tight ones that small steps miss. `isProved`: can no plan finish before this day? Then
 * there is nothing left to breed for.
 */
export function createSiteSearch(
  net: SiteNet,
  seed: number,
  heads: readonly number[],
  isProved: (finish: number) => boolean,
): SiteSearch {
  const count = net.tasks.length
  const random = randomStream(seed)
  const holds = createRoomHolds(net)
  const attempts = createSiteAttempts(net)
  const { trial, best, bestValue, stuck } = attempts
  const tries = createSiteTries(net, random, heads, holds)
  const bestChoices = emptyChoices(count)
  const breeding = breedPlans(net, attempts, tries, random, heads, bestChoices)
  const annealing = createSiteAnnealing(net, attempts, tries, holds, random)
  const beams = hasBeams(net)
    ? createSiteBeams(net, attempts, holds, random, bestChoices, isProved)
    : undefined
  const fullWave = decodingsPerTask * (count + 5)
  const waveLength = Math.min(longestWave, fullWave)
  let isFixedPlaced = false
  let kind: 'breed' | 'anneal' | 'beam' = 'breed'
  let wave = 0
  let waves = 0
  let samples = tries.startCount

  const hasPlan = (): boolean => Number.isFinite(bestValue[0] as number)

  function beginWave(): void {
    wave = 0
    waves++
    kind = nextKind()
    if (kind !== 'anneal') return
    attempts.aimAt(isProved(bestValue[2] as number) ? never : holds.dayAfter((bestValue[6] as number) - 1, 0))
    copyChoices(bestChoices, annealing.current)
    if (fullWave > longestWave || random() >= newTries) return
    tries.start(annealing.current, samples++)
    annealing.current.value.fill(Number.POSITIVE_INFINITY)
  }

  function nextKind(): typeof kind {
    if (!hasPlan()) return 'breed'
    const turn = waves % (beams === undefined ? 2 : 2 + beamWaves)
    if (turn > 1) return 'beam'
    return turn === 0 || isProved(bestValue[2] as number) ? 'anneal' : 'breed'
  }

  /** The choices that lead to the plan just found: its own starts as keys. */
  function remember(): void {
    copyChoices(trial, bestChoices)
    for (let task = 0; task < count; task++) bestChoices.keys[task] = best.start[task] as number
    holds.firstDays(best, bestChoices.delays)
  }

  function step(): boolean {
    if (!isFixedPlaced) {
      isFixedPlaced = attempts.placeFixed()
      if (!isFixedPlaced) return false
    }
    if (wave === waveLength) beginWave()
    const isNewBest = stepOfWave()
    wave++
    if (isNewBest) remember()
    return isNewBest
  }

  function stepOfWave(): boolean {
    if (kind === 'breed') return breeding.next().value === true
    return kind === 'beam' && beams !== undefined ? beams.step() : annealing.step(wave / waveLength)
  }

  return { step, best, bestValue, stuck, hasPlan }
}

/** Promises come before an earlier finish and fewer room-days, which beams look for, and unbroken clocks have no days. */
function hasBeams({ tasks, problem }: SiteNet): boolean {
  const open = tasks.filter((task) => task.fixed === 0)
  const hasPromises = open.some((task) => task.promisedStart !== -never)
  return problem.clock.kind === 'site' && !hasPromises && open.length <= mostTasksForBeams
}
