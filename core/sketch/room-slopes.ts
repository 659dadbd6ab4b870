import type { Point } from '../geometry/point.ts'
import { polygonBand, polygonBounds } from '../geometry/polygon.ts'
import { ceilingLine, roomSpan } from '../project/heights.ts'
import { type Job, records } from '../project/job.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import type { CeilingShape, FloorShape, LinePoint, Room } from '../project/sketch-records.ts'
import { openingSides, roomWalls } from '../project/walls.ts'
import {
  feet,
  formatLength,
  type Length,
  type LengthUnitSystem,
  lengthFromUnits,
  zeroLength,
} from '../units/length.ts'

import { applyCommand } from './apply-command.ts'

export type SlopeAxis = 'x' | 'y'
/** A side of a room as it lies on the plan. */
export type PlanSide = 'left' | 'right' | 'top' | 'bottom'

/** The axis a slope or a gable usually varies along: across the shorter way, so that ridge and low sides run with the long walls. */
export function usualSlopeAxis(room: Room): SlopeAxis {
  return roomSpan(room, 'x') <= roomSpan(room, 'y') ? 'x' : 'y'
}

/** A shape to begin with, as high as the ceiling was, with the first low sides that all openings fit under. */
export function firstCeiling(job: Job, room: Room, kind: CeilingShape['kind']): CeilingShape {
  const height = highestOf(room.ceiling)
  const along = usualSlopeAxis(room)
  const [half, most] = [height / 2, openingsTop(job, room)]
  const start = Math.max(half, openingsTop(job, room, sideOf(along, 'start')))
  const end = Math.max(half, openingsTop(job, room, sideOf(along, 'end')))
  const tries = [
    [start, end],
    [(start + height) / 2, (end + height) / 2],
    [most, most],
    [height, height],
  ].map(([low = half, other = half]) =>
    shapeOf(kind, room, along, { height, start: lengthFromUnits(low), end: lengthFromUnits(other) }),
  )
  const fits = (ceiling: CeilingShape) =>
    applyCommand(job, { kind: 'setCeiling', roomId: room.id, ceiling }).ok
  return tries.find(fits) ?? shapeOf(kind, room, along, { height, start: height, end: height })
}

interface FirstHeights {
  readonly height: Length
  readonly start: Length
  readonly end: Length
}

function shapeOf(
  kind: CeilingShape['kind'],
  room: Room,
  along: SlopeAxis,
  { height, start, end }: FirstHeights,
): CeilingShape {
  const span = roomSpan(room, along)
  switch (kind) {
    case 'flat':
      return { kind, height }
    case 'shed':
      return start <= end
        ? { kind, along, startHeight: start, endHeight: height }
        : { kind, along, startHeight: height, endHeight: end }
    case 'gable': {
      const ridgeAt = lengthFromUnits(span / 2)
      return { kind, along, startHeight: start, endHeight: end, ridgeAt, ridgeHeight: height }
    }
    case 'vault':
      return {
        kind,
        along,
        startHeight: start,
        endHeight: end,
        flatFrom: lengthFromUnits(span / 3),
        flatTo: lengthFromUnits((span * 2) / 3),
        flatHeight: height,
      }
    case 'stair': {
      const run = along === 'x' ? 'y' : 'x'
      const line = [
        { at: zeroLength, height },
        { at: lengthFromUnits(roomSpan(room, run)), height: lengthFromUnits(height + feet(4)) },
      ]
      return { kind, along: run, line }
    }
  }
}

function sideOf(along: SlopeAxis, end: 'start' | 'end'): PlanSide {
  if (along === 'x') return end === 'start' ? 'left' : 'right'
  return end === 'start' ? 'top' : 'bottom'
}

