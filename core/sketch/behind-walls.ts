import { polygonBounds } from '../geometry/polygon.ts'
import { type Job, records } from '../project/job.ts'
import type { Corner, Room } from '../project/sketch-records.ts'
import { findWall, roomWalls, thickestWall, type Wall } from '../project/walls.ts'
import { facingWall } from './facing-wall.ts'

/** Where along a wall it is looked what is behind, as shares of its length. */
const shares = [0.1, 0.3, 0.5, 0.7, 0.9]

/**
 * What the plan says of the space behind a wall: a heated room where one is drawn right behind most of it, else outdoors; behind the walls
 * of an attic room the unheated roof space. A default, which a hand may change.
 */
export function behindByPlan(job: Job, room: Room, wall: Wall): Corner['behind'] {
  const backed = shares.filter((share) => {
    const at = wall.length * share
    return facingWall(job, room.id, wall.id, at, at) !== null
  })
  if (backed.length * 2 > shares.length) return 'heated'
  return room.use === 'attic' ? 'unheated' : 'outside'
}

/**
 * The job after an edit, with what is behind walls following the plan: a wall of a new room says what the plan says, and so does one that
 * said it before and of which the plan says something else now. What was said otherwise stays.
 */
export function withBehindByPlan(before: Job, after: Job): Job {
  if (before.rooms === after.rooms) return after
  const moved = new Set(
    [...records(before.rooms), ...records(after.rooms)]
      .filter(({ id }) => !isSameOutline(before.rooms[id], after.rooms[id]))
      .map(({ id }) => id),
  )
  if (moved.size === 0) return after
  const near = [...moved].flatMap((id) =>
    [before.rooms[id], after.rooms[id]].filter((room) => room !== undefined),
  )
  const changed = records(after.rooms)
    .filter((room) => moved.has(room.id) || near.some((other) => isNear(room, other)))
    .map((room) => followed(before, after, room))
    .filter((room) => room !== after.rooms[room.id])
  if (changed.length === 0) return after
  return {
    ...after,
    rooms: { ...after.rooms, ...Object.fromEntries(changed.map((room) => [room.id, room])) },
  }
}

function followed(before: Job, after: Job, room: Room): Room {
  const old = before.rooms[room.id]
  const corners = room.corners.map((corner, index): Corner => {
    const now = roomWalls(room)[index]
    if (now === undefined) return corner
    const was = old === undefined ? null : findWall(old, corner.wallId)
    const said = old === undefined || was === null ? 'heated' : behindByPlan(before, old, was)
    if (corner.behind !== said) return corner
    const behind = behindByPlan(after, room, now)
    return behind === corner.behind ? corner : { ...corner, behind }
  })
  return corners.every((corner, index) => corner === room.corners[index]) ? room : { ...room, corners }
}

function isSameOutline(one: Room | undefined, other: Room | undefined): boolean {
  if (one === other) return true
  if (one === undefined || other === undefined || one.storeyId !== other.storeyId) return false
  return (
    one.corners.length === other.corners.length &&
    one.corners.every(({ x, y }, index) => x === other.corners[index]?.x && y === other.corners[index]?.y)
  )
}

/** Near enough for a wall of one to stand behind a wall of the other. */
function isNear(one: Room, other: Room): boolean {
  if (one.storeyId !== other.storeyId) return false
  const [a, b] = [polygonBounds(one.corners), polygonBounds(other.corners)]
  return (['x', 'y'] as const).every(
    (axis) => a.min[axis] <= b.max[axis] + thickestWall && b.min[axis] <= a.max[axis] + thickestWall,
  )
}
