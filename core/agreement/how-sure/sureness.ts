import { additions } from '../../price/additions.ts'
import type { EstimateLine, EstimateTotals } from '../../price/estimate-types.ts'
import type { HouseRules } from '../../project/job.ts'
import { type Cents, roundToCents, sumCents } from '../../units/money.ts'
import type { CostRisks } from './cost-risks.ts'
import { type DoubtSource, doubtSources, type Simulation } from './simulation.ts'

/** The figure that is asked for holds so often: four times in five. */
const heldShare = 0.8
/** One more would be finer than the picture. */
const barCount = 28

/** How sure a price is, from draws of its cost. Prices are before tax; those of draws hold no contingency, for they are what it is for. */
export interface Sureness {
  readonly draws: number
  /** The price as it stands, contingency in it. */
  readonly pricedCents: Cents
  /** What the price would have to be to hold four times in five. */
  readonly heldCents: Cents
  /** Share of draws in which the price as it stands is enough. */
  readonly holds: number
  /** Percent that make the price hold four times in five, to a tenth above. */
  readonly contingencyPercent: number
  /** How often prices fall where, from the least drawn to the most; shares of 1. */
  readonly bars: readonly { readonly fromCents: number; readonly toCents: number; readonly share: number }[]
  /** What the doubt comes from, the largest first; shares of the variance, together 1 or, where nothing is in doubt, 0. */
  readonly sources: readonly { readonly source: DoubtSource; readonly share: number }[]
}

/** What draws say of a price; null before any were made, or where nothing is priced. */
export function surenessOf(
  { price }: Pick<HouseRules, 'price'>,
  { beforeTax }: Pick<EstimateTotals, 'beforeTax'>,
  { plannedCents }: Pick<CostRisks, 'plannedCents'>,
  simulation: Simulation,
): Sureness | null {
  const added = simulation.added()
  if (added.length === 0 || plannedCents <= 0) return null
  const costs = Float64Array.from(added, (cents) => plannedCents + cents).sort()
  const heldCost = costs[Math.min(costs.length - 1, Math.ceil(heldShare * costs.length) - 1)] ?? plannedCents
  const priceOf = (cost: number) => priceWithoutContingency(price, cost)
  const factor = priceOf(plannedCents) / plannedCents
  const enough = countUntil(costs, (cost) => priceOf(cost) > beforeTax)
  return {
    draws: costs.length,
    pricedCents: beforeTax,
    heldCents: priceOf(heldCost),
    holds: enough / costs.length,
    contingencyPercent: contingencyFor(heldCost / plannedCents),
    bars: barsOf(costs, factor),
    sources: sourcesOf(simulation),
  }
}

/** How many sorted values come before the first that is too much; what is too much stays so. */
function countUntil(sorted: Float64Array, isTooMuch: (value: number) => boolean): number {
  let [low, high] = [0, sorted.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (isTooMuch(sorted[middle] ?? 0)) high = middle
    else low = middle + 1
  }
  return low
}

/** The price before tax of a direct cost in cents, with overhead and profit, rounded as an estimate rounds. */
function priceWithoutContingency(rules: HouseRules['price'], cost: number): Cents {
  const line: EstimateLine = {
    kind: 'labour',
    key: 'cost',
    label: '',
    roomId: null,
    surfaceClass: null,
    cents: roundToCents(cost),
    derivation: '',
  }
  const noTax = { ...rules, contingencyPercent: 0, materialsTaxPercent: 0, labourTaxPercent: 0 }
  return sumCents([line, ...additions(noTax, [line])].map(({ cents }) => cents))
}

/** Overhead and profit are shares of the cost, so the contingency is the cost that holds over the planned one; 0 to 100. */
function contingencyFor(ratio: number): number {
  const tenths = Math.ceil((ratio - 1) * 1000 - 1e-9)
  return Math.min(100, Math.max(0, tenths / 10))
}

function barsOf(sorted: Float64Array, factor: number): Sureness['bars'] {
  const least = (sorted[0] ?? 0) * factor
  // The dearest draws of a thousand would make the picture twice as wide as what it shows; they go into the last bar.
  const most = (sorted[Math.floor(0.995 * (sorted.length - 1))] ?? 0) * factor
  const width = (most - least) / barCount
  if (width <= 0) return [{ fromCents: least, toCents: least, share: 1 }]
  const counts = Array.from({ length: barCount }, () => 0)
  for (const cost of sorted) {
    const index = Math.min(barCount - 1, Math.floor((cost * factor - least) / width))
    counts[index] = (counts[index] ?? 0) + 1
  }
  return counts.map((count, index) => ({
    fromCents: least + index * width,
    toCents: least + (index + 1) * width,
    share: count / sorted.length,
  }))
}

function sourcesOf(simulation: Simulation): Sureness['sources'] {
  const variances = doubtSources.map((source) => ({ source, variance: variance(simulation.addedBy(source)) }))
  const sum = variances.reduce((all, each) => all + each.variance, 0)
  return variances
    .map((each) => ({ source: each.source, share: sum === 0 ? 0 : each.variance / sum }))
    .toSorted((one, other) => other.share - one.share)
}

function variance(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length
}
