import type { RoomId } from '../../core/project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../../core/project/surface-ref.ts'
import type { SurfaceClass } from '../../core/project/vocabulary.ts'
import type { SurfaceQuantity, Takeoff } from '../../core/quantities/takeoff-types.ts'
import { squareFeet, zeroArea } from '../../core/units/area.ts'
import { feet, zeroLength } from '../../core/units/length.ts'

/** Square feet, feet and pieces of one surface, written by hand. */
export interface HandQuantity {
  readonly area: number
  readonly length?: number
  readonly count?: number
  readonly cuttingIn?: number
  readonly masking?: number
  readonly glass?: number
  readonly reach?: number
}

export function quantity(
  roomId: string,
  surface: SurfaceRef,
  surfaceClass: SurfaceClass,
  given: HandQuantity,
): SurfaceQuantity {
  const area = squareFeet(given.area)
  return {
    key: surfaceKey(surface),
    surface,
    roomId: roomId as RoomId,
    surfaceClass,
    grossArea: area,
    deductedArea: zeroArea,
    netArea: area,
    policyArea: area,
    equivalentArea: area,
    length: given.length === undefined ? zeroLength : feet(given.length),
    count: given.count ?? 0,
    cuttingIn: given.cuttingIn === undefined ? zeroLength : feet(given.cuttingIn),
    masking: given.masking === undefined ? zeroLength : feet(given.masking),
    glassPerimeter: given.glass === undefined ? zeroLength : feet(given.glass),
    reachHeight: feet(given.reach ?? 8),
    derivation: [],
  }
}

export function takeoffOf(...surfaces: readonly SurfaceQuantity[]): Takeoff {
  return { surfaces, byKey: new Map(surfaces.map((each) => [each.key, each])) }
}

export const ceilingOf = (roomId: string): SurfaceRef => ({ kind: 'ceiling', roomId: roomId as RoomId })

export function wallOf(roomId: string, wallId: string): SurfaceRef {
  return { kind: 'wall', roomId, wallId, zone: 'whole' } as SurfaceRef
}

export function trimOf(roomId: string, trimRunId: string): SurfaceRef {
  return { kind: 'trim', roomId, trimRunId } as SurfaceRef
}

export function partOf(openingId: string, part: 'casing' | 'jamb' | 'slab' | 'sash' | 'stool'): SurfaceRef {
  return { kind: 'opening', openingId, side: 'near', part } as SurfaceRef
}

export function builtOf(roomId: string, builtItemId: string): SurfaceRef {
  return { kind: 'built', roomId, builtItemId } as SurfaceRef
}

/** A 12 x 10 ft room, 8 ft high: ceiling 120 sq ft, walls 96 and 80 sq ft, baseboard 44 ft of 6 in. */
export function plainSurfaces(roomId: string): readonly SurfaceQuantity[] {
  return [
    quantity(roomId, ceilingOf(roomId), 'ceiling', { area: 120, cuttingIn: 44 }),
    quantity(roomId, wallOf(roomId, 'north'), 'walls', { area: 96, cuttingIn: 24 }),
    quantity(roomId, wallOf(roomId, 'east'), 'walls', { area: 80, cuttingIn: 20 }),
    quantity(roomId, wallOf(roomId, 'south'), 'walls', { area: 96, cuttingIn: 24 }),
    quantity(roomId, wallOf(roomId, 'west'), 'walls', { area: 80, cuttingIn: 20 }),
    quantity(roomId, trimOf(roomId, `${roomId}-base`), 'trim', { area: 22, length: 44, cuttingIn: 44 }),
  ]
}
