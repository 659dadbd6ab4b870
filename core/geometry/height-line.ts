import type { Axis, Point } from './point.ts'

/** A height above the room's floor datum at a place along an axis or a wall; both in length units. */
export interface HeightPoint {
  readonly at: number
  readonly height: number
}

/**
 * Heights that vary along one plan axis: straight between its points, level before the first and after the last.
 * `at` is a plan coordinate on that axis. A level line has one point.
 */
export interface HeightLine {
  readonly axis: Axis
  readonly points: readonly HeightPoint[]
}

/** The height at a place along the line's axis; level beyond its ends. */
export function heightLineAt(line: HeightLine, at: number): number {
  return heightAt(line.points, at)
}

/** Height of a broken line at a place: straight between points, level beyond the ends. At a step (two points in one place) the earlier holds. */
export function heightAt(points: readonly HeightPoint[], at: number): number {
  const first = points[0] as HeightPoint
  if (at <= first.at) return first.height
  for (let index = 1; index < points.length; index++) {
    const before = points[index - 1] as HeightPoint
    const after = points[index] as HeightPoint
    if (at <= after.at)
      return before.height + ((at - before.at) / (after.at - before.at)) * (after.height - before.height)
  }
  return (points.at(-1) as HeightPoint).height
}

/**
 * The height line as it is seen along a straight wall: points by distance from the wall's start, first at 0 and last at its length.
 */
export function heightLineAlong(
  line: HeightLine,
  start: Point,
  end: Point,
  length: number,
): readonly HeightPoint[] {
  const from = start[line.axis]
  const to = end[line.axis]
  const seen: HeightPoint[] = [{ at: 0, height: heightLineAt(line, from) }]
  if (from !== to) {
    const between = line.points.filter((point) => (point.at - from) * (point.at - to) < 0)
    if (to < from) between.reverse()
    for (const point of between)
      seen.push({ at: ((point.at - from) / (to - from)) * length, height: point.height })
  }
  seen.push({ at: length, height: heightLineAt(line, to) })
  return seen
}
