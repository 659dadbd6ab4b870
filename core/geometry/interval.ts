/** A stretch along a line, from the smaller place to the larger, length units. */
export interface Interval {
  readonly from: number
  readonly to: number
}

/** What is left of a stretch when others, in any order and overlapping or not, are taken out of it. */
export function intervalsLeft(whole: Interval, taken: readonly Interval[]): readonly Interval[] {
  if (taken.length === 0) return [whole]
  const left: Interval[] = []
  let at = whole.from
  for (const each of taken.length === 1 ? taken : [...taken].sort((a, b) => a.from - b.from)) {
    if (each.from > at) left.push({ from: at, to: Math.min(each.from, whole.to) })
    at = Math.max(at, each.to)
    if (at >= whole.to) return left
  }
  if (whole.to > at) left.push({ from: at, to: whole.to })
  return left
}

/** The part two stretches have in common; 0 when they only touch. */
export function intervalsShared(one: Interval, other: Interval): number {
  return Math.max(0, Math.min(one.to, other.to) - Math.max(one.from, other.from))
}
