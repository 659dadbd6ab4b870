import { areaFromUnits, zeroArea } from '../units/area.ts'
import { lengthFromUnits, zeroLength } from '../units/length.ts'
import type { QuantityTotals, SurfaceQuantity } from './takeoff-types.ts'

const noQuantities: QuantityTotals = {
  netArea: zeroArea,
  policyArea: zeroArea,
  equivalentArea: zeroArea,
  length: zeroLength,
  count: 0,
  cuttingIn: zeroLength,
  masking: zeroLength,
  glassPerimeter: zeroLength,
}

/**
 * Sums of the surfaces. Lengths and areas are whole numbers, so that groups add up to the house exactly. An edge where two surfaces
 * meet is in the cutting-in of both, since either may be the one that is cut to the other.
 */
export function quantityTotals(surfaces: readonly SurfaceQuantity[]): QuantityTotals {
  return surfaces.reduce<QuantityTotals>(addQuantities, noQuantities)
}

function addQuantities(one: QuantityTotals, other: QuantityTotals): QuantityTotals {
  return {
    netArea: areaFromUnits(one.netArea + other.netArea),
    policyArea: areaFromUnits(one.policyArea + other.policyArea),
    equivalentArea: areaFromUnits(one.equivalentArea + other.equivalentArea),
    length: lengthFromUnits(one.length + other.length),
    count: one.count + other.count,
    cuttingIn: lengthFromUnits(one.cuttingIn + other.cuttingIn),
    masking: lengthFromUnits(one.masking + other.masking),
    glassPerimeter: lengthFromUnits(one.glassPerimeter + other.glassPerimeter),
  }
}
