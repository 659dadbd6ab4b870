import { type EpochMinutes, epochMinutes } from '../time/instant.ts'
import type { LocalDate } from '../time/local-date.ts'
import type { ElapsedMinutes, WorkingMinutes } from '../units/duration.ts'

export type TaskId = string
export type PersonId = string
export type ScheduleRoomId = string
type ResourceId = string
export type SkillName = string

/** Part of a local day in minutes after local midnight, `from` included, `to` excluded; 0 <= from < to <= 1440. */
export interface DayWindow {
  readonly from: number
  readonly to: number
}

/** Windows for each weekday, Sunday first (as `Date.getUTCDay`); an empty list is a day off. */
export type WeekWindows = readonly [
  readonly DayWindow[],
  readonly DayWindow[],
  readonly DayWindow[],
  readonly DayWindow[],
  readonly DayWindow[],
  readonly DayWindow[],
  readonly DayWindow[],
]

/**
 * `site`: people work in local windows and stop at breaks and nights, drying does not.
 * `unbroken`: work runs day and night (no people, no rooms' evenings); time counts from `start` in grid steps.
 */
export type SiteClock =
  | {
      readonly kind: 'site'
      /** IANA name, for instance `America/New_York`. */
      readonly timeZone: string
      /** "Now": nothing that is still open may start before it. */
      readonly start: EpochMinutes
      /** When work may go on at the house at all; a person works where their own week and these overlap. */
      readonly siteHours: WeekWindows
      readonly holidays: readonly LocalDate[]
    }
  | { readonly kind: 'unbroken'; readonly start: EpochMinutes }

export interface Person {
  readonly id: PersonId
  readonly skills: readonly SkillName[]
  readonly week: WeekWindows
  /** Taken out of every window they touch, each working day. */
  readonly breaks: readonly DayWindow[]
  readonly daysOff: readonly LocalDate[]
  /** On these dates the person's windows are replaced (breaks and site hours still apply). */
  readonly partDays: readonly { readonly date: LocalDate; readonly windows: readonly DayWindow[] }[]
  /** Stretches in which they work on another accepted job. */
  readonly busy: readonly PlanSegment[]
  /** Wage with burden, in cents for an hour. */
  readonly centsPerHour: number
}

/**
 * `never`: done within one day, over nothing longer than the crew's own breaks. `natural`: may also stop at a day's end and go on the
 * next day, with at least `smallestPart` on both sides.
 */
type Breaking = 'never' | 'natural'

/** What a task does to its room. Times are elapsed minutes *after the task's end*; null means "does not". */
export interface RoomEffects {
  /** Surface wet from start until this long after the end; 0 is wet only while worked. */
  readonly touchDry: ElapsedMinutes | null
  /** Raises dust from start to end, pauses included (sanding, scraping): never where something is wet. */
  readonly dusty: boolean
  /** Fumes from start until this long after the end. */
  readonly fumesFor: ElapsedMinutes | null
  /** Nobody can use or cross the room from start until this long after the end, pauses included. */
  readonly closedFor: ElapsedMinutes | null
}

/** Elapsed minutes after its end for which a task keeps the household out: until what it coated is dry and what it closed is open. */
export function minutesUntilUsable({ touchDry, closedFor }: RoomEffects): number {
  return Math.max(touchDry ?? 0, closedFor ?? 0)
}

/**
 * `open`: free to place. `pinned`: starts exactly then, with those people when named.
 * `started`: began then; `remainingWork` person-minutes go on by `people` from the clock's start on.
 * `done`: a fact. Facts are never moved and need not respect rules that were broken on site.
 */
export type TaskState =
  | { readonly kind: 'open' }
  | { readonly kind: 'pinned'; readonly start: EpochMinutes; readonly people: readonly PersonId[] | null }
  | {
      readonly kind: 'started'
      readonly start: EpochMinutes
      readonly people: readonly PersonId[]
      readonly remainingWork: WorkingMinutes
    }
  | {
      readonly kind: 'done'
      readonly start: EpochMinutes
      readonly end: EpochMinutes
      readonly people: readonly PersonId[]
    }

