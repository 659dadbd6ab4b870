import type { Job } from '../../../core/project/job.ts'
import { openingNameIn } from '../../../core/project/opening-letters.ts'
import type { Opening, RoomId } from '../../../core/project/sketch-records.ts'
import { wallLetter } from '../../../core/project/walls.ts'
import { capital } from '../../../core/words/text.ts'

/** Its name, or what it is and the wall of this room it stands in: `Window, wall A`. Where its letter stands beside it, `called` leaves that out. */
export function openingTitle(
  job: Job,
  opening: Opening,
  roomId: RoomId,
  called: (job: Job, opening: Opening, roomId: RoomId) => string = openingNameIn,
): string {
  const name = called(job, opening, roomId)
  if (opening.name !== '') return name
  const wallId = opening.roomId === roomId ? opening.wallId : opening.far?.wallId
  const index = job.rooms[roomId]?.corners.findIndex((corner) => corner.wallId === wallId) ?? -1
  return index < 0 ? capital(name) : `${capital(name)}, wall ${wallLetter(index)}`
}
