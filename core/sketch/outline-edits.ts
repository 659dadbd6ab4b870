import { pointsDistance } from '../geometry/point.ts'
import { present } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import type { Corner, Room, WallId } from '../project/sketch-records.ts'
import { findWall, roomWalls, type Wall } from '../project/walls.ts'
import { type Length, lengthFromUnits } from '../units/length.ts'
import type { SketchCommand } from './commands.ts'
import { cornerAt, findCorner, findRoom, mapRecords, withRecords } from './job-edits.ts'
import { renameWall } from './wall-renaming.ts'
import { shiftWallOutward, turnBetween } from './wall-shift.ts'

type Command<Kind extends SketchCommand['kind']> = Extract<SketchCommand, { kind: Kind }>

/** Moves one corner; both walls at it turn. */
export function moveCorner(job: Job, { roomId, wallId, x, y }: Command<'moveCorner'>): Outcome<Job> {
  const place = findPlace(job, roomId, wallId)
  if (!place.ok) return place
  const { room, index } = place.value
  const corner = { ...cornerAt(room.corners, index), x: lengthFromUnits(x), y: lengthFromUnits(y) }
  return succeed(withOutline(job, room, room.corners.with(index, corner)))
}

/** Moves a wall sideways, and with `withFacing` the walls right behind it by as much. */
export function moveWall(job: Job, command: Command<'moveWall'>): Outcome<Job> {
  const moved = shiftOne(job, command.roomId, command.wallId, command.by)
  if (!moved.ok || !command.withFacing) return moved
  let next = moved.value
  for (const facing of facingWalls(job, command.roomId, command.wallId)) {
    const along = shiftOne(next, facing.roomId, facing.wallId, -command.by)
    if (!along.ok) return along
    next = along.value
  }
  return succeed(next)
}

function shiftOne(job: Job, roomId: Room['id'], wallId: WallId, by: number): Outcome<Job> {
  const place = findPlace(job, roomId, wallId)
  if (!place.ok) return place
  const { room, index } = place.value
  const corners = shiftWallOutward(room, index, by)
  if (corners === null)
    return fail('notAllowed', `That wall of ${room.name} cannot be shifted that far.`, [room.id, wallId])
  return succeed(withOutline(job, room, corners))
}

/** Walls of other rooms that share an opening with this one. */
function facingWalls(job: Job, roomId: string, wallId: string) {
  const found = new Map<string, { readonly roomId: Room['id']; readonly wallId: WallId }>()
  for (const opening of Object.values(job.openings)) {
    if (opening.far === null) continue
    const near = { roomId: opening.roomId, wallId: opening.wallId }
    const [here, there] = isPlace(near, roomId, wallId) ? [near, opening.far] : [opening.far, near]
    if (isPlace(here, roomId, wallId)) found.set(`${there.roomId}/${there.wallId}`, there)
  }
  return found.values()
}

function isPlace(
  place: { readonly roomId: string; readonly wallId: string },
  roomId: string,
  wallId: string,
): boolean {
  return place.roomId === roomId && place.wallId === wallId
}

/**
 * Gives a wall a length by moving the wall beside it, so that corners keep their angle; where that one runs on in line, only
 * the corner slides.
 */
export function setWallLength(job: Job, command: Command<'setWallLength'>): Outcome<Job> {
  const place = findPlace(job, command.roomId, command.wallId)
  if (!place.ok) return place
  const { room, index } = place.value
  const wall = present(roomWalls(room)[index])
  if (wall.length === 0)
    return fail('wallTooShort', `That wall of ${room.name} has no direction yet.`, [room.id, wall.id])
  const grows = command.length - wall.length
  const neighbour = command.fixed === 'start' ? index + 1 : index - 1
  const turn = turnBetween(room, command.fixed === 'start' ? index + 1 : index)
  // Shifting the neighbour outward by sin(turn) for every unit slides their common corner one unit along this wall.
  const corners = Math.abs(turn) < 1e-6 ? null : shiftWallOutward(room, neighbour, grows * turn)
  return succeed(withOutline(job, room, corners ?? slideEnd(room, wall, command.length, command.fixed)))
}

/** Where the neighbour runs on in the same line, only the corner between them slides. */
function slideEnd(room: Room, wall: Wall, length: Length, fixed: 'start' | 'end'): readonly Corner[] {
  const [stays, goes] = fixed === 'start' ? [wall.start, wall.end] : [wall.end, wall.start]
  const index = (fixed === 'start' ? wall.index + 1 : wall.index) % room.corners.length
  const at = (axis: 'x' | 'y') =>
    lengthFromUnits(stays[axis] + ((goes[axis] - stays[axis]) / wall.length) * length)
  return room.corners.with(index, { ...cornerAt(room.corners, index), x: at('x'), y: at('y') })
}

/** Says what is behind a wall. */
export function setWallBehind(job: Job, { roomId, wallId, behind }: Command<'setWallBehind'>): Outcome<Job> {
  const place = findPlace(job, roomId, wallId)
  if (!place.ok) return place
  const { room, index } = place.value
  const corners = room.corners.with(index, { ...cornerAt(room.corners, index), behind })
  return succeed(withRecords(job, 'rooms', [{ ...room, corners }]))
}

