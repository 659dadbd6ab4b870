import { type Job, records } from '../project/job.ts'
import type { OpeningId, RoomId } from '../project/sketch-records.ts'
import type { KeptItem } from '../project/survey-records.ts'
import { wallLetter } from '../project/walls.ts'
import type { RegisterLine } from './room-sheet/sheet-types.ts'
import { openingName } from './surface-words.ts'

/** What stays in the house and is in the way: taken off, loosened, covered or masked, to be ticked off and on again. */
export function roomRegister(
  job: Job,
  roomId: RoomId,
  letters: ReadonlyMap<OpeningId, string>,
): readonly RegisterLine[] {
  return records(job.keptItems)
    .filter((item) => item.roomId === roomId)
    .map((item) => ({
      name: item.note === '' ? item.name : `${item.name} (${item.note})`,
      where: placeOf(job, item, letters),
      count: item.count,
      handling: item.handling,
      wired: item.wired,
    }))
}

function placeOf(job: Job, item: KeptItem, letters: ReadonlyMap<OpeningId, string>): string {
  switch (item.on.kind) {
    case 'ceiling':
      return 'ceiling'
    case 'room':
      return 'room'
    case 'opening':
      return `${openingName(job.openings[item.on.openingId])} ${letters.get(item.on.openingId) ?? ''}`.trim()
    case 'wall': {
      const { wallId } = item.on
      const index = job.rooms[item.roomId]?.corners.findIndex((corner) => corner.wallId === wallId) ?? -1
      return index < 0 ? 'wall' : `wall ${wallLetter(index)}`
    }
  }
}
