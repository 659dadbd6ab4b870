import { type CollectionName, type Job, placeInTable } from './job.ts'
import { type Problem, problem } from './problem.ts'
import type { RoomId, WallId } from './sketch-records.ts'
import { ownRecord, roomHasWall, surfaceExists } from './surface-check.ts'
import { surfaceKey } from './surface-ref.ts'
import type { Scope } from './survey-records.ts'

/** One record pointing at something else of the job; `holds` says whether that something is there. */
interface Reference {
  readonly from: CollectionName
  readonly id: string
  readonly field: string
  readonly holds: boolean
  /** What it points at, for the sentence: `the storey "attic"`. */
  readonly target: string
}

/** A problem for every reference that points at nothing, with its place in the file (`openings[3].far.roomId`). */
export function referenceProblems(job: Job): readonly Problem[] {
  const dangling = [
    ...sketchReferences(job),
    ...surveyReferences(job),
    ...siteReferences(job),
    ...dealingReferences(job),
    ...outcomeReferences(job),
  ].filter((reference) => !reference.holds)
  return [...repeatedWalls(job), ...dangling.map((reference) => danglingProblem(job, reference))]
}

function danglingProblem(job: Job, { from, id, field, target }: Reference): Problem {
  const place = `${from}[${placeInTable(job[from], id)}].${field}`
  return problem('danglingReference', `At ${place} ("${id}"): ${target} is not in this job.`, [id], place)
}

function* sketchReferences(job: Job): Iterable<Reference> {
  for (const room of Object.values(job.rooms)) {
    yield toRecord(job, 'rooms', room.id, 'storeyId', 'storeys', room.storeyId, 'the floor')
    if (room.workedWith !== null) yield toRoom(job, 'rooms', room.id, room.workedWith, 'workedWith')
  }
  for (const opening of Object.values(job.openings)) {
    yield* toWall(job, 'openings', opening.id, '', opening.roomId, opening.wallId)
    if (opening.far)
      yield* toWall(job, 'openings', opening.id, 'far.', opening.far.roomId, opening.far.wallId)
  }
  for (const run of Object.values(job.trimRuns)) {
    yield toRoom(job, 'trimRuns', run.id, run.roomId)
    for (const [index, wallId] of (run.walls ?? []).entries()) {
      yield toWallOnly(job, 'trimRuns', run.id, `walls[${index}]`, run.roomId, wallId)
    }
  }
  for (const hole of Object.values(job.ceilingOpenings))
    yield toRoom(job, 'ceilingOpenings', hole.id, hole.roomId)
  for (const item of Object.values(job.builtItems)) yield toRoom(job, 'builtItems', item.id, item.roomId)
}

function* surveyReferences(job: Job): Iterable<Reference> {
  for (const item of Object.values(job.keptItems)) {
    yield toRoom(job, 'keptItems', item.id, item.roomId)
    if (item.on.kind === 'wall') {
      yield toWallOnly(job, 'keptItems', item.id, 'on.wallId', item.roomId, item.on.wallId)
    }
    if (item.on.kind === 'opening') {
      const opening = ownRecord(job.openings, item.on.openingId)
      const holds = opening !== undefined && [opening.roomId, opening.far?.roomId].includes(item.roomId)
      const target = `the opening "${item.on.openingId}" of room "${item.roomId}"`
      yield { from: 'keptItems', id: item.id, field: 'on.openingId', holds, target }
    }
  }
  for (const existing of Object.values(job.existing))
    yield* inScope(job, 'existing', existing.id, existing.scope)
  for (const finish of Object.values(job.finishes)) {
    yield* inScope(job, 'finishes', finish.id, finish.scope)
    if (finish.colourId !== null) {
      yield toRecord(job, 'finishes', finish.id, 'colourId', 'colours', finish.colourId, 'the color')
    }
  }
  for (const { id, on } of Object.values(job.conditions)) {
    if (on.level === 'room') yield toRoom(job, 'conditions', id, on.roomId, 'on.roomId')
    else yield toSurface(job, 'conditions', id, 'on.surface', on.surface)
  }
  for (const { id, of } of Object.values(job.photos)) {
    if (of.kind === 'room') yield toRoom(job, 'photos', id, of.roomId, 'of.roomId')
    else yield toRecord(job, 'photos', id, 'of.conditionId', 'conditions', of.conditionId, 'the finding')
  }
}

