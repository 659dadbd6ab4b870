import { type Area, zeroArea } from '../units/area.ts'
import { type Length, zeroLength } from '../units/length.ts'
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
    netArea: (one.netArea + other.netArea) as Area,
    policyArea: (one.policyArea + other.policyArea) as Area,
    equivalentArea: (one.equivalentArea + other.equivalentArea) as Area,
    length: (one.length + other.length) as Length,
    count: one.count + other.count,
    cuttingIn: (one.cuttingIn + other.cuttingIn) as Length,
    masking: (one.masking + other.masking) as Length,
    glassPerimeter: (one.glassPerimeter + other.glassPerimeter) as Length,
  }
}
