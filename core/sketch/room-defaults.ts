import { type Job, records } from '../project/job.ts'
import type { Room, StoreyId, TrimRun, TrimRunId } from '../project/sketch-records.ts'
import { feet, inches } from '../units/length.ts'
import type { RoomDefaults } from './commands.ts'

/**
 * What a first room of a job is drawn with: 8 ft flat ceiling and a 5 1/2 in baseboard with 7 in girth. Shop assumption; every
 * later room takes after the storey it is on, and everything can be changed.
 */
export const firstRoomDefaults: Omit<RoomDefaults, 'trim'> & {
  readonly trim: readonly Omit<TrimRun, 'id' | 'roomId' | 'walls'>[]
} = {
  ceiling: { kind: 'flat', height: feet(8) },
  above: 'heated',
  trim: [{ kind: 'baseboard', height: inches(5.5), girth: inches(7), level: inches(0), profiled: true }],
}

/**
 * What the next room of a storey starts with: the ceiling and trim of the room drawn there last that has a flat ceiling,
 * else the job's first defaults. `newId` gives a new id for each trim run.
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
  const trim = model === undefined ? first.trim : wholeRuns(job, model)
  return {
    ceiling: model?.ceiling ?? first.ceiling,
    above: model?.above ?? first.above,
    trim: trim.map((run) => ({ ...run, id: newId() as TrimRunId })),
  }
}

/** Runs along all walls are the habit of the house; a rail on one wall is not. */
function wholeRuns(job: Job, room: Room): readonly Omit<TrimRun, 'id' | 'roomId' | 'walls'>[] {
  return records(job.trimRuns)
    .filter((run) => run.roomId === room.id && run.walls === null)
    .map(({ kind, height, girth, level, profiled }) => ({ kind, height, girth, level, profiled }))
}
