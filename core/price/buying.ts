import type { Colour } from '../project/survey-records.ts'
import type { Step } from '../specification/types.ts'
import { roundToCents } from '../units/money.ts'
import { type ContainerMix, type ContainerSize, cheapestContainers, mixOfOne } from './containers.ts'

/** Kept back of every finish paint for touching up, percent of what the work takes; shop assumption. */
export const sparePercent = 3

/** A mix of small cans is bought only where it saves at least this much over fewer cans; shop assumption. */
export const savingWorthIt = roundToCents(1000)

/** Less than a gallon by no more than a rounding. */
const gallon = 1 - 1e-9

/** A color that is tinted to order; white comes as it is. */
export function isMixed(colour: Colour | undefined): boolean {
  return colour !== undefined && colour.depth !== 'white'
}

/** What is left for touching up when the work is done: of finish coats only. */
export function spareOf(needed: number, steps: readonly Step[]): number {
  return steps.some((step) => step.operation === 'coat') ? (needed * sparePercent) / 100 : 0
}

/**
 * Cans to buy for `needed` gallons. A mixed color comes in whole gallons of one batch unless one small can holds it all. Of what is left
 * the cheapest mix, or fewer cans of one size where the mix saves less than `savingWorthIt`.
 */
export function cansFor(needed: number, sizes: readonly ContainerSize[], mixed: boolean): ContainerMix {
  const offered = mixed ? sizesOfBatch(needed, sizes) : sizes
  const cheapest = cheapestContainers(needed, offered)
  const worth = cheapest.priceCents + savingWorthIt
  const plain = offered
    .map((size) => mixOfOne(needed, size))
    .filter((mix) => mix.priceCents < worth)
    .toSorted((a, b) => cans(a) - cans(b) || a.priceCents - b.priceCents)[0]
  return plain !== undefined && cans(plain) < cans(cheapest) ? plain : cheapest
}

/** One small can that holds it all, or whole gallons; where neither is offered, whatever there is. */
function sizesOfBatch(needed: number, sizes: readonly ContainerSize[]): readonly ContainerSize[] {
  const batch = sizes.filter((size) => size.gallons >= Math.min(gallon, needed))
  return batch.length === 0 ? sizes : batch
}

function cans({ containers }: ContainerMix): number {
  return containers.reduce((total, each) => total + each.count, 0)
}
