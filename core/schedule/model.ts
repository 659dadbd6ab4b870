import type { Brand } from '../units/brand.ts'
import type { ElapsedMinutes, WorkingMinutes } from '../units/duration.ts'
import type { LocalDate } from '../units/local-date.ts'

export type { LocalDate }

/** Whole minutes since 1970-01-01T00:00Z. Every instant in a problem or a plan is one of these. */
export type EpochMinutes = Brand<number, 'EpochMinutes'>
export function epochMinutes(value: number): EpochMinutes {
  return value as EpochMinutes
}

export type TaskId = string
export type PersonId = string
export type ScheduleRoomId = string
export type ResourceId = string
export type SkillName = string

/** Part of a local day in minutes after local midnight, `from` included, `to` excluded; 0 <= from < to <= 1440. */
export interface DayWindow {
  readonly from: number
  readonly to: number
}

/** Windows for each weekday, Sunday first (as `Date.getUTCDay`); an empty list is a day off. */
export type Week = readonly [
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
      readonly siteHours: Week
      readonly holidays: readonly LocalDate[]
    }
  | { readonly kind: 'unbroken'; readonly start: EpochMinutes }

export interface Person {
  readonly id: PersonId
  readonly skills: readonly SkillName[]
  readonly week: Week
  /** Taken out of every window they touch, each working day. */
  readonly breaks: readonly DayWindow[]
  readonly daysOff: readonly LocalDate[]
  /** On these dates the person's windows are replaced (breaks and site hours still apply). */
  readonly partDays: readonly { readonly date: LocalDate; readonly windows: readonly DayWindow[] }[]
}

/** `none`: one unbroken stretch. `break`: may pause over a break within the day. `night`: also over nights and days off. */
export type Splitting = 'none' | 'break' | 'night'

/** What a task does to its room. Times are elapsed minutes *after the task's end*; null means "does not". */
export interface RoomEffects {
  /** Surface wet from start until this long after the end; 0 is wet only while worked. */
  readonly wetFor: ElapsedMinutes | null
  /** Raises dust from start to end, pauses included (sanding, scraping): never where something is wet. */
  readonly dusty: boolean
  /** Fumes from start until this long after the end. */
  readonly fumesFor: ElapsedMinutes | null
  /** Nobody can use or cross the room from start until this long after the end, pauses included. */
  readonly closedFor: ElapsedMinutes | null
}

export const noEffects: RoomEffects = { wetFor: null, dusty: false, fumesFor: null, closedFor: null }

/** Elapsed minutes after its end for which a task keeps the household out: until what it coated is dry and what it closed is open. */
export function minutesUntilUsable({ wetFor, closedFor }: RoomEffects): number {
  return Math.max(wetFor ?? 0, closedFor ?? 0)
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
  /** Everybody on the task has all of these. */
  readonly skills: readonly SkillName[]
  readonly room: ScheduleRoomId | null
  readonly splitting: Splitting
  readonly effects: RoomEffects
  /** What is in the brush; a person going from one to another counts as a product change. */
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
export interface PooledResource {
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
  readonly tasksAtOnce: number | null
  readonly peopleAtOnce: number | null
}

/** House rules; null switches a rule off. */
export interface HouseRules {
  /** At most so many rooms at any instant that are out of use: from the first task in them to the last, drying included. */
  readonly roomsOutOfUse: number | null
  readonly noDustNearWet: boolean
  /** No fumes in or openly next to a sleeping room in these hours (minutes of the local day, over midnight when from > to). */
  readonly noFumesWhileSleeping: { readonly from: number; readonly to: number } | null
  readonly roomBackInTime: boolean
  /** No task is under way in a room reached through a hall or stair that is closed just then. */
  readonly wayOutKeptOpen: boolean
  /** Wet or closing work in a hall or stair comes after everything in the rooms reached through it. */
  readonly hallsLast: boolean
  /** Minutes at the begin and end of each person's day in which no task is worked. */
  readonly dailyChores: { readonly setUp: number; readonly cleanUp: number } | null
  /** Covering and restoring alarms takes these minutes at both ends of each person's day, besides the chores. */
  readonly alarmsRestoredDaily: { readonly minutes: number } | null
}

export const noHouseRules: HouseRules = {
  roomsOutOfUse: null,
  noDustNearWet: false,
  noFumesWhileSleeping: null,
  roomBackInTime: false,
  wayOutKeptOpen: false,
  hallsLast: false,
  dailyChores: null,
  alarmsRestoredDaily: null,
}

/** What an accepted plan said about a task; a new plan moves it only where the finish needs it. */
export interface PlanPromise {
  readonly task: TaskId
  readonly start: EpochMinutes
  readonly people: readonly PersonId[]
}

export interface ScheduleProblem {
  readonly clock: SiteClock
  /** Step of all starts and ends in minutes, usually 5; windows and breaks lie on it. */
  readonly gridMinutes: number
  readonly tasks: readonly Task[]
  readonly links: readonly Link[]
  readonly people: readonly Person[]
  readonly resources: readonly PooledResource[]
  readonly rooms: readonly ScheduleRoom[]
  readonly rules: HouseRules
  /** Empty for a first plan. */
  readonly promises: readonly PlanPromise[]
}

export interface PlanSegment {
  readonly start: EpochMinutes
  readonly end: EpochMinutes
}

export interface PlannedTask {
  readonly task: TaskId
  /** In time order; the pauses between them are the crew's own breaks and nights. Empty only for tasks without length. */
  readonly segments: readonly PlanSegment[]
  readonly start: EpochMinutes
  readonly end: EpochMinutes
  readonly people: readonly PersonId[]
}

/** Terms of the objective in their order of weight. Each smaller is better. */
export interface PlanValue {
  /** Whole local days after the clock's first day on which the last task ends (0: the same day); grid steps on an unbroken clock. */
  readonly finish: number
  readonly roomDaysOutOfUse: number
  /** Minutes between a person's first and last work of a day in which they could work and do not. */
  readonly idleMinutes: number
  readonly productChanges: number
  /** Promises whose start or people differ. */
  readonly movedPromises: number
}

export interface Plan {
  /** In the order of the problem's tasks; every task is there. */
  readonly tasks: readonly PlannedTask[]
  readonly value: PlanValue
  readonly finishInstant: EpochMinutes
}
