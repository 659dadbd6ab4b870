import { type Axis, type Point, pointBetween, pointsEqual } from './point.ts'
import { segmentsTouch } from './segment.ts'

/** Corners in order; the last is joined to the first. Either winding. */
export type Polygon = readonly Point[]

/** A coordinate is taken apart into 65536 x high + low, so that each product with another whole coordinate is exact. */
const highPart = 65_536

/**
 * Twice the area by the shoelace formula taken from the first corner (so that a plan far from the origin loses nothing):
 * positive when the corners run clockwise on the plan (y down), negative the other way round. Square length units.
 * High and low products are summed apart, exactly, and rounded once: the same whichever corner is first.
 */
export function polygonSignedDoubleArea(polygon: Polygon): number {
  const origin = polygon[0]
  if (origin === undefined) return 0
  let high = 0
  let low = 0
  for (let index = 1; index + 1 < polygon.length; index++) {
    const b = polygon[index] as Point
    const c = polygon[index + 1] as Point
    const [bHigh, bLow] = splitInTwo(b.y - origin.y)
    const [cHigh, cLow] = splitInTwo(c.y - origin.y)
    high += (b.x - origin.x) * cHigh - bHigh * (c.x - origin.x)
    low += (b.x - origin.x) * cLow - bLow * (c.x - origin.x)
  }
  return high * highPart + low
}

function splitInTwo(value: number): readonly [high: number, low: number] {
  const high = Math.floor(value / highPart)
  return [high, value - high * highPart]
}

/** Area in square length units; never negative. */
export function polygonArea(polygon: Polygon): number {
  return Math.abs(polygonSignedDoubleArea(polygon)) / 2
}

/** The least rectangle along the axes that holds the polygon. y points down. */
export function polygonBounds(polygon: Polygon): { readonly min: Point; readonly max: Point } {
  const xs = polygon.map((point) => point.x)
  const ys = polygon.map((point) => point.y)
  return { min: { x: Math.min(...xs), y: Math.min(...ys) }, max: { x: Math.max(...xs), y: Math.max(...ys) } }
}

function polygonEdge(polygon: Polygon, index: number): { readonly start: Point; readonly end: Point } {
  return { start: polygon[index] as Point, end: polygon[(index + 1) % polygon.length] as Point }
}

/** The first two edges (by the index of their start corner) that cross, touch or fold back on one another; null when simple. */
export function polygonSelfContact(polygon: Polygon): readonly [number, number] | null {
  const count = polygon.length
  for (let one = 0; one < count; one++) {
    for (let other = one + 1; other < count; other++) {
      const adjacent = other === one + 1 || (one === 0 && other === count - 1)
      if (
        adjacent
          ? edgesFoldBack(polygon, one, other)
          : segmentsTouch(polygonEdge(polygon, one), polygonEdge(polygon, other))
      ) {
        return [one, other]
      }
    }
  }
  return null
}

/** Neighbouring edges share a corner; they fold back when they leave it in the same direction. */
function edgesFoldBack(polygon: Polygon, one: number, other: number): boolean {
  const wraps = one === 0 && other === polygon.length - 1 && polygon.length > 2
  const first = polygonEdge(polygon, wraps ? other : one)
  const second = polygonEdge(polygon, wraps ? one : other)
  const backward = { x: first.start.x - first.end.x, y: first.start.y - first.end.y }
  const forward = { x: second.end.x - second.start.x, y: second.end.y - second.start.y }
  const inLine = backward.x * forward.y - backward.y * forward.x === 0
  return inLine && backward.x * forward.x + backward.y * forward.y > 0
}

/** Whether a point is inside or on the edge. */
export function polygonHolds(polygon: Polygon, point: Point): boolean {
  let inside = false
  for (let index = 0; index < polygon.length; index++) {
    const { start, end } = polygonEdge(polygon, index)
    if (segmentsTouch({ start, end }, { start: point, end: point })) return true
    if (start.y > point.y !== end.y > point.y) {
      const crossing = start.x + ((point.y - start.y) / (end.y - start.y)) * (end.x - start.x)
      if (point.x < crossing) inside = !inside
    }
  }
  return inside
}

/**
 * The part of a polygon between two parallel lines across one axis. A concave polygon may come back with edges that run
 * along a line twice in opposite directions; its shoelace area is right all the same.
 */
export function polygonBand(polygon: Polygon, axis: Axis, from: number, to: number): Polygon {
  return clipBelow(clipAbove(polygon, axis, from), axis, to)
}

function clipAbove(polygon: Polygon, axis: Axis, least: number): Polygon {
  return clipHalf(polygon, axis, least, (value) => value >= least)
}

function clipBelow(polygon: Polygon, axis: Axis, most: number): Polygon {
  return clipHalf(polygon, axis, most, (value) => value <= most)
}

function clipHalf(polygon: Polygon, axis: Axis, line: number, keeps: (value: number) => boolean): Polygon {
  const kept: Point[] = []
  for (let index = 0; index < polygon.length; index++) {
    const { start, end } = polygonEdge(polygon, index)
    if (keeps(start[axis])) kept.push(start)
    if (keeps(start[axis]) !== keeps(end[axis])) {
      const crossing = pointBetween(start, end, (line - start[axis]) / (end[axis] - start[axis]))
      kept.push({ ...crossing, [axis]: line })
    }
  }
  return kept.filter((point, index) => !pointsEqual(point, kept[(index + 1) % kept.length] as Point))
}