function* siteReferences(job: Job): Iterable<Reference> {
  for (const from of ['pins', 'marks'] as const) {
    for (const { id, crewMemberIds } of Object.values(job[from])) {
      for (const [index, memberId] of crewMemberIds.entries()) {
        yield toRecord(job, from, id, `crewMemberIds[${index}]`, 'crew', memberId, 'the crew member')
      }
    }
  }
}

/** Dealings answer one another; what they say of the sketch is of its day and may be gone. */
function* dealingReferences(job: Job): Iterable<Reference> {
  const to = (id: string, field: string, target: string, word: string) =>
    toRecord(job, 'dealings', id, field, 'dealings', target, word)
  for (const dealing of Object.values(job.dealings)) {
    const { id } = dealing
    if (dealing.kind === 'accepted') yield to(id, 'quoteId', dealing.quoteId, 'the quote')
    if (dealing.kind === 'changeAnswered') yield to(id, 'changeId', dealing.changeId, 'the change order')
    if (dealing.kind !== 'invoiced') continue
    if (dealing.credits !== null) yield to(id, 'credits', dealing.credits, 'the invoice')
    for (const [index, { changeId }] of dealing.lines.entries()) {
      if (changeId !== null) yield to(id, `lines[${index}].changeId`, changeId, 'the change order')
    }
  }
}

function* outcomeReferences(job: Job): Iterable<Reference> {
  for (const { id, productId, colourId } of Object.values(job.cansUsed)) {
    yield toRecord(job, 'cansUsed', id, 'productId', 'products', productId, 'the product')
    if (colourId !== null) yield toRecord(job, 'cansUsed', id, 'colourId', 'colours', colourId, 'the color')
  }
}

function* inScope(job: Job, from: CollectionName, id: string, scope: Scope): Iterable<Reference> {
  if (scope.level === 'room') yield toRoom(job, from, id, scope.roomId, 'scope.roomId')
  if (scope.level === 'surface') yield toSurface(job, from, id, 'scope.surface', scope.surface)
}

function toRecord(
  job: Job,
  from: CollectionName,
  id: string,
  field: string,
  to: CollectionName,
  targetId: string,
  word: string,
): Reference {
  return { from, id, field, holds: Object.hasOwn(job[to], targetId), target: `${word} "${targetId}"` }
}

function toRoom(job: Job, from: CollectionName, id: string, roomId: RoomId, field = 'roomId'): Reference {
  return toRecord(job, from, id, field, 'rooms', roomId, 'the room')
}

function* toWall(
  job: Job,
  from: CollectionName,
  id: string,
  prefix: string,
  roomId: RoomId,
  wallId: WallId,
): Iterable<Reference> {
  yield toRoom(job, from, id, roomId, `${prefix}roomId`)
  if (Object.hasOwn(job.rooms, roomId)) yield toWallOnly(job, from, id, `${prefix}wallId`, roomId, wallId)
}

function toWallOnly(
  job: Job,
  from: CollectionName,
  id: string,
  field: string,
  roomId: RoomId,
  wallId: WallId,
): Reference {
  const target = `the wall "${wallId}" of room "${roomId}"`
  return { from, id, field, holds: roomHasWall(job, roomId, wallId), target }
}

function toSurface(
  job: Job,
  from: CollectionName,
  id: string,
  field: string,
  surface: Parameters<typeof surfaceKey>[0],
): Reference {
  const target = `the surface "${surfaceKey(surface)}"`
  return { from, id, field, holds: surfaceExists(job, surface), target }
}

/** Two walls of one room with the same id: a surface could not be told from the other. */
function repeatedWalls(job: Job): readonly Problem[] {
  return Object.values(job.rooms).flatMap((room, roomIndex) => {
    const seen = new Set<string>()
    return room.corners.flatMap((corner, index) => {
      if (!seen.has(corner.wallId)) {
        seen.add(corner.wallId)
        return []
      }
      const place = `rooms[${roomIndex}].corners[${index}].wallId`
      const sentence = `At ${place}: room "${room.name}" has a second wall with the id "${corner.wallId}".`
      return [problem('duplicateId', sentence, [room.id, corner.wallId], place)]
    })
  })
}
