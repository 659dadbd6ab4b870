import type { WoodworkMinutes } from '../price/labour.ts'
import type { StepAmounts } from '../specification/types.ts'
import { toSquareFeet } from '../units/area.ts'
import { toFeet } from '../units/length.ts'

/** Six places: a millionth of a square foot, far below what anybody measures, and no tails of binary fractions. */
export function places(value: number): number {
  return Number(value.toFixed(6))
}

/** An area in square feet, rounded as files give it out. */
export function sqFt(area: number): number {
  return places(toSquareFeet(area))
}

/** A length in feet, rounded as files give it out. */
export function ft(length: number): number {
  return places(toFeet(length))
}

/** Amounts under names that say their units. */
export function amountEntry(amounts: StepAmounts) {
  return {
    areaSqFt: sqFt(amounts.area),
    equivalentAreaSqFt: sqFt(amounts.equivalentArea),
    lengthFt: ft(amounts.length),
    cuttingInFt: ft(amounts.cuttingIn),
    glassPerimeterFt: ft(amounts.glassPerimeter),
    count: amounts.count,
  }
}

/** The same by kind of woodwork. */
export function woodworkEntries(parts: readonly WoodworkMinutes[]) {
  return parts.map(({ kind, amounts, minutes }) => ({
    kind,
    ...amountEntry(amounts),
    personMinutes: places(minutes),
  }))
}