/** The highest top of the openings in the walls of the room, or in those along one side; 0 where there are none. */
function openingsTop(job: Job, room: Room, side?: PlanSide): number {
  const axis = side === 'left' || side === 'right' ? 'x' : 'y'
  const places = room.corners.map((corner) => corner[axis])
  const edge = side === 'left' || side === 'top' ? Math.min(...places) : Math.max(...places)
  const walls = roomWalls(room)
    .filter((wall) => side === undefined || (wall.start[axis] === edge && wall.end[axis] === edge))
    .map(({ id }) => id)
  const tops = records(job.openings).flatMap((opening) => {
    const { near, far } = openingSides(job, opening)
    return [near, far].flatMap((one) =>
      one !== null && one.room.id === room.id && walls.includes(one.wall.id) ? [one.place.top] : [],
    )
  })
  return Math.max(0, ...tops)
}

function highestOf(ceiling: CeilingShape): Length {
  switch (ceiling.kind) {
    case 'flat':
      return ceiling.height
    case 'shed':
      return lengthFromUnits(Math.max(ceiling.startHeight, ceiling.endHeight))
    case 'gable':
      return ceiling.ridgeHeight
    case 'vault':
      return ceiling.flatHeight
    case 'stair':
      return ceiling.line[0]?.height ?? feet(8)
  }
}

/** Where a slope one way is low. */
export function lowSide(ceiling: Extract<CeilingShape, { kind: 'shed' }>): PlanSide {
  return sideOf(ceiling.along, ceiling.startHeight <= ceiling.endHeight ? 'start' : 'end')
}

/** A slope one way with its low side here. */
export function slopeFrom(side: PlanSide, low: Length, high: Length): CeilingShape {
  const along = side === 'left' || side === 'right' ? 'x' : 'y'
  return side === 'left' || side === 'top'
    ? { kind: 'shed', along, startHeight: low, endHeight: high }
    : { kind: 'shed', along, startHeight: high, endHeight: low }
}

/** A height of a sloping ceiling where it is written on the plan; what is there in a word. */
interface SlopeMark {
  readonly word: 'low' | 'high' | 'ridge' | 'flat'
  readonly height: number
  /** On the plan, a little inside the room and aside of the middle of its walls, where other figures stand. */
  readonly place: Point
}

/** Part of the room's span that a mark keeps from the side it stands at (words run across the sheet), and of its width that it stands aside. */
const markInset = { x: 0.04, y: 0.13 } as const
const markAside = 0.2

/** The heights of a room whose ceiling slopes one way or two, along its slope; none for a flat one, and none for a stair, whose line is drawn. */
export function slopeMarks(room: Room): readonly SlopeMark[] {
  const { ceiling } = room
  if (ceiling.kind === 'flat' || ceiling.kind === 'stair') return []
  const { axis, points } = ceilingLine(room)
  const bounds = polygonBounds(room.corners)
  const inset = (bounds.max[axis] - bounds.min[axis]) * markInset[axis]
  const least = Math.min(...points.map(({ height }) => height))
  return points.map(({ at, height }, index) => {
    const isSide = index === 0 || index === points.length - 1
    const inside = Math.min(bounds.max[axis] - inset, Math.max(bounds.min[axis] + inset, at))
    const peak = ceiling.kind === 'gable' ? 'ridge' : 'flat'
    const sideWord = ceiling.kind === 'shed' && height > least ? 'high' : 'low'
    return { word: isSide ? sideWord : peak, height, place: markPlace(room, axis, inside, inset) }
  })
}

/** Lines across a room where its ceiling bends: the ridge of a gable, the edges of a flat, the bends over a stair. */
export function slopeBends({ ceiling, corners }: Room): readonly (readonly [Point, Point])[] {
  if (ceiling.kind === 'flat' || ceiling.kind === 'shed') return []
  const { min, max } = polygonBounds(corners)
  const bends =
    ceiling.kind === 'gable'
      ? [ceiling.ridgeAt]
      : ceiling.kind === 'vault'
        ? [ceiling.flatFrom, ceiling.flatTo]
        : ceiling.line.slice(1, -1).map((point) => point.at)
  return bends.map((bend) => {
    const at = min[ceiling.along] + bend
    return ceiling.along === 'x'
      ? [
          { x: at, y: min.y },
          { x: at, y: max.y },
        ]
      : [
          { x: min.x, y: at },
          { x: max.x, y: at },
        ]
  })
}

