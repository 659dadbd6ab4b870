import { mirrorNet } from '../net/mirror.ts'
import { never, type SiteNet } from '../net/site-net.ts'
import { type Choices, emptyChoices } from './site-choices.ts'
import { createSiteDecoder, type SiteDecoder } from './site-decoder.ts'
import { copyPlacements, emptyPlacements, mirrorPlacements, type SitePlacements } from './site-placements.ts'
import type { Stuck } from './site-placing.ts'
import { createSiteValuer, isBetter, type SiteValue, worstValue } from './site-value.ts'

/** Decodes in both directions, reckons what came of it and keeps the best plan of all. */
export interface SiteAttempts {
  /** The choices to decode. A decoding writes its starts and its value into them; the value is infinite where it failed. */
  readonly trial: Choices
  /** The tick by which all is to be done, for the guide of the values from now on; never where there is no such aim. */
  aimAt(tick: number): void
  /** Places what is fixed; false when it cannot be. Comes before all decoding. */
  placeFixed(): boolean
  /** Where what is fixed lies. */
  readonly fixed: SitePlacements
  /** Takes a plan made elsewhere by the crews of the trial, as if it had been decoded. */
  offer(placements: SitePlacements): boolean
  /** True when a new best plan was found. */
  forward(): boolean
  /** Backwards from a tick, the end of the best plan where none is given. Keys are the least first of the mirrored net. */
  backward(end?: number): boolean
  /** End of the day (or the moment) on which a plan of that value ends. */
  endOf(value: SiteValue): number
  /** The last plan decoded, in time as it runs. */
  readonly found: SitePlacements
  readonly isComplete: () => boolean
  /** The placements of each direction's decoder as it sees them, complete or not. */
  readonly forwardDecoder: SiteDecoder
  readonly backwardDecoder: () => SiteDecoder
  readonly best: SitePlacements
  readonly bestValue: SiteValue
  readonly stuck: ReadonlyMap<number, { readonly count: number; readonly why: Stuck['why'] }>
}

export function createSiteAttempts(net: SiteNet): SiteAttempts {
  const count = net.tasks.length
  const forwardDecoder = createSiteDecoder(net)
  let mirrored: SiteDecoder | undefined
  const backwardDecoder = (): SiteDecoder => {
    mirrored ??= createSiteDecoder(mirrorNet(net))
    return mirrored
  }
  const valuer = createSiteValuer(net)
  const trial = emptyChoices(count)
  const fixed = emptyPlacements(count)
  const mirroredFixed = emptyPlacements(count)
  const found = emptyPlacements(count)
  const best = emptyPlacements(count)
  const bestValue = worstValue()
  let goal = never
  const stuck = new Map<number, { count: number; why: Stuck['why'] }>()

  function note(problem: Stuck): void {
    const known = stuck.get(problem.task)
    stuck.set(problem.task, { count: (known?.count ?? 0) + 1, why: problem.why })
  }

  function placeFixed(): boolean {
    const problem = forwardDecoder.placeFixed()
    if (problem !== undefined) note(problem)
    copyPlacements(forwardDecoder.placements, fixed)
    mirrorPlacements(net, fixed, mirroredFixed)
    return problem === undefined
  }

  const endOf = (value: SiteValue): number => latestEnd(net, value)

  function keep(): boolean {
    trial.starts.set(found.start)
    valuer(found, trial.value, goal)
    if (!isBetter(trial.value, bestValue)) return false
    copyPlacements(found, best)
    bestValue.set(trial.value)
    return true
  }

  function offer(placements: SitePlacements): boolean {
    copyPlacements(placements, found)
    return keep()
  }

  function forward(): boolean {
    const problem = forwardDecoder.decode(trial, net.firstTick, fixed)
    if (problem === undefined) return offer(forwardDecoder.placements)
    note(problem)
    trial.value.fill(Number.POSITIVE_INFINITY)
    return false
  }

  function backward(end = endOf(bestValue)): boolean {
    const problem = backwardDecoder().decode(trial, net.axis.horizon - end, mirroredFixed)
    if (problem === undefined) {
      mirrorPlacements(net, backwardDecoder().placements, found)
      return keep()
    }
    trial.value.fill(Number.POSITIVE_INFINITY)
    return false
  }

  return {
    aimAt: (tick) => {
      goal = tick
    },
    trial,
    placeFixed,
    fixed,
    offer,
    forward,
    backward,
    endOf,
    found,
    isComplete: () => Number.isFinite(trial.value[0] as number),
    forwardDecoder,
    backwardDecoder,
    best,
    bestValue,
    stuck,
  }
}

function latestEnd(net: SiteNet, value: SiteValue): number {
  if (net.problem.clock.kind === 'unbroken') return value[6] as number
  const day = value[2] as number
  let tick = value[6] as number
  while (tick < net.axis.horizon && net.axis.dayOfTick[tick] === day) tick++
  return tick
}
