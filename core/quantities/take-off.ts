import type { Job } from '../project/job.ts'
import { allRoomParts } from '../project/room-parts.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { finishMarks, floorMark } from './finish-marks.ts'
import {
  type ReachingFinishes,
  type RoomInputs,
  reachingFinishes,
  roomInputs,
  sameInputs,
} from './room-inputs.ts'
import type { TakeOffRules } from './room-survey.ts'
import { roomTakeOff } from './room-take-off.ts'
import type { SurfaceQuantity, Takeoff } from './takeoff-types.ts'

/** The quantities of a whole job. The sketch must have no problems; one that has is measured as far as it can be, never below nothing. */
export function takeOff(job: Job): Takeoff {
  return createTakeOff()(job)
}

interface MeasuredRoom {
  readonly inputs: RoomInputs
  readonly surfaces: readonly SurfaceQuantity[]
}

/**
 * A takeoff that remembers: rooms whose records are the same as the time before keep their figures, and an edit measures again only the
 * rooms it touches. Keeps the last job only.
 */
export function createTakeOff(): (job: Job) => Takeoff {
  let measured: ReadonlyMap<RoomId, MeasuredRoom> = new Map()
  let last: { readonly job: Job; readonly takeoff: Takeoff; readonly finishes: ReachingFinishes } | null =
    null
  return (job) => {
    if (last?.job === job) return last.takeoff
    const finishes =
      last?.job.finishes === job.finishes && last.job.openings === job.openings
        ? last.finishes
        : reachingFinishes(job)
    const rooms = measureRooms(job, finishes, measured)
    const takeoff = assemble(rooms, last?.takeoff ?? null)
    measured = rooms
    last = { job, takeoff, finishes }
    return takeoff
  }
}

function measureRooms(
  job: Job,
  finishes: ReachingFinishes,
  before: ReadonlyMap<RoomId, MeasuredRoom>,
): ReadonlyMap<RoomId, MeasuredRoom> {
  const rules = rulesOf(job)
  const rooms = new Map<RoomId, MeasuredRoom>()
  for (const parts of allRoomParts(job)) {
    const inputs = roomInputs(job, parts, finishes)
    const known = before.get(parts.room.id)
    const kept = sameInputs(known?.inputs, inputs) ? known : undefined
    rooms.set(parts.room.id, kept ?? { inputs, surfaces: roomTakeOff(parts, rules) })
  }
  return rooms
}

function rulesOf(job: Job): TakeOffRules {
  return {
    system: job.header.unitSystem,
    openingPolicy: job.houseRules.openingPolicy,
    girthPolicy: job.houseRules.girthPolicy,
    markOf: finishMarks(job.finishes),
    floorMarkOf: (roomId) => floorMark(job.finishes, roomId),
  }
}

function assemble(rooms: ReadonlyMap<RoomId, MeasuredRoom>, _before: Takeoff | null): Takeoff {
  const surfaces = [...rooms.values()].flatMap((room) => room.surfaces)
  return { surfaces, byKey: new Map(surfaces.map((surface) => [surface.key, surface])) }
}
