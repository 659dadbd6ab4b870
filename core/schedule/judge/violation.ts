import type { PersonId, ScheduleRoomId, TaskId } from '../model.ts'

/** Every rule a plan is judged by. */
export type RuleName =
  /** Every task of the problem is there once. */
  | 'everyTaskPlanned'
  /** Pieces are on the grid, in order, after now. */
  | 'shape'
  | 'done'
  | 'started'
  | 'pinned'
  /** As many people as the task takes, with the skills it asks for. */
  | 'crew'
  /** A room has a lead with every skill asked for there and at most one more. */
  | 'leadAndOneMore'
  | 'crewCalendar'
  | 'dailyChores'
  /** Broken off only where it may be, with enough on both sides of a night. */
  | 'brokenOff'
  /** Work, moving in, changing product and setting up once more are all given their time. */
  | 'timeSpent'
  | 'onePlaceAtATime'
  | 'minimumWait'
  | 'maximumWait'
  | 'notBefore'
  | 'pooledResource'
  | 'roomCapacity'
  | 'dustNearWet'
  | 'fumesWhileSleeping'
  | 'roomsOutOfUse'
  /** Done with and dry by the moment it is promised back. */
  | 'roomBack'
  /** Open in the hours the household needs it every day. */
  | 'neededDaily'
  | 'wayOut'
  | 'hallsLast'

/** A rule that a plan breaks, and where. Instants are epoch minutes. */
export interface Violation {
  readonly rule: RuleName
  /** The tasks concerned; of two, the one that comes first in the order of work, makes wet or closes is the first. */
  readonly tasks: readonly TaskId[]
  readonly person?: PersonId
  readonly room?: ScheduleRoomId
  readonly at?: number
  /** Missing, too many or too late. */
  readonly minutes?: number
}
