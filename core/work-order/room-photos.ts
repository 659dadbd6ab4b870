import { type Job, records } from '../project/job.ts'
import type { Photo } from '../project/photo-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { roomOfCondition } from './surface-words.ts'

/** The room a photo shows: its own, or the one its finding is in. */
function roomOfPhoto(job: Job, { of }: Photo): RoomId | null {
  if (of.kind === 'room') return of.roomId
  const condition = job.conditions[of.conditionId]
  return condition === undefined ? null : roomOfCondition(job, condition)
}

/** How many photos each room has, those of its findings among them. */
export function photoCounts(job: Job): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const photo of records(job.photos)) {
    const roomId = roomOfPhoto(job, photo)
    if (roomId !== null) counts.set(roomId, (counts.get(roomId) ?? 0) + 1)
  }
  return counts
}
