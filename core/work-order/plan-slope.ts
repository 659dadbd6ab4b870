import type { Point } from '../geometry/point.ts'
import type { Room } from '../project/sketch-records.ts'
import { slopeBends, slopeMarks } from '../sketch/room-slopes.ts'
import { formatLength, type LengthUnitSystem, toMillimetres } from '../units/length.ts'

/** How the ceiling of a room slopes, on its floor plan; empty for a flat one. */
export interface PlanSlope {
  /** `low 5' 0"`, `ridge 8' 6"`. */
  readonly heights: readonly { readonly text: string; readonly at: Point }[]
  /** Where the ceiling bends, from side to side. */
  readonly bends: readonly (readonly [Point, Point])[]
}

/** @param place from the house's plan, millimeters, to the drawing */
export function planSlope(room: Room, place: (point: Point) => Point, system: LengthUnitSystem): PlanSlope {
  const drawn = ({ x, y }: Point) => place({ x: toMillimetres(x), y: toMillimetres(y) })
  return {
    heights: slopeMarks(room).map((mark) => ({
      text: `${mark.word} ${formatLength(mark.height, system)}`,
      at: drawn(mark.place),
    })),
    bends: slopeBends(room).map(([from, to]) => [drawn(from), drawn(to)] as const),
  }
}
