import { polygonArea } from '../geometry/polygon.ts'
import { type Job, records } from './job.ts'
import type { Room, RoomId } from './sketch-records.ts'

/** A room and the small rooms worked with it: one sheet, one row of the calendar, one room out of use. */
export interface RoomSet {
  /** Its main room. */
  readonly id: RoomId
  /** The main room first, the others in the order of the file. */
  readonly roomIds: readonly RoomId[]
  readonly name: string
}

/** Every room is in one set. Sets in the order of the file. */
export function roomSetsOf(job: Job): readonly RoomSet[] {
  const rooms = records(job.rooms)
  const main = new Map(rooms.map((room) => [room.id, mainRoomOf(job, room.id)]))
  return rooms
    .filter((room) => main.get(room.id) === room.id)
    .map((room) => ({
      id: room.id,
      roomIds: [
        room.id,
        ...rooms.map(({ id }) => id).filter((id) => id !== room.id && main.get(id) === room.id),
      ],
      name: room.name,
    }))
}

/**
 * The room that a room is worked with; itself where it is worked alone. A closet of a closet goes where that one goes; rooms that are each
 * said to be worked with the next in a ring are worked alone.
 */
export function mainRoomOf(job: Job, roomId: RoomId): RoomId {
  const seen = new Set<RoomId>()
  let here = roomId
  while (!seen.has(here)) {
    seen.add(here)
    const room = job.rooms[here]
    const next = room === undefined ? here : (room.workedWith ?? suggestedMainRoom(job, room) ?? here)
    if (next === here) return here
    here = next
  }
  return roomId
}

/** A closet is worked with the room that all its doors lead to, where that is larger; other rooms alone. */
export function suggestedMainRoom(job: Job, room: Room): RoomId | null {
  if (room.use !== 'closet') return null
  const behind = new Set(
    records(job.openings).flatMap((opening): readonly RoomId[] => {
      if (opening.far === null || (opening.kind !== 'door' && opening.kind !== 'casedOpening')) return []
      if (opening.roomId === room.id) return [opening.far.roomId]
      return opening.far.roomId === room.id ? [opening.roomId] : []
    }),
  )
  const [only, ...others] = [...behind].flatMap((id) => job.rooms[id] ?? [])
  if (only === undefined || others.length > 0 || only.use === 'closet') return null
  return polygonArea(only.corners) > polygonArea(room.corners) ? only.id : null
}
