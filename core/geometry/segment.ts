import { type Point, pointBetween, pointsDistance, pointsTurn } from './point.ts'

export interface Segment {
  readonly start: Point
  readonly end: Point
}

/** Whether two closed segments have a point in common, touching ends and lying on one another included. */
export function segmentsTouch(one: Segment, other: Segment): boolean {
  const turns = [
    pointsTurn(one.start, one.end, other.start),
    pointsTurn(one.start, one.end, other.end),
    pointsTurn(other.start, other.end, one.start),
    pointsTurn(other.start, other.end, one.end),
  ] as const
  if (oppositeSigns(turns[0], turns[1]) && oppositeSigns(turns[2], turns[3])) return true
  return (
    (turns[0] === 0 && segmentBoxHolds(one, other.start)) ||
    (turns[1] === 0 && segmentBoxHolds(one, other.end)) ||
    (turns[2] === 0 && segmentBoxHolds(other, one.start)) ||
    (turns[3] === 0 && segmentBoxHolds(other, one.end))
  )
}

function oppositeSigns(a: number, b: number): boolean {
  return (a < 0 && b > 0) || (a > 0 && b < 0)
}

function segmentBoxHolds(segment: Segment, point: Point): boolean {
  const { start, end } = segment
  return (
    point.x >= Math.min(start.x, end.x) &&
    point.x <= Math.max(start.x, end.x) &&
    point.y >= Math.min(start.y, end.y) &&
    point.y <= Math.max(start.y, end.y)
  )
}

/** Where along the segment (0 at start, 1 at end; outside allowed) the foot of a point's perpendicular falls. */
export function segmentShareAt(segment: Segment, point: Point): number {
  const dx = segment.end.x - segment.start.x
  const dy = segment.end.y - segment.start.y
  return ((point.x - segment.start.x) * dx + (point.y - segment.start.y) * dy) / (dx * dx + dy * dy)
}

/** The place of a segment that is nearest to a point: its share (0 at start, 1 at end), and how far off it the point lies. */
export function nearestOnSegment(
  segment: Segment,
  point: Point,
): { readonly share: number; readonly off: number } {
  const share = Math.min(1, Math.max(0, segmentShareAt(segment, point)))
  return { share, off: pointsDistance(pointBetween(segment.start, segment.end, share), point) }
}
