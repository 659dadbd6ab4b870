import { polygonSignedDoubleArea } from '../geometry/polygon.ts'
import type { Corner, Room } from '../project/sketch-records.ts'
import { lengthFromUnits } from '../units/length.ts'
import { cornerAt } from './job-edits.ts'

interface Direction {
  readonly x: number
  readonly y: number
}

/** Below this sine two walls count as running in one line. */
const inLine = 1e-9

function directionOf(room: Room, index: number): Direction {
  const start = cornerAt(room.corners, index)
  const end = cornerAt(room.corners, index + 1)
  const length = Math.hypot(end.x - start.x, end.y - start.y) || 1
  return { x: (end.x - start.x) / length, y: (end.y - start.y) / length }
}

/** Away from the room, square to the wall. */
function outwardOf(room: Room, index: number): Direction {
  const along = directionOf(room, index)
  // Clockwise on the plan (y down), the room lies to the right of its walls.
  return polygonSignedDoubleArea(room.corners) >= 0
    ? { x: along.y, y: -along.x }
    : { x: -along.y, y: along.x }
}

/**
 * Sine of the turn at a corner, positive where the corner points out of the room (the usual corner), negative where it points in.
 */
export function turnBetween(room: Room, cornerIndex: number): number {
  const before = directionOf(room, cornerIndex - 1)
  const after = directionOf(room, cornerIndex)
  const turn = before.x * after.y - before.y * after.x
  return polygonSignedDoubleArea(room.corners) >= 0 ? turn : -turn
}

/**
 * The outline with one wall shifted outward by a distance, its ends sliding along the neighbouring walls (or going straight out where
 * a neighbour runs in the same line). Null when an end would have to slide past the other end of a neighbour.
 */
export function shiftWallOutward(room: Room, index: number, by: number): readonly Corner[] | null {
  const count = room.corners.length
  const wall = (index + count) % count
  const outward = outwardOf(room, wall)
  const start = slide(room, wall, wall - 1, outward, by)
  const end = slide(room, wall + 1, wall + 1, outward, by)
  const corners = room.corners.with(wall, start).with((wall + 1) % count, end)
  const next = { ...room, corners }
  const turned = [wall - 1, wall, wall + 1].some((other) =>
    reversed(directionOf(room, other), directionOf(next, other)),
  )
  return turned ? null : corners
}

/** Moves a corner along a neighbouring wall until it is `by` farther out. */
function slide(room: Room, corner: number, neighbour: number, outward: Direction, by: number): Corner {
  const along = directionOf(room, neighbour)
  const climb = along.x * outward.x + along.y * outward.y
  const step = Math.abs(climb) < inLine ? { x: outward.x * by, y: outward.y * by } : scaled(along, by / climb)
  const at = cornerAt(room.corners, corner)
  return { ...at, x: lengthFromUnits(at.x + step.x), y: lengthFromUnits(at.y + step.y) }
}

function scaled(direction: Direction, factor: number): Direction {
  return { x: direction.x * factor, y: direction.y * factor }
}

function reversed(before: Direction, after: Direction): boolean {
  return before.x * after.x + before.y * after.y <= 0
}
