import { present } from '../lists/lists.ts'
import { type Job, records } from '../project/job.ts'
import { allRoomParts, roomParts } from '../project/room-parts.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { takeOffRules } from './room-survey.ts'
import { roomTakeOff } from './room-take-off.ts'
import { SurfaceIndex } from './surface-index.ts'
import type { SurfaceQuantity, Takeoff } from './takeoff-types.ts'
import { touchedRooms } from './touched-rooms.ts'

/** The quantities of a whole job. The sketch must have no problems; one that has is measured as far as it can be, never below nothing. */
export function takeOff(job: Job): Takeoff {
  return createTakeOff()(job)
}

/**
 * A takeoff that remembers the last job: an edit measures again only the rooms it touches. Rooms not touched keep their figures, the very
 * same objects; where no room is touched the whole takeoff is the same.
 */
export function createTakeOff(): (job: Job) => Takeoff {
  let last: { readonly job: Job; readonly rooms: MeasuredRooms; readonly takeoff: Takeoff } | null = null
  return (job) => {
    if (last?.job === job) return last.takeoff
    const touched = last === null ? 'all' : touchedRooms(last.job, job)
    if (last !== null && touched !== 'all' && touched.size === 0 && isDrawnAlike(last.job, job)) {
      last = { ...last, job }
      return last.takeoff
    }
    const rooms =
      last === null || touched === 'all' ? measureAll(job) : measureAgain(job, last.rooms, touched)
    const takeoff = assemble(job, rooms)
    last = { job, rooms, takeoff }
    return takeoff
  }
}

/** The order of the rooms, and by which opening a surface is found. */
function isDrawnAlike(before: Job, after: Job): boolean {
  return before.rooms === after.rooms && before.openings === after.openings
}

type MeasuredRooms = ReadonlyMap<RoomId, readonly SurfaceQuantity[]>

function measureAll(job: Job): MeasuredRooms {
  const rules = takeOffRules(job)
  return new Map(allRoomParts(job).map((parts) => [parts.room.id, roomTakeOff(parts, rules)]))
}

function measureAgain(job: Job, before: MeasuredRooms, touched: ReadonlySet<RoomId>): MeasuredRooms {
  const rules = takeOffRules(job)
  const rooms = new Map<RoomId, readonly SurfaceQuantity[]>()
  for (const { id: roomId } of records(job.rooms)) {
    const known = touched.has(roomId) ? undefined : before.get(roomId)
    rooms.set(roomId, known ?? roomTakeOff(present(roomParts(job, roomId)), rules))
  }
  return rooms
}

function assemble(job: Job, rooms: MeasuredRooms): Takeoff {
  const none: readonly SurfaceQuantity[] = []
  return { surfaces: none.concat(...rooms.values()), byKey: new SurfaceIndex(rooms, job.openings) }
}
