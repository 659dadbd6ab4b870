import { groupedBy } from '../lists/lists.ts'
import { stepMinutes } from '../price/labour.ts'
import type { Job } from '../project/job.ts'
import { roomSetsOf } from '../project/room-sets.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Specification } from '../specification/types.ts'
import { momentAfter, type SiteMoment } from '../time/site-moment.ts'
import { type WorkingMinutes, workingMinutes } from '../units/duration.ts'
import { isSettled, type StepProgress, stepStates } from './step-states.ts'

interface Progress {
  /** Person-minutes of all steps that count; daily steps come and go and do not count. */
  readonly plannedMinutes: WorkingMinutes
  /** Person-minutes still to work, less what was already worked on steps under way. */
  readonly leftMinutes: WorkingMinutes
  /** What people wrote down. */
  readonly actualMinutes: WorkingMinutes
  /** 0 to 1 by planned minutes settled; 1 for a room without work. */
  readonly share: number
  readonly steps: { readonly total: number; readonly settled: number }
}

/** A room set: a room with the small rooms worked with it. */
export interface RoomProgress extends Progress {
  /** Of its main room. */
  readonly roomId: RoomId
  readonly name: string
  readonly state: 'untouched' | 'underWay' | 'drying' | 'finished'
  /** When the last coat that is on is dry to the touch; null where nothing was put on. */
  readonly dryAt: SiteMoment | null
  readonly nextStepKey: string | null
}

interface JobProgress extends Progress {
  readonly rooms: readonly RoomProgress[]
}

/** How far the job and each of its room sets is at `now`, by minutes; in the order of the work. */
export function jobProgress(job: Job, specification: Specification, now: SiteMoment): JobProgress {
  const all = [...stepStates(job, specification).values()]
  const mainOf = new Map(roomSetsOf(job).flatMap(({ id, roomIds }) => roomIds.map((roomId) => [roomId, id])))
  const byRoom = groupedBy(all, ({ step }) => mainOf.get(step.roomId) ?? step.roomId)
  const rooms = [...byRoom].map(([roomId, steps]) => roomProgress(job, roomId, steps, now))
  return { ...progressOf(job, all), rooms }
}

/** Minutes of a step still to work: all of it when not started or to be redone, what is left of it when under way. */
export function leftMinutesOf(job: Job, progress: StepProgress): WorkingMinutes {
  const planned = stepMinutes(job, progress.step)
  if (isSettled(progress.state)) return workingMinutes(0)
  if (progress.state.kind !== 'started') return planned
  const worked = progress.history.at(-1)?.actualMinutes ?? 0
  return workingMinutes(Math.max(0, planned - worked))
}

function progressOf(job: Job, all: readonly StepProgress[]): Progress {
  const counted = all.filter((progress) => !progress.step.daily)
  const settled = counted.filter((progress) => isSettled(progress.state))
  const planned = sum(counted, (progress) => stepMinutes(job, progress.step))
  const settledMinutes = sum(settled, (progress) => stepMinutes(job, progress.step))
  return {
    plannedMinutes: planned,
    leftMinutes: sum(counted, (progress) => leftMinutesOf(job, progress)),
    actualMinutes: sum(all, (progress) => sum(progress.history, (mark) => mark.actualMinutes ?? 0)),
    share: planned === 0 ? 1 : settledMinutes / planned,
    steps: { total: counted.length, settled: settled.length },
  }
}

function sum<Item>(items: readonly Item[], minutesOf: (item: Item) => number): WorkingMinutes {
  return workingMinutes(items.reduce((total, item) => total + minutesOf(item), 0))
}

function roomProgress(
  job: Job,
  roomId: RoomId,
  steps: readonly StepProgress[],
  now: SiteMoment,
): RoomProgress {
  const progress = progressOf(job, steps)
  const dryAt = lastDryAt(job, steps)
  const next = steps.find((each) => !each.step.daily && !isSettled(each.state))
  return {
    ...progress,
    roomId,
    name: job.rooms[roomId]?.name ?? roomId,
    state: roomState(steps, next === undefined, dryAt, now),
    dryAt,
    nextStepKey: next?.step.key ?? null,
  }
}

function lastDryAt(job: Job, steps: readonly StepProgress[]): SiteMoment | null {
  const moments = steps.flatMap(({ step, state }) =>
    state.kind === 'done' && step.touchDry > 0
      ? [momentAfter(state.at, step.touchDry, job.header.timeZone)]
      : [],
  )
  return moments.toSorted().at(-1) ?? null
}

function roomState(
  steps: readonly StepProgress[],
  allSettled: boolean,
  dryAt: SiteMoment | null,
  now: SiteMoment,
): RoomProgress['state'] {
  if (allSettled) return dryAt !== null && dryAt > now ? 'drying' : 'finished'
  return steps.some((each) => each.state.kind !== 'todo') ? 'underWay' : 'untouched'
}
