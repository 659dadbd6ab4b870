import { sumAreas } from '../units/area.ts'
import { sumLengths } from '../units/length.ts'
import type { StepAmounts } from './types.ts'

/** Amounts of several steps together. */
export function amountsSum(amounts: readonly StepAmounts[]): StepAmounts {
  return {
    area: sumAreas(amounts.map((each) => each.area)),
    equivalentArea: sumAreas(amounts.map((each) => each.equivalentArea)),
    length: sumLengths(amounts.map((each) => each.length)),
    cuttingIn: sumLengths(amounts.map((each) => each.cuttingIn)),
    glassPerimeter: sumLengths(amounts.map((each) => each.glassPerimeter)),
    count: amounts.reduce((sum, each) => sum + each.count, 0),
  }
}
