import type { RoomId } from '../project/sketch-records.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import type { WorkingMinutes } from '../units/duration.ts'
import type { Cents } from '../units/money.ts'
import type { Labour } from './labour.ts'
import type { MaterialLine } from './materials.ts'
import type { SundryLine } from './sundries.ts'

export type EstimateLineKind =
  | 'labour'
  | 'material'
  | 'sundry'
  | 'overhead'
  | 'contingency'
  | 'profit'
  | 'materialsTax'
  | 'labourTax'

/** One line of the estimate; `cents` was rounded once, here. The derivation says how it came about. */
export interface EstimateLine {
  readonly kind: EstimateLineKind
  readonly key: string
  readonly label: string
  readonly roomId: RoomId | null
  readonly surfaceClass: SurfaceClass | null
  readonly cents: Cents
  readonly derivation: string
}

export interface EstimateTotals {
  readonly labourMinutes: WorkingMinutes
  readonly labour: Cents
  readonly materials: Cents
  readonly sundries: Cents
  readonly overhead: Cents
  readonly contingency: Cents
  readonly profit: Cents
  /** Everything before tax. */
  readonly beforeTax: Cents
  readonly tax: Cents
  readonly total: Cents
}

export interface Estimate {
  readonly lines: readonly EstimateLine[]
  readonly totals: EstimateTotals
  readonly labour: Labour
  readonly materials: readonly MaterialLine[]
  readonly sundries: readonly SundryLine[]
  /** The total before tax shared out by the rooms' own labour and material; sums to `totals.beforeTax`. */
  readonly rooms: readonly RoomPrice[]
  /** What labor is priced by: the accepted plan, a first plan that stands in for it, or hours alone where there is no plan. */
  readonly basis: 'accepted' | 'first' | 'hours'
  /** What makes the figure doubtful: a missing product, nobody to price the hours by, rates that are not the job's own. */
  readonly doubts: readonly string[]
}

/** A room's share of the price before tax. */
export interface RoomPrice {
  readonly roomId: RoomId
  readonly name: string
  readonly cents: Cents
}
