import type { Axis } from '../axis.ts'
import type { ScheduleProblem, Task } from '../model.ts'

/** No limit, for ticks. Far from overflow when lags are added. */
export const never = 1_000_000_000

export type TaskSide = 0 | 1
export const startSide: TaskSide = 0
export const endSide: TaskSide = 1

/** `atLeast <= side(to) - side(from) <= atMost`, all in ticks. Without a limit: -never, never. */
export interface Arc {
  readonly from: number
  readonly fromSide: TaskSide
  readonly to: number
  readonly toSide: TaskSide
  readonly atLeast: number
  readonly atMost: number
}

/** The arcs of each task as flat rows: the other task, its side, my side, least and most of (my side - its side). */
export interface Neighbours {
  /** Rows of task t are rowStart[t] up to, but without, rowStart[t + 1]. */
  readonly rowStart: Int32Array
  readonly other: Int32Array
  readonly otherSide: Uint8Array
  readonly mySide: Uint8Array
  readonly least: Int32Array
  readonly most: Int32Array
}

/** The time a task claims reaches `before` ticks before its start to `after` ticks after its end. */
export interface Reach {
  readonly before: number
  readonly after: number
}

/** Stretches of ticks in order, `to` excluded. */
export interface ForbiddenTicks {
  readonly from: Int32Array
  readonly to: Int32Array
}

export interface Conflict {
  readonly other: number
  readonly mine: Reach
  readonly others: Reach
}

/** Slots on which everybody of some calendar groups works, with where a pause would begin. */
export interface TeamCalendar {
  readonly groups: number
  /** People of each group involved; one word per group. */
  readonly peopleOfGroup: readonly number[]
  readonly slots: Int32Array
  readonly ticks: Int32Array
  /** Index after the last one of the same unbroken run, and of the same local day. */
  readonly runEnd: Int32Array
  readonly dayEnd: Int32Array
  /** For each slot of the axis the first index at or after it. */
  readonly indexAt: Int32Array
}

export interface NetTask {
  readonly index: number
  /** Crew sizes that may be chosen and the slots the task then takes. */
  readonly sizes: readonly number[]
  readonly durations: readonly number[]
  readonly pausing: Task['splitting']
  readonly skilled: number
  /** The only team that may do it, or 0. */
  readonly team: number
  readonly calendars: readonly number[]
  /** Ticks: start not before, start not after, end not before, end not after. */
  readonly release: number
  readonly startBy: number
  readonly endFrom: number
  readonly endBy: number
  /** Placed before all others, in this order of urgency: 1 done, 2 started, 3 pinned; 0 is open. */
  readonly fixed: 0 | 1 | 2 | 3
  readonly factStart: number
  readonly factEnd: number
  readonly room: number
  /** For so long it keeps its room out of use; null where it is in no room or without work. */
  readonly outOfUse: Reach | null
  readonly forbidden: readonly { readonly ticks: ForbiddenTicks; readonly reach: Reach }[]
  readonly conflicts: readonly Conflict[]
  readonly demands: readonly {
    readonly resource: number
    readonly amount: number
    readonly perPerson: boolean
  }[]
  readonly product: number
  readonly promisedStart: number
  readonly promisedTeam: number
}

/** A problem translated to ticks, slots and bits. `mirrored` nets run time backwards, so that one decoder serves both directions. */
export interface SiteNet {
  readonly problem: ScheduleProblem
  readonly mirrored: boolean
  readonly axis: Axis
  readonly firstTick: number
  readonly calendars: readonly TeamCalendar[]
  readonly tasks: readonly NetTask[]
  readonly arcs: readonly Arc[]
  readonly neighbours: Neighbours
  readonly roomCount: number
  readonly roomLimit: number
  readonly capacities: readonly number[]
}

export function countBits(mask: number): number {
  let rest = mask
  let count = 0
  while (rest !== 0) {
    rest &= rest - 1
    count++
  }
  return count
}
