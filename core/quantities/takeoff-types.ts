import type { RoomId } from '../project/sketch-records.ts'
import type { SurfaceRef } from '../project/surface-ref.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import type { Area } from '../units/area.ts'
import type { Length } from '../units/length.ts'

/** One line of how a figure came about, in numbers; the screen words it (`12' 0" x 8' 0"`). */
export interface DerivationLine {
  readonly kind: 'gross' | 'deduction' | 'addition' | 'length' | 'note'
  /** In words, with lengths written by `formatLength` in the job's unit system. */
  readonly text: string
  readonly area: Area | null
  readonly length: Length | null
  /** The record it comes from (an opening, a wall, a trim run), so that the drawing can light it. */
  readonly sourceId: string | null
}

/** Everything measured of one paintable surface. Physical figures drive paint; lengths and equivalent area drive hours. */
export interface SurfaceQuantity {
  readonly key: string
  readonly surface: SurfaceRef
  readonly roomId: RoomId
  readonly surfaceClass: SurfaceClass
  readonly grossArea: Area
  readonly deductedArea: Area
  /** Physical area to coat, exact: gross less deductions plus additions. Walls run on behind their trim, as painters measure them. */
  readonly netArea: Area
  /** The area by the job's named policies; equals `netArea` under `exactNet` and `exactGirth`, 0 where a policy counts by length. */
  readonly policyArea: Area
  /** Area x published coefficient, for hours only; equals `netArea` where no coefficient applies. */
  readonly equivalentArea: Area
  /** Run length of trim; 0 for broad surfaces. */
  readonly length: Length
  /** Pieces: slab faces, sash, built items. */
  readonly count: number
  /** Edges where a different finish meets this one; noted on both surfaces, since either may be cut to the other. */
  readonly cuttingIn: Length
  /** Edges along something that is not painted. */
  readonly masking: Length
  readonly glassPerimeter: Length
  /** Highest point above the floor, for ladders and access. */
  readonly reachHeight: Length
  /** Worded when first read; copying a surface by spreading it leaves this behind. */
  readonly derivation: readonly DerivationLine[]
}

export interface QuantityTotals {
  readonly netArea: Area
  readonly policyArea: Area
  readonly equivalentArea: Area
  readonly length: Length
  readonly count: number
  readonly cuttingIn: Length
  readonly masking: Length
  readonly glassPerimeter: Length
}

/** The takeoff of a whole job: surfaces in the order of the file's rooms. */
export interface Takeoff {
  readonly surfaces: readonly SurfaceQuantity[]
  readonly byKey: ReadonlyMap<string, SurfaceQuantity>
}