/** Across the slope the mark stands in what the room has there, which in an L is not its middle. */
function markPlace(room: Room, axis: SlopeAxis, at: number, reach: number): Point {
  const { min, max } = polygonBounds(polygonBand(room.corners, axis, at - reach / 4, at + reach / 4))
  return axis === 'x'
    ? { x: at, y: min.y + (max.y - min.y) * markAside }
    : { x: min.x + (max.x - min.x) * markAside, y: at }
}

/** The ceiling turned to vary along the other axis; places along it keep their share of the room, heights stay. */
export function turnedCeiling(room: Room, ceiling: CeilingShape, along: SlopeAxis): CeilingShape {
  if (ceiling.kind === 'flat' || ceiling.along === along) return ceiling
  const scaled = scaling(room, ceiling.along, along)
  switch (ceiling.kind) {
    case 'shed':
      return { ...ceiling, along }
    case 'gable':
      return { ...ceiling, along, ridgeAt: scaled(ceiling.ridgeAt) }
    case 'vault':
      return { ...ceiling, along, flatFrom: scaled(ceiling.flatFrom), flatTo: scaled(ceiling.flatTo) }
    case 'stair':
      return { ...ceiling, along, line: turnedLine(room, ceiling.line, ceiling.along, along) }
  }
}

/** The points of a broken line, each at the same share of the room along the other axis. */
export function turnedLine(
  room: Room,
  line: readonly LinePoint[],
  from: SlopeAxis,
  to: SlopeAxis,
): readonly LinePoint[] {
  const scaled = scaling(room, from, to)
  return from === to ? line : line.map(({ at, height }) => ({ at: scaled(at), height }))
}

function scaling(room: Room, from: SlopeAxis, to: SlopeAxis) {
  const [was, is] = [roomSpan(room, from), roomSpan(room, to)]
  return (at: Length) => lengthFromUnits((at / was) * is)
}

/** A stair as it is measured: one rise, one run, and how many treads there are between floor and landing. */
export interface StairMeasure {
  readonly rise: Length
  readonly run: Length
  readonly treads: number
  /** Where its foot is. */
  readonly foot: PlanSide
  /** How high the ceiling is over the slope, straight up; null leaves the ceiling as it is. */
  readonly headroom: Length | null
}

/**
 * The floor, and with a headroom the ceiling, of a room with a stair: from the foot up one riser more than there are treads, then level to
 * the far wall. A problem in words where the treads do not fit the room.
 */
export function stairShape(
  room: Room,
  { rise, run, treads, foot, headroom }: StairMeasure,
  system: LengthUnitSystem,
): Outcome<{ readonly floor: FloorShape; readonly ceiling: CeilingShape }> {
  const along = foot === 'left' || foot === 'right' ? 'x' : 'y'
  const span = roomSpan(room, along)
  const length = run * treads
  if (length > span) {
    const sentence = `${room.name}: ${treads} treads of ${formatLength(run, system)} are ${formatLength(length, system)} long, but the room is only ${formatLength(span, system)} there. Make them fewer or shorter, or let the stair run the other way.`
    return fail('ceilingLineWrong', sentence, [room.id])
  }
  const top = lengthFromUnits(rise * (treads + 1))
  const up: readonly LinePoint[] = [
    { at: zeroLength, height: zeroLength },
    { at: lengthFromUnits(length), height: top },
    ...(length < span ? [{ at: lengthFromUnits(span), height: top }] : []),
  ]
  const isMirrored = foot === 'right' || foot === 'bottom'
  const line = isMirrored
    ? up.map(({ at, height }) => ({ at: lengthFromUnits(span - at), height })).reverse()
    : up
  const over = (by: Length) => line.map(({ at, height }) => ({ at, height: lengthFromUnits(height + by) }))
  return succeed({
    floor: { kind: 'stair', along, line },
    ceiling: headroom === null ? room.ceiling : { kind: 'stair', along, line: over(headroom) },
  })
}
