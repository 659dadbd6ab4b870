import { present } from '../lists/lists.ts'
import type { CollectionName, Job, RecordOf } from '../project/job.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import type { Corner, Opening, OpeningId, Room, RoomId, WallId } from '../project/sketch-records.ts'
import { ownRecord } from '../project/surface-check.ts'

/** The job with records added or put in the place of those with their ids. */
export function withRecords<Name extends CollectionName>(
  job: Job,
  name: Name,
  items: readonly RecordOf<Name>[],
): Job {
  if (items.length === 0) return job
  const added = Object.fromEntries(items.map((item) => [item.id, item]))
  return { ...job, [name]: { ...job[name], ...added } }
}

/** The job without some records of one collection; nothing else is looked at. */
export function withoutRecords(job: Job, name: CollectionName, ids: ReadonlySet<string>): Job {
  const kept = Object.entries(job[name]).filter(([id]) => !ids.has(id))
  if (kept.length === Object.keys(job[name]).length) return job
  return { ...job, [name]: Object.fromEntries(kept) }
}

/** Changes the records of one collection one by one; those given back unchanged keep their identity, `null` takes one away. */
export function mapRecords<Name extends CollectionName>(
  job: Job,
  name: Name,
  change: (item: RecordOf<Name>) => RecordOf<Name> | null,
): Job {
  const before = Object.values(job[name]) as RecordOf<Name>[]
  const after = before.map(change)
  if (after.every((item, index) => item === before[index])) return job
  const kept = after.filter((item): item is NonNullable<typeof item> => item !== null)
  return { ...job, [name]: Object.fromEntries(kept.map((item) => [item.id, item])) }
}

/** The room, or the problem that it was taken away meanwhile. */
export function findRoom(job: Job, roomId: RoomId): Outcome<Room> {
  const room = ownRecord(job.rooms, roomId)
  return room ? succeed(room) : fail('notFound', 'That room is no longer in the sketch.', [roomId])
}

/** The opening, or the problem that it was taken away meanwhile. */
export function findOpening(job: Job, openingId: OpeningId): Outcome<Opening> {
  const opening = ownRecord(job.openings, openingId)
  return opening
    ? succeed(opening)
    : fail('notFound', 'That opening is no longer in the sketch.', [openingId])
}

/** The place in the outline of the corner a wall starts at. */
export function findCorner(room: Room, wallId: WallId): Outcome<number> {
  const index = room.corners.findIndex((corner) => corner.wallId === wallId)
  if (index >= 0) return succeed(index)
  return fail('notFound', `That wall is no longer in ${room.name}.`, [room.id, wallId])
}

/** Corner by place in the outline, counted round and round. */
export function cornerAt(corners: readonly Corner[], index: number): Corner {
  return present(corners[(index + corners.length) % corners.length])
}
