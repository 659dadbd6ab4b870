import { type Point, pointsDistance } from '../geometry/point.ts'
import { type Length, lengthFromUnits } from '../units/length.ts'

/** The four corners of a dragged rectangle, clockwise on the plan from the corner at least x and least y. */
export function rectangleCorners(one: Point, opposite: Point): readonly Point[] {
  const [left, right] = [Math.min(one.x, opposite.x), Math.max(one.x, opposite.x)]
  const [top, bottom] = [Math.min(one.y, opposite.y), Math.max(one.y, opposite.y)]
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ]
}

/** The opposite corner of a rectangle with typed sides, on the side of `from` where the pointer is. */
export function typedOppositeCorner(from: Point, pointer: Point, width: Length, depth: Length): Point {
  return {
    x: from.x + (pointer.x < from.x ? -width : width),
    y: from.y + (pointer.y < from.y ? -depth : depth),
  }
}

/** How a side being drawn may run: `free`, or in eighths of a turn (square and diagonal). */
type DraftingAngle = 'free' | 'eighths'

/**
 * The next corner of an outline drawn click by click: in the pointer's direction from the last corner, at the typed length if one was
 * typed, else as far as the pointer. With no direction yet (pointer on the corner) a typed length runs to the right.
 */
export function nextCorner(
  corners: readonly Point[],
  pointer: Point,
  typedLength: Length | null,
  angle: DraftingAngle,
): Point {
  const last = corners.at(-1)
  if (last === undefined) return wholePoint(pointer)
  const reach = pointsDistance(last, pointer)
  const free = reach === 0 ? 0 : Math.atan2(pointer.y - last.y, pointer.x - last.x)
  const turned = angle === 'free' ? free : Math.round(free / (Math.PI / 4)) * (Math.PI / 4)
  // Seen along a fixed direction the pointer is nearer: its shadow on that line, as a drafting triangle would give it.
  const length = typedLength ?? reach * Math.cos(free - turned)
  return wholePoint({ x: last.x + Math.cos(turned) * length, y: last.y + Math.sin(turned) * length })
}

/** Whether a click here closes the outline: near the first corner, with at least three corners set. */
export function closesOutline(corners: readonly Point[], pointer: Point, tolerance: number): boolean {
  const first = corners[0]
  return first !== undefined && corners.length >= 3 && pointsDistance(first, pointer) <= tolerance
}

function wholePoint(point: Point): Point {
  return { x: lengthFromUnits(point.x), y: lengthFromUnits(point.y) }
}
