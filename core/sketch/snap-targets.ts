import { type Job, records } from '../project/job.ts'
import type { StoreyId } from '../project/sketch-records.ts'
import { roomWalls } from '../project/walls.ts'
import type { SnapTargets } from './snapping.ts'

/** Corners and walls of a storey to catch on, without the rooms that are being moved themselves. */
export function snapTargets(job: Job, storeyId: StoreyId, without: readonly string[] = []): SnapTargets {
  const rooms = records(job.rooms).filter((room) => room.storeyId === storeyId && !without.includes(room.id))
  return {
    points: rooms.flatMap((room) => room.corners.map(({ x, y }) => ({ x, y }))),
    walls: rooms.flatMap((room) => roomWalls(room).map(({ start, end }) => ({ start, end }))),
  }
}
