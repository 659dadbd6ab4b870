import { type HeightPoint, heightAt, heightLineAlong } from '../geometry/height-line.ts'
import { type Point, pointBetween, pointsDistance } from '../geometry/point.ts'
import { polygonSignedDoubleArea } from '../geometry/polygon.ts'
import { segmentShareAt } from '../geometry/segment.ts'
import { present } from '../lists/lists.ts'
import { ceilingLine, floorLine } from './heights.ts'
import type { Job } from './job.ts'
import type { Corner, Opening, Room, RoomId, WallId } from './sketch-records.ts'

/**
 * One wall of a room as it runs in the outline, from its own corner to the next. `length` is not rounded: a slanting wall's
 * length is rarely a whole unit, and areas need all of it.
 */
export interface Wall {
  readonly id: WallId
  readonly roomId: RoomId
  readonly index: number
  readonly start: Point
  readonly end: Point
  readonly length: number
  /** Which side of the direction start to end the room lies on, looking down at the plan. */
  readonly inside: 'right' | 'left'
  readonly behind: Corner['behind']
}

/** Records never change in place, so what follows from a room alone is worked out once for each. */
const wallsOfRoom = new WeakMap<Room, readonly Wall[]>()
const ceilingOfWall = new WeakMap<Wall, readonly HeightPoint[]>()
const floorOfWall = new WeakMap<Wall, readonly HeightPoint[]>()

/** The walls of a room in the order of its corners, measured once for each record. */
export function roomWalls(room: Room): readonly Wall[] {
  const known = wallsOfRoom.get(room)
  if (known !== undefined) return known
  const walls = measureWalls(room)
  wallsOfRoom.set(room, walls)
  return walls
}

function measureWalls(room: Room): readonly Wall[] {
  const inside = polygonSignedDoubleArea(room.corners) >= 0 ? 'right' : 'left'
  return room.corners.map((corner, index) => {
    const next = present(room.corners[(index + 1) % room.corners.length])
    return {
      id: corner.wallId,
      roomId: room.id,
      index,
      start: { x: corner.x, y: corner.y },
      end: { x: next.x, y: next.y },
      length: pointsDistance(corner, next),
      inside,
      behind: corner.behind,
    }
  })
}

/** `A` for the wall from the first corner, then `B`...; after `Z` comes `AA`. */
export function wallLetter(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26))
  return index < 26 ? letter : wallLetter(Math.floor(index / 26) - 1) + letter
}

/** Null where the room has no such wall, for it may have been taken away since. */
export function findWall(room: Room, wallId: WallId): Wall | null {
  return roomWalls(room).find((wall) => wall.id === wallId) ?? null
}

/** The ceiling seen along one of the room's own walls: height by distance from the wall's start. */
export function wallCeiling(room: Room, wall: Wall): readonly HeightPoint[] {
  const known = ceilingOfWall.get(wall)
  if (known !== undefined) return known
  const seen = heightLineAlong(ceilingLine(room), wall.start, wall.end, wall.length)
  ceilingOfWall.set(wall, seen)
  return seen
}

/** The floor seen along a wall. */
export function wallFloor(room: Room, wall: Wall): readonly HeightPoint[] {
  const known = floorOfWall.get(wall)
  if (known !== undefined) return known
  const seen = heightLineAlong(floorLine(room), wall.start, wall.end, wall.length)
  floorOfWall.set(wall, seen)
  return seen
}

/** Where an opening sits on a wall: distances from the wall's start and heights above the room's floor datum. */
export interface OpeningPlace {
  readonly from: number
  readonly to: number
  readonly bottom: number
  readonly top: number
}

/** `sill` counts from the floor line at the opening's first edge. */
export function openingPlace(room: Room, wall: Wall, opening: Opening): OpeningPlace {
  const bottom = heightAt(wallFloor(room, wall), opening.offset) + opening.sill
  return { from: opening.offset, to: opening.offset + opening.width, bottom, top: bottom + opening.height }
}

/** Walls farther apart than this (600 mm, our own choice: thicker than any wall of a house) do not share an opening. */
export const thickestWall = 600 * 8000

/**
 * Where a shared opening shows on the far room's wall: both edges projected square across the wall. Null when the walls are not
 * parallel, or do not face each other with at most `thickestWall` between them. Heights follow the near side's sill.
 */
export function farPlace(
  nearWall: Wall,
  farRoom: Room,
  farWall: Wall,
  opening: Pick<Opening, 'offset' | 'width' | 'height' | 'sill'>,
): OpeningPlace | null {
  if (!wallsFace(nearWall, farWall)) return null
  const edges = [opening.offset, opening.offset + opening.width].map((at) => {
    const point = pointBetween(nearWall.start, nearWall.end, at / nearWall.length)
    return Math.round(segmentShareAt(farWall, point) * farWall.length)
  })
  const [from, to] = [Math.min(...edges), Math.max(...edges)]
  const bottom = heightAt(wallFloor(farRoom, farWall), from) + opening.sill
  return { from, to, bottom, top: bottom + opening.height }
}

/** Parallel within 1/64 in over the wall's length, insides turned away from each other, and no farther apart than `thickestWall`. */
function wallsFace(one: Wall, other: Wall): boolean {
  const startGap = signedGap(one, other.start)
  const endGap = signedGap(one, other.end)
  if (Math.abs(startGap - endGap) > 3175) return false
  const outward = one.inside === 'right' ? -1 : 1
  const sameWay =
    (one.end.x - one.start.x) * (other.end.x - other.start.x) +
      (one.end.y - one.start.y) * (other.end.y - other.start.y) >
    0
  const backToBack = sameWay ? one.inside !== other.inside : one.inside === other.inside
  const gap = startGap * outward
  return backToBack && gap >= -3175 && gap <= thickestWall
}

/** Distance of a point from the wall's line, positive on the right hand of its direction (y down). */
function signedGap(wall: Wall, point: Point): number {
  const dx = wall.end.x - wall.start.x
  const dy = wall.end.y - wall.start.y
  return (dx * (point.y - wall.start.y) - dy * (point.x - wall.start.x)) / wall.length
}

/** Both sides of an opening with their rooms and walls; a side that cannot be found is null. */
export function openingSides(
  job: Job,
  opening: Opening,
): {
  readonly near: { readonly room: Room; readonly wall: Wall; readonly place: OpeningPlace } | null
  readonly far: { readonly room: Room; readonly wall: Wall; readonly place: OpeningPlace } | null
} {
  const nearRoom = job.rooms[opening.roomId]
  const nearWall = nearRoom ? findWall(nearRoom, opening.wallId) : null
  if (nearRoom === undefined || nearWall === null) return { near: null, far: null }
  const near = { room: nearRoom, wall: nearWall, place: openingPlace(nearRoom, nearWall, opening) }
  const farRoom = opening.far ? job.rooms[opening.far.roomId] : undefined
  const farWall = farRoom && opening.far ? findWall(farRoom, opening.far.wallId) : null
  if (farRoom === undefined || farWall === null) return { near, far: null }
  const place = farPlace(nearWall, farRoom, farWall, opening)
  return { near, far: place === null ? null : { room: farRoom, wall: farWall, place } }
}
