import type { Job } from '../project/job.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import type { Opening, OpeningId } from '../project/sketch-records.ts'
import type { SketchCommand } from './commands.ts'
import { findOpening, withRecords } from './job-edits.ts'
import { partedOpening } from './turned-openings.ts'

type Command<Kind extends SketchCommand['kind']> = Extract<SketchCommand, { kind: Kind }>

/** Refuses an id that is taken; whether it fits into its wall is judged with the whole job. */
export function addOpening(job: Job, opening: Opening): Outcome<Job> {
  if (Object.hasOwn(job.openings, opening.id)) {
    return fail('duplicateId', `There is already an opening with the id "${opening.id}".`, [opening.id])
  }
  return succeed(withRecords(job, 'openings', [opening]))
}

/** Changes fields of an opening. */
export function setOpening(
  job: Job,
  openingId: OpeningId,
  change: Partial<Omit<Opening, 'id'>>,
): Outcome<Job> {
  const opening = findOpening(job, openingId)
  if (!opening.ok) return opening
  return succeed(withRecords(job, 'openings', [{ ...opening.value, ...change }]))
}

/**
 * Moves an opening along its wall, or to another wall of its room; one that joins two rooms has to be parted before it leaves
 * its wall.
 */
export function moveOpening(job: Job, { openingId, offset, wallId }: Command<'moveOpening'>): Outcome<Job> {
  const opening = findOpening(job, openingId)
  if (!opening.ok) return opening
  const leaves = wallId !== undefined && wallId !== opening.value.wallId
  if (leaves && opening.value.far !== null) {
    const sentence = 'This opening joins two rooms. Unlink them before it goes to another wall.'
    return fail('notAllowed', sentence, [openingId])
  }
  return setOpening(job, openingId, { offset, ...(wallId === undefined ? {} : { wallId }) })
}

/** Makes an opening lead to a second room, or ends that where `far` is null. */
export function joinOpening(job: Job, { openingId, far, casingFar }: Command<'joinOpening'>): Outcome<Job> {
  const opening = findOpening(job, openingId)
  if (!opening.ok) return opening
  if (far?.roomId === opening.value.roomId) {
    return fail('notAllowed', 'An opening cannot join a room to itself.', [openingId, far.roomId])
  }
  return setOpening(job, openingId, { far, casingFar: far === null ? null : casingFar })
}

export function partOpening(job: Job, { openingId, newId }: Command<'partOpening'>): Outcome<Job> {
  const opening = findOpening(job, openingId)
  if (!opening.ok) return opening
  if (Object.hasOwn(job.openings, newId)) {
    return fail('duplicateId', `There is already an opening with the id "${newId}".`, [newId])
  }
  return succeed(partedOpening(job, opening.value, newId))
}
