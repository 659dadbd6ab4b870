import type { Cents } from '../units/money.ts'
import { roundToCents } from '../units/money.ts'

/**
 * Splits an amount by weights into whole cents that sum to it exactly (largest remainder; ties to the earlier).
 * All weights zero: everything goes to the first. No weights: an empty answer.
 */
export function shareCents(total: Cents, weights: readonly number[]): readonly Cents[] {
  const sum = weights.reduce((all, weight) => all + weight, 0)
  if (weights.length === 0) return []
  if (sum === 0) return weights.map((_, index) => roundToCents(index === 0 ? total : 0))
  const exact = weights.map((weight) => (total * weight) / sum)
  const floors = exact.map(Math.floor)
  const left = total - floors.reduce((all, each) => all + each, 0)
  const byRemainder = exact
    .map((value, index) => ({ index, remainder: value - Math.floor(value) }))
    .toSorted((a, b) => b.remainder - a.remainder || a.index - b.index)
  const raised = new Set(byRemainder.slice(0, left).map((each) => each.index))
  return floors.map((each, index) => roundToCents(each + (raised.has(index) ? 1 : 0)))
}