/** Done or under way: where and when it began is a fact. */
export function isBegun({ state }: { readonly state: TaskState }): boolean {
  return state.kind === 'done' || state.kind === 'started'
}

export interface Task {
  readonly id: TaskId
  /** Person-minutes. Lasts `work / crew` rounded up to the grid. With a crew of 0 it needs nobody and lasts `work`. */
  readonly work: WorkingMinutes
  /** The whole crew works together from start to end; the search picks a size in min..max. */
  readonly crew: { readonly min: number; readonly max: number }
  /** Somebody on the task has all of these, and whoever helps has one of them at least. */
  readonly skills: readonly SkillName[]
  /** The room set: what is prepared, painted and given back as one. */
  readonly room: ScheduleRoomId | null
  readonly breaking: Breaking
  /** Minutes of work on either side of a night at least. */
  readonly smallestPart: WorkingMinutes
  readonly effects: RoomEffects
  /** What is in the brush; going from one to another on a day costs washing out. Null for dry work. */
  readonly product: string | null
  readonly earliestStart: EpochMinutes | null
  readonly state: TaskState
  /** Pooled resources held while worked, for instance one sprayer; may be empty. */
  readonly demands: readonly { readonly resource: ResourceId; readonly amount: number }[]
}

/**
 * `start(to) - end(from)` (or `- start(from)`) lies in atLeast..atMost, in elapsed minutes, day and night alike.
 * Drying: `measuredFrom: 'end', atLeast`. Mere order: `atLeast: 0`. Open time: `atMost`. Null is no limit.
 * `atLeast` may be negative with `measuredFrom: 'start'` (a maximum wait written backwards).
 */
export interface Link {
  readonly from: TaskId
  readonly to: TaskId
  readonly measuredFrom: 'end' | 'start'
  readonly atLeast: ElapsedMinutes | null
  readonly atMost: ElapsedMinutes | null
}

/** A pooled resource: tasks worked at the same time need at most `capacity` of it together. */
interface PooledResource {
  readonly id: ResourceId
  readonly capacity: number
}

export interface ScheduleRoom {
  readonly id: ScheduleRoomId
  /** Rooms that dust and fumes reach from here: a cased opening, no door. Need only be said on one side. */
  readonly openTo: readonly ScheduleRoomId[]
  readonly sleeping: boolean
  /** Halls and stairs one must cross to get here. */
  readonly reachedThrough: readonly ScheduleRoomId[]
  /** All work in the room is over by then, and what was coated is dry. */
  readonly backBy: EpochMinutes | null
  /** Nothing closes the room during this part of any day; over midnight when `from` > `to` (18:00-07:00: 1080, 420). */
  readonly neededDaily: { readonly from: number; readonly to: number } | null
  /** Has an alarm or sensor to be covered while dusty or fuming work goes on and restored the same day. */
  readonly alarm: boolean
  readonly peopleAtOnce: number | null
  /** What each day it is out of use costs the family, in cents. */
  readonly centsPerDay: number
  /** What each day costs on which it is begun, given back meanwhile, and not done, in cents: a coat short, and things still put away. */
  readonly centsPerDayWaiting: number
  /** Person-minutes to set it up once more after it was given back meanwhile. */
  readonly setUpAgain: WorkingMinutes
}

/** House rules; null switches a rule off. */
export interface PlanRules {
  /** At most so many rooms out of use on any day. */
  readonly roomsOutOfUse: number | null
  /** One person leads a room, with every skill that is asked for there, and at most one more works in it. */
  readonly leadAndOneMore: boolean
  readonly noDustNearWet: boolean
  /** No fumes in or openly next to a sleeping room in these hours (minutes of the local day, over midnight when from > to). */
  readonly noFumesWhileSleeping: { readonly from: number; readonly to: number } | null
  readonly roomBackInTime: boolean
  /** No task is under way in a room reached through a hall or stair that is closed just then. */
  readonly wayOutKeptOpen: boolean
  /** A hall or stair is begun when everything behind it is done that is not itself a way out. */
  readonly hallsLast: boolean
  /** Minutes at the begin and end of each person's day in which no task is worked. */
  readonly dailyChores: { readonly setUp: number; readonly cleanUp: number } | null
  /** Covering and restoring alarms takes these minutes at both ends of each person's day, besides the chores. */
  readonly alarmsRestoredDaily: { readonly minutes: number } | null
}

