import {
  type Link,
  nothingKept,
  type Person,
  type Plan,
  type PlannedTask,
  type PlanRules,
  type ScheduleProblem,
  type ScheduleRoom,
  type Task,
  type WeekWindows,
} from '../../core/schedule/model.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { elapsedMinutes, workingMinutes } from '../../core/units/duration.ts'
import { noEffects, noPlanRules } from '../fixtures/plain-rules.ts'

/** Monday 2 March 2026, 00:00 in UTC, the zone of most of these tests. */
export const monday = Date.UTC(2026, 2, 2) / 60_000

/** Instant on the test's Monday (day 0) or a later day, at hours and minutes of the clock. */
export function at(day: number, hours: number, minutes = 0): ReturnType<typeof epochMinutes> {
  return epochMinutes(monday + day * 1440 + hours * 60 + minutes)
}

export function weekOf(from: number, to: number): WeekWindows {
  const window = [{ from: from * 60, to: to * 60 }]
  return [[], window, window, window, window, window, []]
}

/** Monday to Friday 8 to 16 without a break, whatever is not named. */
export function person(id: string, values: Partial<Person> = {}): Person {
  return {
    id,
    skills: ['paint'],
    week: weekOf(8, 16),
    breaks: [],
    daysOff: [],
    partDays: [],
    busy: [],
    centsPerHour: 3000,
    ...values,
  }
}

type TaskValues = Partial<Omit<Task, 'effects' | 'work'>> & {
  readonly work?: number
  readonly effects?: { touchDry?: number; dusty?: boolean; fumesFor?: number; closedFor?: number }
}

/** An hour for one person in no room, whatever is not named. */
export function task(id: string, { work = 60, effects = {}, ...values }: TaskValues = {}): Task {
  const elapsed = (value: number | undefined) => (value === undefined ? null : elapsedMinutes(value))
  return {
    id,
    crew: { min: 1, max: 1 },
    skills: [],
    room: null,
    breaking: 'never',
    smallestPart: workingMinutes(60),
    product: null,
    earliestStart: null,
    state: { kind: 'open' },
    demands: [],
    ...values,
    work: workingMinutes(work),
    effects: {
      ...noEffects,
      touchDry: elapsed(effects.touchDry),
      dusty: effects.dusty ?? false,
      fumesFor: elapsed(effects.fumesFor),
      closedFor: elapsed(effects.closedFor),
    },
  }
}

export function link(
  from: string,
  to: string,
  atLeast: number | null = 0,
  atMost: number | null = null,
): Link {
  return {
    from,
    to,
    measuredFrom: 'end',
    atLeast: atLeast === null ? null : elapsedMinutes(atLeast),
    atMost: atMost === null ? null : elapsedMinutes(atMost),
  }
}

export function room(id: string, values: Partial<ScheduleRoom> = {}): ScheduleRoom {
  return {
    id,
    openTo: [],
    sleeping: false,
    reachedThrough: [],
    backBy: null,
    neededDaily: null,
    alarm: false,
    peopleAtOnce: null,
    centsPerDay: 4000,
    centsPerDayWaiting: 2000,
    setUpAgain: workingMinutes(0),
    ...values,
  }
}

type ProblemValues = Partial<Omit<ScheduleProblem, 'rules'>> & { readonly rules?: Partial<PlanRules> }

/** One painter from Monday morning on, in UTC, without house rules, whatever is not named. */
export function problem({ rules = {}, ...values }: ProblemValues = {}): ScheduleProblem {
  return {
    clock: { kind: 'site', timeZone: 'UTC', start: at(0, 0), siteHours: weekOf(7, 18), holidays: [] },
    gridMinutes: 5,
    tasks: [],
    links: [],
    people: [person('Ann')],
    resources: [],
    rooms: [],
    spending: { moving: 0, changingProduct: 0, leastPaid: 0 },
    prices: { siteDay: 20_000, handOver: 1_000, takeUp: 1_000 },
    keeping: nothingKept,
    rules: { ...noPlanRules, ...rules },
    ...values,
  }
}

/** A plan written by hand: each task with its segments as instants. */
export function handPlan(
  entries: readonly (readonly [string, readonly (readonly [number, number])[], readonly string[]])[],
): Plan {
  const tasks = entries.map(([id, segments, people]): PlannedTask => {
    const spans = segments.map(([start, end]) => ({ start: epochMinutes(start), end: epochMinutes(end) }))
    const start = epochMinutes(segments[0]?.[0] ?? 0)
    const end = epochMinutes(segments[segments.length - 1]?.[1] ?? 0)
    return { task: id, segments: spans, start, end, people }
  })
  return { tasks }
}
