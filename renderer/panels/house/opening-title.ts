import type { Job } from '../../../core/project/job.ts'
import type { Opening } from '../../../core/project/sketch-records.ts'
import { openingNouns } from '../../../core/project/sketch-words.ts'
import { wallLetter } from '../../../core/project/walls.ts'
import { capital } from '../../../core/words/text.ts'

/** Its name, or what it is and the wall of this room it stands in: `Window, wall A`. */
export function openingTitle(job: Job, opening: Opening, roomId: string): string {
  if (opening.name !== '') return opening.name
  const wallId = opening.roomId === roomId ? opening.wallId : opening.far?.wallId
  const index = job.rooms[roomId]?.corners.findIndex((corner) => corner.wallId === wallId) ?? -1
  const noun = capital(openingNouns[opening.kind])
  return index < 0 ? noun : `${noun}, wall ${wallLetter(index)}`
}
