import type { Point } from '../../../core/geometry/point.ts'
import { snapTargets } from '../../../core/sketch/snap-targets.ts'
import { type SnappedPoint, snapPoint } from '../../../core/sketch/snapping.ts'
import type { Surroundings } from './tool.ts'

/** Where the pointer means to be; with `free` (Alt held) just where it is. */
export function snapped(
  point: Point,
  around: Surroundings,
  options: {
    readonly free: boolean
    readonly drawn?: readonly Point[]
    readonly without?: readonly string[]
  },
): SnappedPoint {
  if (options.free) return { point: { x: Math.round(point.x), y: Math.round(point.y) }, guides: [] }
  return snapPoint(point, snapTargets(around.job, around.storeyId, options.without ?? []), {
    tolerance: around.tolerance,
    grid: around.grid,
    partition: around.partition,
    drawn: options.drawn ?? [],
  })
}
