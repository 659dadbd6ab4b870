import { wholeShares } from '../lists/whole-shares.ts'
import type { Cents } from '../units/money.ts'
import { roundToCents } from '../units/money.ts'

/** Splits an amount by weights into whole cents that sum to it exactly, as `wholeShares` does. */
export function shareCents(total: Cents, weights: readonly number[]): readonly Cents[] {
  return wholeShares(total, weights).map(roundToCents)
}
