import type { Job } from '../project/job.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import type { Opening, RoomId } from '../project/sketch-records.ts'
import { roomIdSchema } from '../project/sketch-records.ts'
import type { SurfaceRef } from '../project/surface-ref.ts'
import type { Scope } from '../project/survey-records.ts'
import type { SketchCommand } from './commands.ts'
import { findRoom, withRecords } from './job-edits.ts'
import { shiftPoint, shiftRoom } from './room-edits.ts'

type DuplicateRooms = Extract<SketchCommand, { kind: 'duplicateRooms' }>
type Choice = { readonly id: string; readonly scope: Scope }

/** Ids of everything that is copied along with these rooms: `duplicateRooms` needs a new one for each. Walls keep theirs. */
export function recordsOfRooms(job: Job, roomIds: readonly RoomId[]): readonly string[] {
  const copied = collect(job, new Set(roomIds))
  return Object.values(copied).flatMap((records) => records.map((record) => record.id))
}

function collect(job: Job, rooms: ReadonlySet<string>) {
  const inRooms = <Item extends { readonly roomId: string }>(table: Readonly<Record<string, Item>>) =>
    Object.values(table).filter((item) => rooms.has(item.roomId))
  const openings = inRooms(job.openings)
  const openingIds = new Set<string>(openings.map((opening) => opening.id))
  const chosen = <Item extends Choice>(table: Readonly<Record<string, Item>>) =>
    Object.values(table).filter(({ scope }) => scopeInside(scope, rooms, openingIds))
  return {
    rooms: Object.values(job.rooms).filter((room) => rooms.has(room.id)),
    openings,
    ceilingOpenings: inRooms(job.ceilingOpenings),
    trimRuns: inRooms(job.trimRuns),
    builtItems: inRooms(job.builtItems),
    existing: chosen(job.existing),
    finishes: chosen(job.finishes),
  }
}

function scopeInside(scope: Scope, rooms: ReadonlySet<string>, openings: ReadonlySet<string>): boolean {
  if (scope.level === 'house') return false
  if (scope.level === 'room') return rooms.has(scope.roomId)
  const { surface } = scope
  return surface.kind === 'opening' ? openings.has(surface.openingId) : rooms.has(surface.roomId)
}

/** Copies rooms with all that is in them. The new ids come with the command, one for each record. */
export function duplicateRooms(job: Job, command: DuplicateRooms): Outcome<Job> {
  for (const roomId of command.roomIds) {
    const room = findRoom(job, roomId)
    if (!room.ok) return room
  }
  const wrong = checkNewIds(job, command)
  if (wrong) return wrong
  const { dx, dy, newIds } = command
  const copied = collect(job, new Set(command.roomIds))
  const renamed = <Id extends string>(id: Id) => (newIds[id] ?? id) as Id
  const fresh = <Item extends { readonly id: string; readonly roomId: RoomId }>(item: Item): Item => ({
    ...item,
    id: renamed(item.id),
    roomId: renamed(item.roomId),
  })
  const choose = <Item extends Choice>(choice: Item): Item => ({
    ...choice,
    id: renamed(choice.id),
    scope: renamedScope(choice.scope, renamed),
  })
  const rooms = copied.rooms.map((room) => ({
    ...shiftRoom(room, dx, dy),
    id: renamed(room.id),
    storeyId: command.storeyId ?? room.storeyId,
    name: command.names[room.id] ?? room.name,
    workedWith: copyOfMain(room.workedWith, newIds),
    backBy: null,
    lookedAt: [],
  }))
  const openings = copied.openings.map((opening) => copyFarSide(fresh(opening), newIds))
  let next = withRecords(job, 'rooms', rooms)
  next = withRecords(next, 'openings', openings)
  next = withRecords(
    next,
    'ceilingOpenings',
    copied.ceilingOpenings.map((hole) => shiftPoint(fresh(hole), dx, dy)),
  )
  next = withRecords(next, 'trimRuns', copied.trimRuns.map(fresh))
  next = withRecords(next, 'builtItems', copied.builtItems.map(fresh))
  next = withRecords(next, 'existing', copied.existing.map(choose))
  return succeed(withRecords(next, 'finishes', copied.finishes.map(choose)))
}

function checkNewIds(job: Job, command: DuplicateRooms): Outcome<never> | null {
  const needed = recordsOfRooms(job, command.roomIds)
  const given = needed.map((id) => command.newIds[id])
  const used = new Set(
    Object.values(collect(job, new Set(Object.keys(job.rooms))))
      .flat()
      .map(({ id }): string => id),
  )
  const missing = needed.find((_, index) => given[index] === undefined)
  if (missing !== undefined) return fail('notFound', 'A copy needs a new id for everything in it.', [missing])
  const taken = given.find((id, index) => id !== undefined && (used.has(id) || given.indexOf(id) !== index))
  return taken === undefined ? null : fail('duplicateId', `The id "${taken}" is already used.`, [taken])
}

/** Worked with the copy of its room when that is copied too, else as use and doors suggest. */
function copyOfMain(workedWith: RoomId | null, newIds: DuplicateRooms['newIds']): RoomId | null {
  const id = workedWith && newIds[workedWith]
  return id ? roomIdSchema.parse(id) : null
}

/** Joined to the copy of the far room when that is copied too, else to nothing. */
function copyFarSide(opening: Opening, newIds: DuplicateRooms['newIds']): Opening {
  const farRoomId = opening.far && newIds[opening.far.roomId]
  if (opening.far && farRoomId)
    return { ...opening, far: { ...opening.far, roomId: roomIdSchema.parse(farRoomId) } }
  return { ...opening, far: null, casingFar: null }
}

function renamedScope(scope: Scope, renamed: <Id extends string>(id: Id) => Id): Scope {
  if (scope.level === 'house') return scope
  if (scope.level === 'room') return { ...scope, roomId: renamed(scope.roomId) }
  return { level: 'surface', surface: renamedSurface(scope.surface, renamed) }
}

function renamedSurface(ref: SurfaceRef, renamed: <Id extends string>(id: Id) => Id): SurfaceRef {
  switch (ref.kind) {
    case 'opening':
      return { ...ref, openingId: renamed(ref.openingId) }
    case 'trim':
      return { ...ref, roomId: renamed(ref.roomId), trimRunId: renamed(ref.trimRunId) }
    case 'built':
      return { ...ref, roomId: renamed(ref.roomId), builtItemId: renamed(ref.builtItemId) }
    default:
      return { ...ref, roomId: renamed(ref.roomId) }
  }
}
