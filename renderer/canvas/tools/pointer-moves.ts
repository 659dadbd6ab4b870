import { type Point, pointsDistance } from '../../../core/geometry/point.ts'
import { findWall, openingSides } from '../../../core/project/walls.ts'
import type { SketchCommand } from '../../../core/sketch/commands.ts'
import { lengthFromUnits } from '../../../core/units/length.ts'
import { idsWithin, placeOnWall } from '../hit.ts'
import { onGrid } from './opening.ts'
import { snapped } from './snap.ts'
import {
  type Gesture,
  type GestureOf,
  type Input,
  resting,
  type Surroundings,
  type ToolStep,
} from './tool.ts'

/** Gestures that follow the pointer while its button is held. */
type MoveKind = 'movingCorner' | 'movingWall' | 'slidingOpening' | 'movingRooms' | 'sweeping'

/** Any of them, told apart by its kind, so that the table below can be looked up by it. */
type Move<Kind extends MoveKind = MoveKind> = { [Each in Kind]: GestureOf<Each> }[Kind]

type MoveInput = Extract<Input, { kind: 'move' }>

/** All that is said of one such gesture. */
interface MoveRecord<Kind extends MoveKind> {
  /** The gesture once the pointer has gone on. */
  readonly follow: (gesture: GestureOf<Kind>, input: MoveInput, around: Surroundings) => Gesture
  /** What it does to the job when it ends now; nothing while nothing is different. */
  readonly commands: (gesture: GestureOf<Kind>) => readonly SketchCommand[]
  /** What it is called in "Undo ...". */
  readonly name: string
  /** What is selected once the button is let go. */
  readonly selects: (gesture: GestureOf<Kind>, around: Surroundings) => readonly string[]
  /** The rooms whose outline it changes. */
  readonly roomIds: (gesture: GestureOf<Kind>) => readonly string[]
}

const moves: { readonly [Kind in MoveKind]: MoveRecord<Kind> } = {
  movingCorner: {
    follow: (gesture, input, around) => {
      const { point, guides } = snapped(input.point, around, {
        free: input.free,
        without: [gesture.roomId],
        drawn: cornersBeside(gesture, around),
      })
      return { ...gesture, to: point, guides }
    },
    commands: ({ roomId, wallId, to }) => [{ kind: 'moveCorner', roomId, wallId, x: to.x, y: to.y }],
    name: 'move a corner',
    selects: ({ roomId }) => [roomId],
    roomIds: ({ roomId }) => [roomId],
  },
  movingWall: {
    follow: (gesture, input, around) => ({
      ...gesture,
      by: wallShift(gesture, input, around),
      to: input.point,
    }),
    commands: ({ roomId, wallId, by }) =>
      by === 0 ? [] : [{ kind: 'moveWall', roomId, wallId, by, withFacing: true }],
    name: 'move a wall',
    selects: ({ roomId }) => [roomId],
    roomIds: ({ roomId }) => [roomId],
  },
  slidingOpening: {
    follow: (gesture, input, around) => ({
      ...gesture,
      offset: slideTo(gesture, input, around),
      to: input.point,
    }),
    commands: ({ openingId, offset }) => [
      { kind: 'moveOpening', openingId, offset: lengthFromUnits(offset) },
    ],
    name: 'slide an opening',
    selects: ({ openingId }) => [openingId],
    roomIds: () => [],
  },
  movingRooms: {
    follow: shiftRooms,
    commands: ({ roomIds, dx, dy }) => (dx === 0 && dy === 0 ? [] : [{ kind: 'moveRooms', roomIds, dx, dy }]),
    name: 'move rooms',
    selects: ({ roomIds }) => roomIds,
    roomIds: ({ roomIds }) => roomIds,
  },
  sweeping: {
    follow: (gesture, input) => ({ ...gesture, to: input.point }),
    commands: () => [],
    name: 'sweep up',
    selects: ({ from, to, adds }, around) => {
      const found = idsWithin(around.job, around.storeyId, from, to)
      return adds ? [...new Set([...around.selectedIds, ...found])] : found
    },
    roomIds: () => [],
  },
}