/** Time that is really spent between tasks: minutes of each person. */
export interface Spending {
  /** To another room on the same day, with everything that goes along. */
  readonly moving: number
  /** Washing out and opening another product on the same day. */
  readonly changingProduct: number
  /** Who comes is paid so many minutes at least. */
  readonly leastPaid: number
}

/** What the job counts as cost besides pay and room-days; cents. On an unbroken clock `siteDay` is what a grid step costs. */
export interface Prices {
  /** Each working day from the day the job may begin to the last on site. */
  readonly siteDay: number
  /** Each time a room goes over to somebody who was not at the task before. */
  readonly handOver: number
  /** Each time a coat goes on after a night. */
  readonly takeUp: number
}

/** What a plan on paper or on screen said about a task. */
export interface PlanPromise {
  readonly task: TaskId
  readonly start: EpochMinutes
  readonly people: readonly PersonId[]
}

/** What a new plan should keep of an older one. */
export interface Keeping {
  readonly tasks: readonly PlanPromise[]
  /** Cents for each task that begins on another day or is done by others. */
  readonly centsPerMove: number
  /** When each room was promised back to the family; empty before a plan is accepted. */
  readonly rooms: readonly { readonly room: ScheduleRoomId; readonly by: EpochMinutes }[]
  /** Cents for each day that a room comes back later than promised. */
  readonly centsPerLateDay: number
}

export const nothingKept: Keeping = { tasks: [], centsPerMove: 0, rooms: [], centsPerLateDay: 0 }

export interface ScheduleProblem {
  readonly clock: SiteClock
  /** Step of all starts and ends in minutes, usually 5; windows and breaks lie on it. */
  readonly gridMinutes: number
  readonly tasks: readonly Task[]
  readonly links: readonly Link[]
  readonly people: readonly Person[]
  readonly resources: readonly PooledResource[]
  readonly rooms: readonly ScheduleRoom[]
  readonly rules: PlanRules
  readonly spending: Spending
  readonly prices: Prices
  readonly keeping: Keeping
}

export interface PlanSegment {
  readonly start: EpochMinutes
  readonly end: EpochMinutes
}

export interface PlannedTask {
  readonly task: TaskId
  /**
   * In time order; the pauses between them are the crew's own breaks and nights. Moving in, washing out and setting a room up once more
   * are part of the first. Empty only for tasks without length.
   */
  readonly segments: readonly PlanSegment[]
  readonly start: EpochMinutes
  readonly end: EpochMinutes
  readonly people: readonly PersonId[]
}

/** What a plan costs, in whole cents by what it is for, and what it was asked to keep and does not. */
export interface PlanCost {
  readonly pay: number
  readonly siteDays: number
  /** Days on which rooms are out of use, and those on which a begun one waits. */
  readonly roomDays: number
  /** Rooms that go over to somebody else, and coats that go on after a night. */
  readonly handOvers: number
  /** The sum of the four. */
  readonly total: number
  /** Whole days that rooms come back later than promised, and tasks that moved to another day or to others. */
  readonly lateDays: number
  readonly movedTasks: number
}

export interface Plan {
  /** In the order of the problem's tasks; every task is there. */
  readonly tasks: readonly PlannedTask[]
}

/** When the last task of a plan ends. */
export function finishOf({ tasks }: Plan): EpochMinutes {
  return epochMinutes(tasks.reduce((latest, { end }) => Math.max(latest, end), 0))
}
