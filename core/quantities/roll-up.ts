import { type Job, records } from '../project/job.ts'
import { findScoped, scopeIndex } from '../project/scopes.ts'
import type { ColourId } from '../project/survey-records.ts'
import type { ProductClass, SurfaceClass } from '../project/vocabulary.ts'
import { type Area, zeroArea } from '../units/area.ts'
import { type Length, zeroLength } from '../units/length.ts'
import type { QuantityTotals, SurfaceQuantity, Takeoff } from './takeoff-types.ts'

/** What figures are put together by. `house` is everything in one. */
export type RollUpBy = 'house' | 'storey' | 'room' | 'surfaceClass' | 'colour' | 'product'

/** Sums of the surfaces of one group. Lengths and areas are whole numbers, so that groups add up to the house exactly. */
export interface RollUp {
  /** Id or word of the group; null where a surface has no colour or product, or is not painted. */
  readonly key: string | null
  readonly surfaces: number
  readonly totals: QuantityTotals
}

export const noQuantities: QuantityTotals = {
  netArea: zeroArea,
  policyArea: zeroArea,
  equivalentArea: zeroArea,
  length: zeroLength,
  count: 0,
  cuttingIn: zeroLength,
  masking: zeroLength,
  glassPerimeter: zeroLength,
}

export function addQuantities(one: QuantityTotals, other: QuantityTotals): QuantityTotals {
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

/**
 * Totals of the whole house or by group, groups in the order their first surface comes in. An edge where two surfaces meet is in the
 * cutting-in of both, since either may be the one that is cut to the other.
 */
export function rollUp(job: Job, takeoff: Takeoff, by: RollUpBy): readonly RollUp[] {
  const keyOf = groupKey(job, by)
  const groups = new Map<string | null, { surfaces: number; totals: QuantityTotals }>()
  for (const surface of takeoff.surfaces) {
    const key = keyOf(surface)
    const group = groups.get(key) ?? { surfaces: 0, totals: noQuantities }
    groups.set(key, { surfaces: group.surfaces + 1, totals: addQuantities(group.totals, surface) })
  }
  return [...groups].map(([key, group]) => ({ key, ...group }))
}

/** Everything in one. */
export function houseTotals(takeoff: Takeoff): QuantityTotals {
  return takeoff.surfaces.reduce<QuantityTotals>(addQuantities, noQuantities)
}

type GroupKey = (surface: SurfaceQuantity) => string | null

function groupKey(job: Job, by: RollUpBy): GroupKey {
  switch (by) {
    case 'house':
      return () => 'house'
    case 'storey':
      return (surface) => job.rooms[surface.roomId]?.storeyId ?? null
    case 'room':
      return (surface) => surface.roomId
    case 'surfaceClass':
      return (surface): SurfaceClass => surface.surfaceClass
    case 'colour':
      return (surface): ColourId | null => finishOf(job, surface)?.colourId ?? null
    case 'product':
      return (surface) => productOf(job, finishOf(job, surface)?.productClass ?? null)
  }
}

function finishOf(job: Job, surface: SurfaceQuantity) {
  const finish = findScoped(scopeIndex(job.finishes), surface.surface, surface.roomId, surface.surfaceClass)
  return finish?.paint === true ? finish : null
}

/** The shop's product of the class, the first of the list; the class itself where the shop has none. */
function productOf(job: Job, productClass: ProductClass | null): string | null {
  if (productClass === null) return null
  return records(job.products).find((product) => product.productClass === productClass)?.id ?? productClass
}
