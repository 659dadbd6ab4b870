import { type Point, pointsDistance } from '../../../core/geometry/point.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { findWall, openingSides } from '../../../core/project/walls.ts'
import type { SketchCommand } from '../../../core/sketch/commands.ts'
import { lengthFromUnits } from '../../../core/units/length.ts'
import { idsWithin, placeOnWall, type Target, targetAt } from '../hit.ts'
import { onGrid } from './opening.ts'
import { snapped } from './snap.ts'
import { type Gesture, type Input, resting, type Step, type Surroundings, type Tool } from './tool.ts'

/** Selects, and moves what is taken hold of: a corner, a wall, an opening along its wall, whole rooms; on empty paper it sweeps. */
export const pickTool: Tool = {
  step(gesture, input, around) {
    if (input.kind === 'key')
      return input.key === 'Escape' && gesture.kind === 'resting'
        ? { gesture, select: [] }
        : { gesture: resting }
    if (input.kind === 'down') return press(input, around)
    if (input.kind === 'move') return { gesture: drag(gesture, input, around) }
    return release(gesture, around)
  },
  draft: (gesture) => commandsOf(gesture),
}

function press(input: Extract<Input, { kind: 'down' }>, around: Surroundings): Step {
  const target = targetAt(around.job, around.storeyId, input.point, around.tolerance, around.selectedIds)
  return { gesture: { kind: 'pressing', target, at: input.point, adds: input.adds } }
}

function drag(gesture: Gesture, input: Extract<Input, { kind: 'move' }>, around: Surroundings): Gesture {
  if (gesture.kind === 'pressing') {
    const moved = pointsDistance(gesture.at, input.point) > around.tolerance / 2
    return moved ? moving(begin(gesture, around), input, around) : gesture
  }
  return moving(gesture, input, around)
}

/** The gesture a press turns into once the pointer has moved. */
function begin(gesture: Extract<Gesture, { kind: 'pressing' }>, around: Surroundings): Gesture {
  const { target, at } = gesture
  switch (target?.kind) {
    case undefined:
      return { kind: 'sweeping', from: at, to: at, adds: gesture.adds }
    case 'corner':
      return { kind: 'movingCorner', roomId: target.roomId, wallId: target.wallId, to: at, guides: [] }
    case 'wall':
      return { kind: 'movingWall', roomId: target.roomId, wallId: target.wallId, by: 0, to: at }
    case 'opening':
      return beginSlide(target, at, around)
    case 'room': {
      const held = around.selectedIds.includes(target.roomId) ? selectedRooms(around) : [target.roomId]
      return { kind: 'movingRooms', roomIds: held, from: at, to: at, dx: 0, dy: 0, guides: [] }
    }
  }
}

function selectedRooms(around: Surroundings): readonly RoomId[] {
  return around.selectedIds.filter((id) => around.job.rooms[id] !== undefined) as RoomId[]
}

function beginSlide(target: Extract<Target, { kind: 'opening' }>, at: Point, around: Surroundings): Gesture {
  const opening = around.job.openings[target.openingId]
  const near = opening === undefined ? null : openingSides(around.job, opening).near
  if (opening === undefined || near === null) return resting
  const grabbedAt = placeOnWall(near.wall, at).at - opening.offset
  return { kind: 'slidingOpening', openingId: target.openingId, grabbedAt, offset: opening.offset, to: at }
}

function moving(gesture: Gesture, input: Extract<Input, { kind: 'move' }>, around: Surroundings): Gesture {
  switch (gesture.kind) {
    case 'movingCorner': {
      const { point, guides } = snapped(input.point, around, {
        free: input.free,
        without: [gesture.roomId],
        drawn: neighbours(gesture, around),
      })
      return { ...gesture, to: point, guides }
    }
    case 'movingWall':
      return { ...gesture, by: wallShift(gesture, input, around), to: input.point }
    case 'slidingOpening':
      return { ...gesture, offset: slideTo(gesture, input, around), to: input.point }
    case 'movingRooms':
      return shiftRooms(gesture, input, around)
    case 'sweeping':
      return { ...gesture, to: input.point }
    default:
      return gesture
  }
}

