import { type Job, records } from '../../project/job.ts'
import type { Photo } from '../../project/photo-records.ts'
import type { RoomSet } from '../../project/room-sets.ts'
import type { Condition } from '../../project/survey-records.ts'
import { conditionWords } from '../../specification/trade-words.ts'
import { capital } from '../../words/text.ts'
import type { NumberedCondition } from '../room-plan.ts'
import type { PhotoLine } from './sheet-types.ts'

/** Photos of a room set: of its rooms first, then of what was found by number; of each those from before the work come first. */
export function photoLines(
  job: Job,
  set: RoomSet,
  found: readonly NumberedCondition[],
): readonly PhotoLine[] {
  const ofRooms = set.roomIds.flatMap((roomId) => {
    const subject = job.rooms[roomId]?.name ?? roomId
    return inOrder(job, ({ of }) => of.kind === 'room' && of.roomId === roomId).map((photo) =>
      lineOf(photo, subject, null),
    )
  })
  const ofFindings = found.flatMap(({ condition, number }) =>
    photosOfFinding(job, condition).map((photo) =>
      lineOf(photo, capital(conditionWords[condition.kind]), number),
    ),
  )
  return [...ofRooms, ...ofFindings]
}

function photosOfFinding(job: Job, { id }: Condition): readonly Photo[] {
  return inOrder(job, ({ of }) => of.kind === 'finding' && of.conditionId === id)
}

/** What a line of repairs says of photos: how many stand behind, and the name of one kept elsewhere. */
export function photoWords(job: Job, condition: Condition): string {
  const { length } = photosOfFinding(job, condition)
  return [
    ...(condition.photo === null ? [] : [`photo ${condition.photo}`]),
    ...(length === 0 ? [] : [length === 1 ? 'photo behind' : `${length} photos behind`]),
  ].join(', ')
}

function inOrder(job: Job, isMeant: (photo: Photo) => boolean): readonly Photo[] {
  const photos = records(job.photos).filter(isMeant)
  return [
    ...photos.filter(({ stage }) => stage === 'before'),
    ...photos.filter(({ stage }) => stage === 'after'),
  ]
}

function lineOf({ small, stage, note }: Photo, subject: string, number: number | null): PhotoLine {
  return { picture: small, number, subject, stage, note }
}
