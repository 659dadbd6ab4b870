import { type Point, pointsDistance } from '../geometry/point.ts'
import { type Segment, segmentShareAt } from '../geometry/segment.ts'

/** What a pointer can catch on: corners, walls, and lines square across the plan. Plan units throughout. */
export interface SnapTargets {
  readonly points: readonly Point[]
  readonly walls: readonly Segment[]
}

export interface SnapSettings {
  /** How near the pointer must come, in plan units (the caller divides screen pixels by the zoom). */
  readonly tolerance: number
  /** Distance of grid lines, or null for none. */
  readonly grid: number | null
  /** Thickness of the wall between neighbouring rooms: their faces stand this far apart; null for none. */
  readonly partition: number | null
  /** Corners set so far, for right angles to the side drawn last; may be empty. */
  readonly drawn: readonly Point[]
}

type SnapKind = 'corner' | 'wall' | 'rightAngle' | 'alignment' | 'partition' | 'grid'

/** A line to show why the point sits where it sits. */
export interface SnapGuide {
  readonly kind: SnapKind
  readonly from: Point
  readonly to: Point
}

export interface SnappedPoint {
  readonly point: Point
  readonly guides: readonly SnapGuide[]
}

/**
 * Where a pointer means to be. A corner wins over a wall or slanting right angle, these over alignments, these over the grid; x and y
 * catch on alignments and grid separately. Always whole plan units.
 */
export function snapPoint(pointer: Point, targets: SnapTargets, settings: SnapSettings): SnappedPoint {
  const corner = nearestPoint(pointer, [...targets.points, ...settings.drawn], settings.tolerance)
  if (corner) return { point: corner, guides: [{ kind: 'corner', from: corner, to: corner }] }
  const line = nearestLine(pointer, targets, settings)
  if (line) return line
  return snapAxes(pointer, targets, settings)
}

function nearestPoint(pointer: Point, points: readonly Point[], tolerance: number): Point | null {
  let best: Point | null = null
  for (const point of points) {
    const distance = pointsDistance(pointer, point)
    if (distance <= tolerance && (best === null || distance < pointsDistance(pointer, best))) best = point
  }
  return best
}

/** Slanting walls and the right angle to a slanting side; square ones are alignments, handled axis by axis. */
function nearestLine(pointer: Point, targets: SnapTargets, settings: SnapSettings): SnappedPoint | null {
  const found = [
    ...targets.walls.filter(isSlanting).map((wall) => footOn(pointer, wall, 'wall' as const, true)),
    ...rightAngles(settings.drawn).map((line) => footOn(pointer, line, 'rightAngle' as const, false)),
  ]
  let best: SnappedPoint | null = null
  for (const one of found) {
    if (one === null || pointsDistance(one.point, pointer) > settings.tolerance) continue
    if (best === null || pointsDistance(one.point, pointer) < pointsDistance(best.point, pointer)) best = one
  }
  return best
}

function isSlanting({ start, end }: Segment): boolean {
  return start.x !== end.x && start.y !== end.y
}

/** From the last corner, straight on and square to the side before it. */
function rightAngles(drawn: readonly Point[]): readonly Segment[] {
  const [before, last] = [drawn.at(-2), drawn.at(-1)]
  if (before === undefined || last === undefined || !isSlanting({ start: before, end: last })) return []
  const along = { x: last.x - before.x, y: last.y - before.y }
  return [
    { start: last, end: { x: last.x + along.x, y: last.y + along.y } },
    { start: last, end: { x: last.x - along.y, y: last.y + along.x } },
  ]
}

function footOn(pointer: Point, line: Segment, kind: SnapKind, withinEnds: boolean): SnappedPoint | null {
  const share = segmentShareAt(line, pointer)
  if (!Number.isFinite(share) || (withinEnds && (share < 0 || share > 1))) return null
  const point = wholePoint({
    x: line.start.x + (line.end.x - line.start.x) * share,
    y: line.start.y + (line.end.y - line.start.y) * share,
  })
  return { point, guides: [{ kind, from: line.start, to: point }] }
}

interface Catch {
  readonly value: number
  readonly kind: SnapKind
  readonly from: Point
}

function snapAxes(pointer: Point, targets: SnapTargets, settings: SnapSettings): SnappedPoint {
  const x = catchOn('x', pointer, targets, settings)
  const y = catchOn('y', pointer, targets, settings)
  const point = wholePoint({ x: x?.value ?? pointer.x, y: y?.value ?? pointer.y })
  const guides = [x, y].flatMap((caught, index) => {
    if (caught === null) return []
    // The guide of an x runs up and down the plan, of a y across it.
    const from = index === 0 ? { x: point.x, y: caught.from.y } : { x: caught.from.x, y: point.y }
    return [{ kind: caught.kind, from, to: point }]
  })
  return { point, guides }
}

function catchOn(
  axis: 'x' | 'y',
  pointer: Point,
  targets: SnapTargets,
  settings: SnapSettings,
): Catch | null {
  const last = settings.drawn.at(-1)
  const aligned: Catch[] = [
    ...(last ? [{ value: last[axis], kind: 'rightAngle' as const, from: last }] : []),
    ...[...targets.points, ...settings.drawn].map((from) => ({
      value: from[axis],
      kind: 'alignment' as const,
      from,
    })),
    ...partitionLines(axis, targets.walls, settings.partition),
  ]
  return nearestCatch(axis, pointer, aligned, settings.tolerance) ?? gridCatch(axis, pointer, settings)
}

function nearestCatch(
  axis: 'x' | 'y',
  pointer: Point,
  catches: readonly Catch[],
  tolerance: number,
): Catch | null {
  let best: Catch | null = null
  for (const one of catches) {
    const distance = Math.abs(one.value - pointer[axis])
    if (distance <= tolerance && (best === null || distance < Math.abs(best.value - pointer[axis])))
      best = one
  }
  return best
}

/** Lines one wall thickness to either side of a square wall's face: the face of the room next door. */
function partitionLines(
  axis: 'x' | 'y',
  walls: readonly Segment[],
  partition: number | null,
): readonly Catch[] {
  if (partition === null) return []
  return walls
    .filter(({ start, end }) => start[axis] === end[axis])
    .flatMap(({ start }) =>
      [-partition, partition].map((off) => ({
        value: start[axis] + off,
        kind: 'partition' as const,
        from: start,
      })),
    )
}

function gridCatch(axis: 'x' | 'y', pointer: Point, { grid, tolerance }: SnapSettings): Catch | null {
  if (grid === null) return null
  const value = Math.round(pointer[axis] / grid) * grid
  return Math.abs(value - pointer[axis]) <= tolerance
    ? { value, kind: 'grid', from: { ...pointer, [axis]: value } }
    : null
}

function wholePoint(point: Point): Point {
  return { x: Math.round(point.x), y: Math.round(point.y) }
}
