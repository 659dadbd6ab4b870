/**
 * Splits a whole number by weights into whole numbers that sum to it exactly (largest remainder; ties to the earlier).
 * All weights zero: everything goes to the first. No weights: an empty answer.
 */
export function wholeShares(total: number, weights: readonly number[]): readonly number[] {
  const sum = weights.reduce((all, weight) => all + weight, 0)
  if (sum === 0) return weights.map((_, index) => (index === 0 ? total : 0))
  const exact = weights.map((weight) => (total * weight) / sum)
  const floors = exact.map(Math.floor)
  const left = total - floors.reduce((all, each) => all + each, 0)
  const byRemainder = exact
    .map((value, index) => ({ index, remainder: value - Math.floor(value) }))
    .toSorted((a, b) => b.remainder - a.remainder || a.index - b.index)
  const raised = new Set(byRemainder.slice(0, left).map((each) => each.index))
  return floors.map((each, index) => each + (raised.has(index) ? 1 : 0))
}