/** Parts a wall at a place between its ends. */
export function insertCorner(job: Job, command: Command<'insertCorner'>): Outcome<Job> {
  const place = findPlace(job, command.roomId, command.wallId)
  if (!place.ok) return place
  const { room, index } = place.value
  if (room.corners.some((corner) => corner.wallId === command.newWallId)) {
    return fail('duplicateId', `${room.name} already has a wall with that id.`, [room.id, command.newWallId])
  }
  const wall = present(roomWalls(room)[index])
  if (command.at <= 0 || command.at >= wall.length) {
    return fail('wallTooShort', `A new corner must lie between the ends of the wall of ${room.name}.`, [
      room.id,
      wall.id,
    ])
  }
  const share = command.at / wall.length
  const corner: Corner = {
    ...cornerAt(room.corners, index),
    wallId: command.newWallId,
    x: lengthFromUnits(wall.start.x + (wall.end.x - wall.start.x) * share),
    y: lengthFromUnits(wall.start.y + (wall.end.y - wall.start.y) * share),
  }
  const before = pointsDistance(wall.start, corner)
  const split = withRecords(job, 'rooms', [
    { ...room, corners: room.corners.toSpliced(index + 1, 0, corner) },
  ])
  return succeed(shareOutWall(split, room, wall, command.newWallId, before))
}

/** What lay beyond the new corner goes to the new wall; a trim run on the wall runs on over both. */
function shareOutWall(job: Job, room: Room, wall: Wall, newWallId: WallId, before: number): Job {
  const openings = mapRecords(job, 'openings', (opening) => {
    if (isPlace(opening, room.id, wall.id) && opening.offset + opening.width > before) {
      // One that straddles the corner is given to the new wall at a place where it cannot be, and refused with its name.
      return { ...opening, wallId: newWallId, offset: lengthFromUnits(opening.offset - before) }
    }
    if (opening.far && isPlace(opening.far, room.id, wall.id) && liesBeyond(job, opening, wall, before)) {
      return { ...opening, far: { ...opening.far, wallId: newWallId } }
    }
    return opening
  })
  return mapRecords(openings, 'trimRuns', (run) => {
    const at = run.roomId === room.id ? (run.walls?.indexOf(wall.id) ?? -1) : -1
    return at < 0 || run.walls === null ? run : { ...run, walls: run.walls.toSpliced(at + 1, 0, newWallId) }
  })
}

/** Whether a shared opening of another room shows beyond a place on this (the far) wall. */
function liesBeyond(job: Job, opening: Job['openings'][string], farWall: Wall, before: number): boolean {
  const nearRoom = job.rooms[opening.roomId]
  const nearWall = nearRoom ? findWall(nearRoom, opening.wallId) : null
  if (nearWall === null) return false
  const middle = (opening.offset + opening.width / 2) / nearWall.length
  const x = nearWall.start.x + (nearWall.end.x - nearWall.start.x) * middle
  const y = nearWall.start.y + (nearWall.end.y - nearWall.start.y) * middle
  const along =
    ((x - farWall.start.x) * (farWall.end.x - farWall.start.x) +
      (y - farWall.start.y) * (farWall.end.y - farWall.start.y)) /
    farWall.length
  return along > before
}

/**
 * Joins a wall to the one before it, whose id stays; openings and whatever names the wall go along. A room keeps three corners.
 */
export function removeCorner(job: Job, { roomId, wallId }: Command<'removeCorner'>): Outcome<Job> {
  const place = findPlace(job, roomId, wallId)
  if (!place.ok) return place
  const { room, index } = place.value
  if (room.corners.length <= 3) {
    return fail('outlineDegenerate', `${room.name} has only three corners left; a room needs three.`, [
      room.id,
      wallId,
    ])
  }
  const swallowing = cornerAt(room.corners, index - 1)
  const before = pointsDistance(swallowing, cornerAt(room.corners, index))
  const moved = mapRecords(job, 'openings', (opening) =>
    isPlace(opening, room.id, wallId)
      ? { ...opening, wallId: swallowing.wallId, offset: lengthFromUnits(opening.offset + before) }
      : opening,
  )
  const outlined = withRecords(moved, 'rooms', [{ ...room, corners: room.corners.toSpliced(index, 1) }])
  return succeed(renameWall(outlined, room.id, wallId, swallowing.wallId))
}

/** Gives a room another outline with the same walls; openings keep their distance from the end of their wall that stayed. */
function withOutline(job: Job, room: Room, corners: readonly Corner[]): Job {
  const after = { ...room, corners }
  const walls = new Map(
    roomWalls(room).map((wall, index) => [wall.id, [wall, present(roomWalls(after)[index])] as const]),
  )
  const reseated = mapRecords(job, 'openings', (opening) => {
    const pair = opening.roomId === room.id ? walls.get(opening.wallId) : undefined
    const offset = pair ? lengthFromUnits(opening.offset + offsetShift(...pair)) : opening.offset
    return offset === opening.offset ? opening : { ...opening, offset: lengthFromUnits(offset) }
  })
  return withRecords(reseated, 'rooms', [after])
}

function offsetShift(before: Wall, after: Wall): number {
  const startMoved = before.start.x !== after.start.x || before.start.y !== after.start.y
  if (!startMoved) return 0
  const endMoved = before.end.x !== after.end.x || before.end.y !== after.end.y
  if (!endMoved) return after.length - before.length
  // Both ends moved: the opening stays where it is along the direction of the wall.
  const dx = (after.end.x - after.start.x) / after.length
  const dy = (after.end.y - after.start.y) / after.length
  return -((after.start.x - before.start.x) * dx + (after.start.y - before.start.y) * dy)
}

function findPlace(
  job: Job,
  roomId: Room['id'],
  wallId: WallId,
): Outcome<{ readonly room: Room; readonly index: number }> {
  const room = findRoom(job, roomId)
  if (!room.ok) return room
  const index = findCorner(room.value, wallId)
  return index.ok ? succeed({ room: room.value, index: index.value }) : index
}
