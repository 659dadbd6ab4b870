import { type Point, pointBetween, pointsDistance } from '../../core/geometry/point.ts'
import { polygonHolds } from '../../core/geometry/polygon.ts'
import { nearestOnSegment } from '../../core/geometry/segment.ts'
import { type Job, records } from '../../core/project/job.ts'
import type { OpeningId, RoomId, WallId } from '../../core/project/sketch-records.ts'
import { openingSides, roomWalls, type Wall } from '../../core/project/walls.ts'

/** What lies under the pointer, the finest thing first. */
export type Target =
  | { readonly kind: 'corner'; readonly roomId: RoomId; readonly wallId: WallId }
  | { readonly kind: 'opening'; readonly openingId: OpeningId }
  | { readonly kind: 'wall'; readonly roomId: RoomId; readonly wallId: WallId; readonly at: number }
  | { readonly kind: 'room'; readonly roomId: RoomId }

/** Where a point falls on a wall: distance along it and off it, in plan units. */
export function placeOnWall(wall: Wall, point: Point): { readonly at: number; readonly off: number } {
  const { share, off } = nearestOnSegment(wall, point)
  return { at: share * wall.length, off }
}

/** Corners can be taken hold of only on rooms that are selected; everything else by what is nearest within `tolerance` (plan units). */
export function targetAt(
  job: Job,
  storeyId: string,
  point: Point,
  tolerance: number,
  selectedIds: readonly string[],
): Target | null {
  const rooms = records(job.rooms).filter((room) => room.storeyId === storeyId)
  for (const room of rooms.filter((one) => selectedIds.includes(one.id))) {
    const corner = room.corners.find((one) => pointsDistance(one, point) <= tolerance)
    if (corner) return { kind: 'corner', roomId: room.id, wallId: corner.wallId }
  }
  return (
    openingAt(job, storeyId, point, tolerance) ??
    wallAt(job, storeyId, point, tolerance) ??
    roomAt(job, storeyId, point)
  )
}

function openingAt(job: Job, storeyId: string, point: Point, tolerance: number): Target | null {
  for (const opening of records(job.openings)) {
    const { near, far } = openingSides(job, opening)
    for (const side of [near, far]) {
      if (side === null || side.room.storeyId !== storeyId) continue
      const { at, off } = placeOnWall(side.wall, point)
      if (off <= tolerance && at >= side.place.from && at <= side.place.to)
        return { kind: 'opening', openingId: opening.id }
    }
  }
  return null
}

/** The nearest wall of the storey within reach. */
export function wallAt(
  job: Job,
  storeyId: string,
  point: Point,
  tolerance: number,
): Extract<Target, { kind: 'wall' }> | null {
  let best: { readonly wall: Wall; readonly at: number; readonly off: number } | null = null
  for (const room of records(job.rooms)) {
    if (room.storeyId !== storeyId) continue
    for (const wall of roomWalls(room)) {
      const place = placeOnWall(wall, point)
      if (place.off <= tolerance && (best === null || place.off < best.off)) best = { wall, ...place }
    }
  }
  return best === null ? null : { kind: 'wall', roomId: best.wall.roomId, wallId: best.wall.id, at: best.at }
}

function roomAt(job: Job, storeyId: string, point: Point): Target | null {
  const room = records(job.rooms).find((one) => one.storeyId === storeyId && polygonHolds(one.corners, point))
  return room === undefined ? null : { kind: 'room', roomId: room.id }
}

/** Ids of the rooms and openings that lie wholly inside a swept rectangle. */
export function idsWithin(job: Job, storeyId: string, from: Point, to: Point): readonly string[] {
  const [left, right] = [Math.min(from.x, to.x), Math.max(from.x, to.x)]
  const [top, bottom] = [Math.min(from.y, to.y), Math.max(from.y, to.y)]
  const inside = (point: Point) => point.x >= left && point.x <= right && point.y >= top && point.y <= bottom
  const rooms = records(job.rooms).filter((room) => room.storeyId === storeyId && room.corners.every(inside))
  const openings = records(job.openings).filter((opening) => {
    const { near } = openingSides(job, opening)
    if (near === null || near.room.storeyId !== storeyId || near.wall.length === 0) return false
    const ends = [near.place.from, near.place.to].map((at) =>
      pointBetween(near.wall.start, near.wall.end, at / near.wall.length),
    )
    return ends.every(inside)
  })
  return [...rooms, ...openings].map((one) => one.id)
}
