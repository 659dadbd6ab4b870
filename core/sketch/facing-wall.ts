import { type Job, records } from '../project/job.ts'
import type { RoomId, WallId } from '../project/sketch-records.ts'
import { ownRecord } from '../project/surface-check.ts'
import { farPlace, findWall, roomWalls } from '../project/walls.ts'
import { lengthFromUnits } from '../units/length.ts'

interface FacingWall {
  readonly roomId: RoomId
  readonly wallId: WallId
  /** Where the stretch shows on that wall, from its start, in length units. */
  readonly from: number
  readonly to: number
  /** Thickness of the wall between the two finished faces. */
  readonly gap: number
}

/**
 * The wall of another room of the same storey that backs on a stretch of a wall, whole stretch within it; the nearest one, or null where
 * there is nothing or only part of a room behind. A door set on that stretch can join the two rooms.
 */
export function facingWall(
  job: Job,
  roomId: RoomId,
  wallId: WallId,
  from: number,
  to: number,
): FacingWall | null {
  const room = ownRecord(job.rooms, roomId)
  const near = room ? findWall(room, wallId) : null
  if (room === undefined || near === null) return null
  const stretch = {
    offset: lengthFromUnits(from),
    width: lengthFromUnits(to - from),
    sill: lengthFromUnits(0),
    height: lengthFromUnits(0),
  }
  const candidates = records(job.rooms)
    .filter((other) => other.storeyId === room.storeyId && other.id !== roomId)
    .flatMap((other) =>
      roomWalls(other).flatMap((wall): FacingWall[] => {
        const place = farPlace(near, other, wall, stretch)
        if (place === null || place.from < 0 || place.to > Math.round(wall.length)) return []
        const gap = distanceFromLine(near, wall.start)
        return [{ roomId: other.id, wallId: wall.id, from: place.from, to: place.to, gap }]
      }),
    )
  return candidates.reduce<FacingWall | null>(
    (best, one) => (best === null || one.gap < best.gap ? one : best),
    null,
  )
}

type Line = {
  readonly start: { readonly x: number; readonly y: number }
  readonly end: { readonly x: number; readonly y: number }
  readonly length: number
}

function distanceFromLine(line: Line, point: Line['start']): number {
  const dx = line.end.x - line.start.x
  const dy = line.end.y - line.start.y
  return Math.abs(dx * (point.y - line.start.y) - dy * (point.x - line.start.x)) / line.length
}
