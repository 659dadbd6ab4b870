import type { Job } from '../project/job.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import type { Storey, StoreyId } from '../project/sketch-records.ts'
import { ownRecord } from '../project/surface-check.ts'
import { withoutRecords, withRecords } from './job-edits.ts'

/** Refuses an id or a level that another floor has. */
export function addStorey(job: Job, storey: Storey): Outcome<Job> {
  if (Object.hasOwn(job.storeys, storey.id)) {
    return fail('duplicateId', `There is already a floor with the id "${storey.id}".`, [storey.id])
  }
  const sameLevel = Object.values(job.storeys).find((other) => other.level === storey.level)
  if (sameLevel) {
    const sentence = `${sameLevel.name} is already at level ${storey.level}. Give ${storey.name} another level.`
    return fail('notAllowed', sentence, [sameLevel.id])
  }
  return succeed(withRecords(job, 'storeys', [storey]))
}

/** Refuses a floor that is no longer there. */
export function renameStorey(
  job: Job,
  { storeyId, name }: { readonly storeyId: StoreyId; readonly name: string },
): Outcome<Job> {
  const storey = ownRecord(job.storeys, storeyId)
  if (!storey) return fail('notFound', 'That floor is no longer in the job.', [storeyId])
  return succeed(withRecords(job, 'storeys', [{ ...storey, name }]))
}

/** Only an empty storey goes, and never the last one: a slip of the hand shall not take a floor of rooms along. */
export function removeStorey(job: Job, storeyId: StoreyId): Outcome<Job> {
  const storey = ownRecord(job.storeys, storeyId)
  if (!storey) return fail('notFound', 'That floor is no longer in the job.', [storeyId])
  const rooms = Object.values(job.rooms).filter((room) => room.storeyId === storeyId)
  if (rooms.length > 0) {
    const names = rooms.map((room) => room.name).join(', ')
    const sentence = `${storey.name} still has rooms (${names}). Delete or move them first.`
    return fail('stillInUse', sentence, [storeyId, ...rooms.map((room) => room.id)])
  }
  if (Object.keys(job.storeys).length === 1) {
    return fail('notAllowed', 'A job needs at least one floor to draw on.', [storeyId])
  }
  return succeed(withoutRecords(job, 'storeys', new Set([storeyId])))
}