/** The corners on either side, so that a moved corner catches on square with them. */
function neighbours(
  gesture: Extract<Gesture, { kind: 'movingCorner' }>,
  around: Surroundings,
): readonly Point[] {
  const corners = around.job.rooms[gesture.roomId]?.corners ?? []
  const index = corners.findIndex((corner) => corner.wallId === gesture.wallId)
  return [corners.at(index - 1), corners.at((index + 1) % corners.length)].filter(
    (corner) => corner !== undefined,
  )
}

/** How far outward the wall goes: the pointer's distance from its line, caught on other rooms' lines or the grid. */
function wallShift(
  gesture: Extract<Gesture, { kind: 'movingWall' }>,
  input: Extract<Input, { kind: 'move' }>,
  around: Surroundings,
): number {
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

function slideTo(
  gesture: Extract<Gesture, { kind: 'slidingOpening' }>,
  input: Extract<Input, { kind: 'move' }>,
  around: Surroundings,
): number {
  const opening = around.job.openings[gesture.openingId]
  const near = opening === undefined ? null : openingSides(around.job, opening).near
  if (opening === undefined || near === null) return gesture.offset
  const at = placeOnWall(near.wall, input.point).at - gesture.grabbedAt
  return onGrid(at, input.free ? null : around.grid, near.wall.length - opening.width)
}

/** Rooms move with the corner nearest to the hand catching on what stays. */
function shiftRooms(
  gesture: Extract<Gesture, { kind: 'movingRooms' }>,
  input: Extract<Input, { kind: 'move' }>,
  around: Surroundings,
): Gesture {
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

function release(gesture: Gesture, around: Surroundings): Step {
  switch (gesture.kind) {
    case 'pressing':
      return { gesture: resting, select: clicked(gesture, around.selectedIds) }
    case 'sweeping': {
      const found = idsWithin(around.job, around.storeyId, gesture.from, gesture.to)
      return {
        gesture: resting,
        select: gesture.adds ? [...new Set([...around.selectedIds, ...found])] : found,
      }
    }
    default: {
      const commands = commandsOf(gesture)
      if (commands.length === 0 || !('to' in gesture)) return { gesture: resting }
      return {
        gesture: resting,
        deed: { name: nameOf(gesture), commands, select: selectedAfter(gesture), at: gesture.to },
      }
    }
  }
}

function clicked(
  gesture: Extract<Gesture, { kind: 'pressing' }>,
  selected: readonly string[],
): readonly string[] {
  const { target, adds } = gesture
  if (target === null) return adds ? selected : []
  const id = target.kind === 'opening' ? target.openingId : target.roomId
  if (!adds) return target.kind === 'wall' ? [id, `${target.roomId}/${target.wallId}`] : [id]
  return selected.includes(id) ? selected.filter((one) => one !== id) : [...selected, id]
}

function commandsOf(gesture: Gesture): readonly SketchCommand[] {
  switch (gesture.kind) {
    case 'movingCorner':
      return [
        {
          kind: 'moveCorner',
          roomId: gesture.roomId,
          wallId: gesture.wallId,
          x: gesture.to.x,
          y: gesture.to.y,
        },
      ]
    case 'movingWall':
      return gesture.by === 0
        ? []
        : [
            {
              kind: 'moveWall',
              roomId: gesture.roomId,
              wallId: gesture.wallId,
              by: gesture.by,
              withFacing: true,
            },
          ]
    case 'slidingOpening':
      return [{ kind: 'moveOpening', openingId: gesture.openingId, offset: lengthFromUnits(gesture.offset) }]
    case 'movingRooms':
      return gesture.dx === 0 && gesture.dy === 0
        ? []
        : [{ kind: 'moveRooms', roomIds: gesture.roomIds, dx: gesture.dx, dy: gesture.dy }]
    default:
      return []
  }
}

function nameOf(gesture: Gesture): string {
  switch (gesture.kind) {
    case 'movingCorner':
      return 'move a corner'
    case 'movingWall':
      return 'move a wall'
    case 'slidingOpening':
      return 'slide an opening'
    default:
      return 'move rooms'
  }
}

function selectedAfter(gesture: Gesture): readonly string[] | null {
  switch (gesture.kind) {
    case 'movingCorner':
    case 'movingWall':
      return [gesture.roomId]
    case 'slidingOpening':
      return [gesture.openingId]
    case 'movingRooms':
      return gesture.roomIds
    default:
      return null
  }
}
