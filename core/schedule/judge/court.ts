import { present } from '../../lists/lists.ts'
import { dateOfDay, weekdayOf } from '../../time/local-date.ts'
import { type LocalTime, localTimeIn } from '../../time/local-time.ts'
import type { DayWindow, Person, Plan, PlannedTask, ScheduleProblem, ScheduleRoom, Task } from '../model.ts'

/** A task with its place in the plan. */
export interface PlacedTask {
  readonly task: Task
  readonly planned: PlannedTask
  /** Done: it is never moved any more, and need not keep rules that were broken on site. */
  readonly isFact: boolean
}

/** What somebody does in each minute of a local day, as far as a plan may count on them. */
type DayOfPerson = Uint8Array
export const away = 0
export const here = 1
export const atChores = 2
/** On another job: nothing goes on from before it to after it. */
export const elsewhere = 3

/**
 * What rules are judged by: the wall clock, who is there when, what is open to what. Worked out from the problem alone, and kept for it, so
 * that a plan can be judged at every step of a hand.
 */
export interface Court {
  readonly problem: ScheduleProblem
  /** Null on an unbroken clock. */
  readonly local: LocalTime | null
  readonly dayAt: (instant: number) => number
  /** Minute of the local day. */
  readonly minuteAt: (instant: number) => number
  /** Null is the site itself, for work that needs nobody. */
  readonly dayOf: (person: Person | null, day: number) => DayOfPerson
  readonly person: (id: string) => Person | undefined
  readonly room: (id: string | null) => ScheduleRoom | undefined
  /** Minutes to set up and to leave things safe, each person and day. */
  readonly chores: { readonly before: number; readonly after: number }
  readonly airMeets: (one: string, other: string) => boolean
}

const courts = new WeakMap<ScheduleProblem, Court>()

/** What the judge knows of a problem before it sees a plan, worked out once. */
export function courtOf(problem: ScheduleProblem): Court {
  const known = courts.get(problem) ?? createCourt(problem)
  courts.set(problem, known)
  return known
}

/** The tasks that the plan has, in the order of the problem. */
export function entriesOf(problem: ScheduleProblem, plan: Plan): readonly PlacedTask[] {
  const byId = new Map(plan.tasks.map((planned) => [planned.task, planned]))
  return problem.tasks.flatMap((task) => {
    const planned = byId.get(task.id)
    return planned === undefined ? [] : [{ task, planned, isFact: task.state.kind === 'done' }]
  })
}

/** Minutes that the work of a task takes its people, on the grid. */
export function workOf({ task, planned }: PlacedTask, grid: number): number {
  const work = task.state.kind === 'started' ? task.state.remainingWork : task.work
  return Math.ceil(work / Math.max(1, planned.people.length) / grid) * grid
}

function createCourt(problem: ScheduleProblem): Court {
  const { clock, rules } = problem
  const local = clock.kind === 'site' ? localTimeIn(clock.timeZone) : null
  const people = new Map(problem.people.map((person) => [person.id, person]))
  const rooms = new Map(problem.rooms.map((room) => [room.id, room]))
  const days = new Map<Person | null, Map<number, DayOfPerson>>()
  const alarms = problem.rooms.some((room) => room.alarm) ? (rules.alarmsRestoredDaily?.minutes ?? 0) : 0
  const chores = {
    before: (rules.dailyChores?.setUp ?? 0) + alarms,
    after: (rules.dailyChores?.cleanUp ?? 0) + alarms,
  }
  const dayAt = (instant: number): number =>
    local === null ? Math.floor((instant - clock.start) / problem.gridMinutes) : local.dayAt(instant)
  const air = new Map(problem.rooms.map((room) => [room.id, new Set([room.id, ...room.openTo])]))
  for (const room of problem.rooms) for (const other of room.openTo) air.get(other)?.add(room.id)
  function dayOf(person: Person | null, day: number): DayOfPerson {
    const known = days.get(person) ?? new Map<number, DayOfPerson>()
    days.set(person, known)
    const found = known.get(day) ?? dayOfPerson(problem, present(local), person, day, chores)
    known.set(day, found)
    return found
  }
  return {
    problem,
    local,
    dayAt,
    minuteAt: (instant) =>
      local === null ? 0 : instant + local.offsetAt(instant) - local.dayAt(instant) * 1440,
    dayOf,
    person: (id) => people.get(id),
    room: (id) => (id === null ? undefined : rooms.get(id)),
    chores,
    airMeets: (one, other) => air.get(one)?.has(other) === true,
  }
}

function dayOfPerson(
  problem: ScheduleProblem,
  local: LocalTime,
  person: Person | null,
  day: number,
  chores: Court['chores'],
): DayOfPerson {
  const minutes = new Uint8Array(1440)
  for (const { from, to } of hoursOn(problem, person, day)) minutes.fill(here, Math.max(0, from), to)
  for (const { from, to } of person?.breaks ?? []) minutes.fill(away, from, to)
  if (person === null) return minutes
  markElsewhere(minutes, local, person, day)
  mark(minutes, chores.before, (rest) => rest.indexOf(here))
  mark(minutes, chores.after, (rest) => rest.lastIndexOf(here))
  return minutes
}

/** Who is on another job comes once that day at most: in the longer part of it, before or after, of two alike in the earlier one. */
function markElsewhere(minutes: DayOfPerson, local: LocalTime, person: Person, day: number): void {
  for (const { start, end } of person.busy) {
    if (local.dayAt(end) < day || local.dayAt(start) > day) continue
    for (let minute = 0; minute < 1440; minute++) {
      const at = local.instantOf(day, minute)
      if (start <= at && at < end) minutes[minute] = elsewhere
    }
  }
  const [first, last] = [minutes.indexOf(elsewhere), minutes.lastIndexOf(elsewhere)]
  if (first < 0) return
  const hours = (part: DayOfPerson): number => part.filter((minute) => minute === here).length
  if (hours(minutes.subarray(0, first)) < hours(minutes.subarray(last + 1))) minutes.fill(elsewhere, 0, last)
  else minutes.fill(elsewhere, first)
}

function mark(minutes: Uint8Array, count: number, next: (rest: Uint8Array) => number): void {
  for (let left = count; left > 0; left--) {
    const at = next(minutes)
    if (at < 0) return
    minutes[at] = atChores
  }
}

/** Where site hours and somebody's own windows of the day overlap. */
function hoursOn({ clock }: ScheduleProblem, person: Person | null, day: number): readonly DayWindow[] {
  if (clock.kind !== 'site') return []
  const date = dateOfDay(day)
  if (clock.holidays.includes(date) || person?.daysOff.includes(date) === true) return []
  const site = clock.siteHours[weekdayOf(day)] ?? []
  if (person === null) return site
  const own = person.partDays.find((part) => part.date === date)?.windows ?? person.week[weekdayOf(day)] ?? []
  return site.flatMap((open) =>
    own.map(({ from, to }) => ({ from: Math.max(open.from, from), to: Math.min(open.to, to) })),
  )
}
