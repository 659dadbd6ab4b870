import { type Job, records } from '../project/job.ts'
import { roomOfSurface } from '../project/scopes.ts'
import type { Room, RoomId } from '../project/sketch-records.ts'
import type { Condition, KeptItem } from '../project/survey-records.ts'
import type { SurfaceQuantity, Takeoff } from '../quantities/takeoff-types.ts'

/** What a job knows of one room, gathered once for all rooms. */
export interface RoomFacts {
  readonly room: Room
  readonly surfaces: readonly SurfaceQuantity[]
  readonly conditions: readonly Condition[]
  readonly keptItems: readonly KeptItem[]
}

/** Rooms in the file's order, ways out last: the only way out of other rooms is painted after them. */
export function factsOfRooms(job: Job, takeoff: Takeoff): readonly RoomFacts[] {
  const surfaces = byRoom(takeoff.surfaces, (quantity) => quantity.roomId)
  const conditions = byRoom(records(job.conditions), ({ on }) =>
    on.level === 'room' ? on.roomId : roomOfSurface(job, on.surface),
  )
  const keptItems = byRoom(records(job.keptItems), (item) => item.roomId)
  const rooms = records(job.rooms)
  return [...rooms.filter((room) => !room.wayOut), ...rooms.filter((room) => room.wayOut)].map((room) => ({
    room,
    surfaces: surfaces.get(room.id) ?? [],
    conditions: conditions.get(room.id) ?? [],
    keptItems: keptItems.get(room.id) ?? [],
  }))
}

function byRoom<Item>(
  items: readonly Item[],
  roomOf: (item: Item) => RoomId | null,
): ReadonlyMap<RoomId, readonly Item[]> {
  const found = new Map<RoomId, Item[]>()
  for (const item of items) {
    const roomId = roomOf(item)
    if (roomId === null) continue
    const list = found.get(roomId)
    if (list === undefined) found.set(roomId, [item])
    else list.push(item)
  }
  return found
}
