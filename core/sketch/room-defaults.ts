import { type Job, records } from '../project/job.ts'
import type { Room, RoomId, StoreyId, TrimRun } from '../project/sketch-records.ts'
import { trimRunIdSchema } from '../project/sketch-records.ts'
import { feet } from '../units/length.ts'
import type { RoomDefaults } from './commands.ts'
import { firstTrimSizes } from './trim-sizes.ts'

type RunModel = Omit<TrimRun, 'id' | 'roomId' | 'walls'>

/** What a first room of a job is drawn with: 8 ft flat ceiling and a baseboard. Shop assumption. */
export const firstRoomDefaults: Omit<RoomDefaults, 'trim'> & { readonly trim: readonly RunModel[] } = {
  ceiling: { kind: 'flat', height: feet(8) },
  above: 'heated',
  trim: [{ kind: 'baseboard', profiled: true, ...firstTrimSizes.baseboard }],
}

/**
 * What the next room of a storey starts with: the ceiling of the room drawn there last that has a flat ceiling, else the job's first one; and a
 * baseboard as that room has it. Crown and rails of one room are no habit of the next. `newId` gives a new id for each trim run.
 */
export function roomDefaultsFor(
  job: Job,
  storeyId: StoreyId,
  newId: () => string,
  first = firstRoomDefaults,
): RoomDefaults {
  const model = records(job.rooms).findLast(
    (room) => room.storeyId === storeyId && room.ceiling.kind === 'flat',
  )
  const baseboard = model && wholeRuns(job, model).find((run) => run.kind === 'baseboard')
  return {
    ceiling: model?.ceiling ?? first.ceiling,
    above: model?.above ?? first.above,
    trim: (baseboard ? [baseboard] : first.trim).map((run) => ({
      ...run,
      id: trimRunIdSchema.parse(newId()),
    })),
  }
}

/** Runs along all walls; a rail on one wall is not of the whole room. */
function wholeRuns(job: Job, room: Room): readonly RunModel[] {
  return records(job.trimRuns)
    .filter((run) => run.roomId === room.id && run.walls === null)
    .map(({ kind, height, girth, level, profiled }) => ({ kind, height, girth, level, profiled }))
}

/** The runs of the room before this one on its storey that this one does not have, for it to have them too. */
export function runsOfLastRoom(
  job: Job,
  roomId: RoomId,
): { readonly lastRoom: Room; readonly runs: readonly Omit<TrimRun, 'id'>[] } | null {
  const rooms = records(job.rooms).filter((room) => room.storeyId === job.rooms[roomId]?.storeyId)
  const lastRoom = rooms[rooms.findIndex((room) => room.id === roomId) - 1]
  if (lastRoom === undefined) return null
  const own = new Set(records(job.trimRuns).flatMap((run) => (run.roomId === roomId ? [run.kind] : [])))
  const missing = wholeRuns(job, lastRoom).filter(({ kind }) => !own.has(kind))
  return { lastRoom, runs: missing.map((run) => ({ ...run, roomId, walls: null })) }
}
