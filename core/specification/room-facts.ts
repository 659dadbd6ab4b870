import { groupedByEach } from '../lists/lists.ts'
import type { BuiltItem } from '../project/built-records.ts'
import { type Job, records } from '../project/job.ts'
import { roomOfSurface } from '../project/scopes.ts'
import type { Opening, Room, RoomId, TrimRun } from '../project/sketch-records.ts'
import type { Condition, KeptItem } from '../project/survey-records.ts'
import type { SurfaceQuantity, Takeoff } from '../quantities/takeoff-types.ts'
import { orderOfRoom } from './room-order.ts'

/** What a job knows of one room, gathered once for all rooms. */
export interface RoomFacts {
  readonly room: Room
  readonly surfaces: readonly SurfaceQuantity[]
  readonly conditions: readonly Condition[]
  readonly keptItems: readonly KeptItem[]
  /** What the class of a surface, its sash and the profile of the trim are read from. */
  readonly openings: readonly Opening[]
  readonly trimRuns: readonly TrimRun[]
  readonly builtItems: readonly BuiltItem[]
  /** Its own, the house's, or that of the room it is worked with. */
  readonly order: ReturnType<typeof orderOfRoom>
}

/** Whether nothing of one room has changed from one state of the job to the next. */
export function sameFacts(before: RoomFacts, after: RoomFacts): boolean {
  return (
    before.room === after.room &&
    before.order === after.order &&
    sameItems(before.surfaces, after.surfaces) &&
    sameItems(before.conditions, after.conditions) &&
    sameItems(before.keptItems, after.keptItems) &&
    sameItems(before.openings, after.openings) &&
    sameItems(before.trimRuns, after.trimRuns) &&
    sameItems(before.builtItems, after.builtItems)
  )
}

function sameItems<Item>(before: readonly Item[], after: readonly Item[]): boolean {
  return before.length === after.length && before.every((item, index) => item === after[index])
}

/** Rooms in the file's order, ways out last: the only way out of other rooms is painted after them. */
export function factsOfRooms(job: Job, takeoff: Takeoff): readonly RoomFacts[] {
  const surfaces = byRoom(takeoff.surfaces, (quantity) => quantity.roomId)
  const conditions = byRoom(records(job.conditions), ({ on }) =>
    on.level === 'room' ? on.roomId : roomOfSurface(job, on.surface),
  )
  const keptItems = byRoom(records(job.keptItems), (item) => item.roomId)
  const openings = byRoom(
    records(job.openings).flatMap((opening) => sidesOf(opening)),
    (side) => side.roomId,
  )
  const trimRuns = byRoom(records(job.trimRuns), (run) => run.roomId)
  const builtItems = byRoom(records(job.builtItems), (item) => item.roomId)
  const rooms = records(job.rooms)
  return [...rooms.filter((room) => !room.wayOut), ...rooms.filter((room) => room.wayOut)].map((room) => ({
    room,
    surfaces: surfaces.get(room.id) ?? [],
    conditions: conditions.get(room.id) ?? [],
    keptItems: keptItems.get(room.id) ?? [],
    openings: (openings.get(room.id) ?? []).map((side) => side.opening),
    trimRuns: trimRuns.get(room.id) ?? [],
    builtItems: builtItems.get(room.id) ?? [],
    order: orderOfRoom(job, room),
  }))
}

interface OpeningSide {
  readonly opening: Opening
  readonly roomId: RoomId
}

function sidesOf(opening: Opening): readonly OpeningSide[] {
  const near = { opening, roomId: opening.roomId }
  return opening.far === null || opening.far.roomId === opening.roomId
    ? [near]
    : [near, { opening, roomId: opening.far.roomId }]
}

function byRoom<Item>(
  items: readonly Item[],
  roomOf: (item: Item) => RoomId | null,
): ReadonlyMap<RoomId, readonly Item[]> {
  return groupedByEach(items, (item) => {
    const roomId = roomOf(item)
    return roomId === null ? [] : [roomId]
  })
}
