import type { CollectionName, Job } from '../project/job.ts'
import type { CansUsed } from '../project/outcome-records.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import type { Opening, Room, RoomId } from '../project/sketch-records.ts'
import { ownRecord, roomHasWall, surfaceExists } from '../project/surface-check.ts'
import type { SurfaceRef } from '../project/surface-ref.ts'
import type { Scope } from '../project/survey-records.ts'
import type { RecordTarget } from './commands.ts'
import { mapRecords, withoutRecords } from './job-edits.ts'
import { turnOpeningsOf } from './turned-openings.ts'

/**
 * Takes records away. What hangs on them goes along (`takeAlong`), except where others rely on them by choice: a colour in use, a
 * storey with rooms, a crew member with marks or pins. Those are refused, because taking them along would lose what somebody decided.
 */
export function removeTargets(job: Job, targets: readonly RecordTarget[]): Outcome<Job> {
  for (const { collection, id } of targets) {
    if (!Object.hasOwn(job[collection], id)) {
      return fail('notFound', 'What was to be removed is no longer in the job.', [id])
    }
  }
  const turned = turnOpeningsOf(job, new Set(idsIn(targets, 'rooms')))
  const next = [...new Set(targets.map((target) => target.collection))].reduce(
    (shrunk, name) => withoutRecords(shrunk, name, new Set(idsIn(targets, name))),
    turned,
  )
  return refuseInUse(next, targets) ?? succeed(next)
}

function idsIn(targets: readonly RecordTarget[], name: CollectionName): readonly string[] {
  return targets.filter((target) => target.collection === name).map((target) => target.id)
}

function refuseInUse(next: Job, targets: readonly RecordTarget[]): Outcome<never> | null {
  for (const { collection, id } of targets) {
    const users = usersOf(next, collection, id)
    if (users.length > 0) {
      const sentence = `It is still used by ${users[0]}${users.length > 1 ? ` and ${users.length - 1} more` : ''}. Change that first.`
      return fail('stillInUse', sentence, [id])
    }
  }
  return null
}

function usersOf(job: Job, collection: CollectionName, id: string): readonly string[] {
  switch (collection) {
    case 'storeys':
      return Object.values(job.rooms).flatMap((room) =>
        room.storeyId === id ? [`the room ${room.name}`] : [],
      )
    case 'colours':
      return [
        ...Object.values(job.finishes).flatMap((finish) => (finish.colourId === id ? ['a finish'] : [])),
        ...cansOf(job, ({ colourId }) => colourId === id),
      ]
    case 'products':
      return cansOf(job, ({ productId }) => productId === id)
    case 'crew':
      return [...Object.values(job.marks), ...Object.values(job.pins)].flatMap((held) =>
        held.crewMemberIds.some((memberId) => memberId === id)
          ? ['what was marked or pinned for this person']
          : [],
      )
    default:
      return []
  }
}

function cansOf(job: Job, counts: (cans: CansUsed) => boolean): readonly string[] {
  return Object.values(job.cansUsed).some(counts) ? ['cans that were used'] : []
}

/** Lets go of everything whose room, wall, opening or part is no longer there. Unchanged jobs come back as they are. */
export function takeAlong(job: Job): Job {
  const sketch = takeAlongSketch(job)
  const room = (roomId: string) => ownRecord(sketch.rooms, roomId) !== undefined
  const surface = (ref: SurfaceRef) => surfaceExists(sketch, ref)
  const kept = mapRecords(sketch, 'keptItems', (item) => {
    if (!room(item.roomId)) return null
    if (item.on.kind === 'wall') return roomHasWall(sketch, item.roomId, item.on.wallId) ? item : null
    if (item.on.kind !== 'opening') return item
    const opening = ownRecord(sketch.openings, item.on.openingId)
    return opening && touches(opening, item.roomId) ? item : null
  })
  const conditions = mapRecords(kept, 'conditions', (condition) => {
    const { on } = condition
    return (on.level === 'room' ? room(on.roomId) : surface(on.surface)) ? condition : null
  })
  const photos = mapRecords(conditions, 'photos', (photo) => {
    const { of } = photo
    const isThere =
      of.kind === 'room' ? room(of.roomId) : ownRecord(conditions.conditions, of.conditionId) !== undefined
    return isThere ? photo : null
  })
  const inScope = (scope: Scope) =>
    scope.level === 'house' || (scope.level === 'room' ? room(scope.roomId) : surface(scope.surface))
  const existing = mapRecords(photos, 'existing', (one) => (inScope(one.scope) ? one : null))
  return mapRecords(existing, 'finishes', (one) => (inScope(one.scope) ? one : null))
}

function takeAlongSketch(job: Job): Job {
  const room = (roomId: RoomId) => ownRecord(job.rooms, roomId) !== undefined
  const rooms = mapRecords(job, 'rooms', (one) =>
    one.workedWith === null || room(one.workedWith) ? one : { ...one, workedWith: null },
  )
  const openings = mapRecords(rooms, 'openings', (opening) => {
    if (!roomHasWall(job, opening.roomId, opening.wallId)) return null
    if (opening.far === null) return opening
    return roomHasWall(job, opening.far.roomId, opening.far.wallId)
      ? opening
      : { ...opening, far: null, casingFar: null }
  })
  const trim = mapRecords(openings, 'trimRuns', (run) => {
    if (!room(run.roomId)) return null
    const walls = run.walls?.filter((wallId) => roomHasWall(job, run.roomId, wallId)) ?? null
    if (walls === null || walls.length === run.walls?.length) return run
    return walls.length === 0 ? null : { ...run, walls }
  })
  const holes = mapRecords(trim, 'ceilingOpenings', (hole) => (room(hole.roomId) ? hole : null))
  return mapRecords(holes, 'builtItems', (item) => (room(item.roomId) ? item : null))
}

function touches(opening: Opening, roomId: Room['id']): boolean {
  return opening.roomId === roomId || opening.far?.roomId === roomId
}