export function isMove(gesture: Gesture): gesture is Move {
  return Object.hasOwn(moves, gesture.kind)
}

export function follow<Kind extends MoveKind>(
  gesture: Move<Kind>,
  input: MoveInput,
  around: Surroundings,
): Gesture {
  return moves[gesture.kind].follow(gesture, input, around)
}

export function commandsOf<Kind extends MoveKind>(gesture: Move<Kind>): readonly SketchCommand[] {
  return moves[gesture.kind].commands(gesture)
}

/** The rooms a gesture changes the outline of; none for gestures that move nothing. */
export function movedRoomIds<Kind extends MoveKind>(gesture: Move<Kind>): readonly string[] {
  return moves[gesture.kind].roomIds(gesture)
}

/** The button is let go: one action where something is different; a sweep only selects. */
export function letGo<Kind extends MoveKind>(gesture: Move<Kind>, around: Surroundings): ToolStep {
  const { commands, name, selects } = moves[gesture.kind]
  const select = selects(gesture, around)
  if (gesture.kind === 'sweeping') return { gesture: resting, select }
  const ended = commands(gesture)
  if (ended.length === 0) return { gesture: resting }
  return { gesture: resting, action: { name, commands: ended, select, at: gesture.to } }
}

/** The corners on either side, so that a moved corner catches on square with them. */
function cornersBeside(gesture: GestureOf<'movingCorner'>, around: Surroundings): readonly Point[] {
  const corners = around.job.rooms[gesture.roomId]?.corners ?? []
  const index = corners.findIndex((corner) => corner.wallId === gesture.wallId)
  return [corners.at(index - 1), corners.at((index + 1) % corners.length)].filter(
    (corner) => corner !== undefined,
  )
}

/** How far outward the wall goes: the pointer's distance from its line, caught on other rooms' lines or the grid. */
function wallShift(gesture: GestureOf<'movingWall'>, input: MoveInput, around: Surroundings): number {
  const room = around.job.rooms[gesture.roomId]
  const wall = room === undefined ? null : findWall(room, gesture.wallId)
  if (wall === null || wall.length === 0) return 0
  const { point } = snapped(input.point, around, { free: input.free, without: [gesture.roomId] })
  const right =
    ((wall.end.x - wall.start.x) * (point.y - wall.start.y) -
      (wall.end.y - wall.start.y) * (point.x - wall.start.x)) /
    wall.length
  return Math.round(wall.inside === 'right' ? -right : right)
}

function slideTo(gesture: GestureOf<'slidingOpening'>, input: MoveInput, around: Surroundings): number {
  const opening = around.job.openings[gesture.openingId]
  const near = opening === undefined ? null : openingSides(around.job, opening).near
  if (opening === undefined || near === null) return gesture.offset
  const at = placeOnWall(near.wall, input.point).at - gesture.grabbedAt
  return onGrid(at, input.free ? null : around.grid, near.wall.length - opening.width)
}

/** Rooms move with the corner nearest to the pointer catching on what stays. */
function shiftRooms(gesture: GestureOf<'movingRooms'>, input: MoveInput, around: Surroundings): Gesture {
  const corners = gesture.roomIds.flatMap((id) => around.job.rooms[id]?.corners ?? [])
  const lead = corners.reduce<Point | null>(
    (best, corner) =>
      best === null || pointsDistance(corner, gesture.from) < pointsDistance(best, gesture.from)
        ? corner
        : best,
    null,
  )
  if (lead === null) return gesture
  const wanted = { x: lead.x + input.point.x - gesture.from.x, y: lead.y + input.point.y - gesture.from.y }
  const { point, guides } = snapped(wanted, around, { free: input.free, without: gesture.roomIds })
  return { ...gesture, to: input.point, dx: point.x - lead.x, dy: point.y - lead.y, guides }
}
