import type { Job } from '../project/job.ts'
import { mainRoomOf } from '../project/room-sets.ts'
import type { Room } from '../project/sketch-records.ts'
import type { RoomOrder } from '../project/vocabulary.ts'

/**
 * The room's own order, else the house's; by profile it is trim first with a crown or any profiled trim or casing. A closet follows the
 * order of the room it is worked with.
 */
export function orderOfRoom(job: Job, closet: Room): Exclude<RoomOrder, 'byProfile'> {
  const room = job.rooms[mainRoomOf(job, closet.id)] ?? closet
  const chosen = room.order === 'houseRule' ? job.houseRules.roomOrder : room.order
  if (chosen !== 'byProfile') return chosen
  return hasProfiledTrim(job, room) ? 'trimFirst' : 'ceilingFirst'
}

function hasProfiledTrim(job: Job, room: Room): boolean {
  const runs = Object.values(job.trimRuns).some(
    (run) => run.roomId === room.id && (run.kind === 'crown' || run.profiled),
  )
  return (
    runs ||
    Object.values(job.openings).some(
      (opening) =>
        (opening.roomId === room.id && opening.casingNear?.profiled === true) ||
        (opening.far?.roomId === room.id && opening.casingFar?.profiled === true),
    )
  )
}
