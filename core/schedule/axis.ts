import {
  choreMinutes,
  dayOfDate,
  type LocalTime,
  localTimeIn,
  presentWindows,
  siteWindows,
  weekdayOf,
  withoutChores,
} from './calendar.ts'
import type { DayWindow, Person, ScheduleProblem } from './model.ts'

/**
 * The two clocks on one grid. A *tick* is a grid step of the wall clock counted from `origin`; drying and open times are
 * constants in ticks. A *slot* is a tick in which somebody may work; slots are numbered without gaps, so that work runs on
 * consecutive slots. `slotTick` and `slotAt` are the two monotone tables between them: work that fills slots x..y starts at
 * tick slotTick[x] and ends at tick slotTick[y] + 1, which differ from slotTick[y + 1] at every break and night.
 */
export interface Axis {
  readonly origin: number
  readonly grid: number
  /** Ticks on the axis; nothing may end after it. */
  readonly horizon: number
  readonly slotTick: Int32Array
  /** For each tick 0..horizon the first slot that starts at or after it. */
  readonly slotAt: Int32Array
  /** Local day (0 is the first) at each tick 0..horizon. */
  readonly dayOfTick: Int32Array
  /** For each slot the people (bits) whose own calendar has it. */
  readonly present: Int32Array
  /** Groups of people with the same calendar (bits of people); the first group is the site itself with nobody in it. */
  readonly groups: readonly number[]
  /** For each slot the groups (bits of their indices) that work it. */
  readonly working: Int32Array
}

const mostDays = 730

/** Needs a problem without faults. `days` local days from the clock's start on, or as many as any sensible plan could need. */
export function buildAxis(problem: ScheduleProblem): Axis {
  return problem.clock.kind === 'unbroken' ? unbrokenAxis(problem) : siteAxis(problem, problem.clock)
}

function slotsOfWork(problem: ScheduleProblem): number {
  return problem.tasks.reduce((sum, task) => {
    const work = task.state.kind === 'started' ? task.state.remainingWork : task.work
    return sum + Math.ceil(work / Math.max(1, task.crew.min) / problem.gridMinutes)
  }, 0)
}

function minutesOfWaiting(problem: ScheduleProblem): number {
  const lags = problem.links.reduce((sum, link) => sum + Math.max(0, link.atLeast ?? 0, link.atMost ?? 0), 0)
  const effects = problem.tasks.reduce((sum, { effects }) => {
    return sum + Math.max(effects.wetFor ?? 0, effects.closedFor ?? 0, effects.fumesFor ?? 0)
  }, 0)
  return lags + effects
}

function latestMention(problem: ScheduleProblem): number {
  return problem.tasks.reduce((latest, task) => {
    const pinned = task.state.kind === 'pinned' ? task.state.start : problem.clock.start
    return Math.max(latest, task.earliestStart ?? problem.clock.start, pinned)
  }, problem.clock.start as number)
}

function unbrokenAxis(problem: ScheduleProblem): Axis {
  const grid = problem.gridMinutes
  const origin = problem.clock.start
  const wait =
    Math.ceil(minutesOfWaiting(problem) / grid) + Math.ceil((latestMention(problem) - origin) / grid)
  const horizon = slotsOfWork(problem) + wait + problem.links.length + 1
  const slotTick = Int32Array.from({ length: horizon }, (_, tick) => tick)
  const slotAt = Int32Array.from({ length: horizon + 1 }, (_, tick) => tick)
  const dayOfTick = slotAt
  return {
    origin,
    grid,
    horizon,
    slotTick,
    slotAt,
    dayOfTick,
    present: new Int32Array(horizon),
    groups: [0],
    working: new Int32Array(horizon).fill(1),
  }
}

interface Stretch {
  readonly fromTick: number
  readonly toTick: number
  readonly group: number
}

function siteAxis(
  problem: ScheduleProblem,
  clock: Extract<ScheduleProblem['clock'], { kind: 'site' }>,
): Axis {
  const local = localTimeIn(clock.timeZone)
  const grid = problem.gridMinutes
  const firstDay = local.dayAt(clock.start)
  const origin = local.instantOf(firstDay, 0)
  const members = groupPeople(problem.people)
  const windowsOn = members.map((group) => windowsByDay(problem, clock, group[0]))
  const enough = 1.5 * slotsOfWork(problem) + 20
  const waitingDays = Math.ceil((minutesOfWaiting(problem) + latestMention(problem) - origin) / 1440) + 7
  const stretches: Stretch[] = []
  const slotsOf = members.map(() => 0)
  let day = 0
  for (; day < mostDays; day++) {
    if (day >= waitingDays && slotsOf.every((slots) => slots >= enough || (slots === 0 && day >= 35))) break
    for (let group = 0; group < members.length; group++) {
      for (const { from, to } of windowsOn[group]?.(firstDay + day) ?? []) {
        const fromTick = Math.round((local.instantOf(firstDay + day, from) - origin) / grid)
        const toTick = Math.round((local.instantOf(firstDay + day, to) - origin) / grid)
        if (fromTick >= toTick) continue
        stretches.push({ fromTick, toTick, group })
        slotsOf[group] = (slotsOf[group] ?? 0) + toTick - fromTick
      }
    }
  }
  const horizon = Math.round((local.instantOf(firstDay + day, 0) - origin) / grid)
  const groups = members.map((group) =>
    group.reduce((mask, person) => mask | (1 << problem.people.indexOf(person)), 0),
  )
  return {
    origin,
    grid,
    horizon,
    ...slotTables(stretches, horizon, groups, Math.ceil((clock.start - origin) / grid)),
    dayOfTick: dayTable(local, firstDay, day, origin, grid, horizon),
    groups,
  }
}

/** The first group is the site itself, for work that needs nobody. */
function groupPeople(people: readonly Person[]): readonly (readonly Person[])[] {
  const groups = new Map<string, Person[]>()
  for (const person of people) {
    const key = JSON.stringify([person.week, person.breaks, person.daysOff, person.partDays])
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [person])
    else group.push(person)
  }
  return [[], ...groups.values()]
}

/** The windows of a person, or of the site itself, on each local day: those of the weekday but for days that are named. */
function windowsByDay(
  problem: ScheduleProblem,
  clock: Extract<ScheduleProblem['clock'], { kind: 'site' }>,
  person: Person | undefined,
): (day: number) => readonly DayWindow[] {
  const chores = choreMinutes(problem)
  const windowsOn = (day: number): readonly DayWindow[] =>
    withoutChores(person === undefined ? siteWindows(clock, day) : presentWindows(clock, person, day), chores)
  const partDays = person?.partDays.map((part) => part.date) ?? []
  const named = new Set([...clock.holidays, ...(person?.daysOff ?? []), ...partDays].map(dayOfDate))
  const usual = new Map<number, readonly DayWindow[]>()
  return (day) => {
    if (named.has(day)) return windowsOn(day)
    const weekday = weekdayOf(day)
    const windows = usual.get(weekday) ?? windowsOn(day)
    usual.set(weekday, windows)
    return windows
  }
}

function slotTables(
  stretches: readonly Stretch[],
  horizon: number,
  groups: readonly number[],
  firstTick: number,
) {
  const workingAt = new Int32Array(horizon)
  for (const { fromTick, toTick, group } of stretches) {
    for (let tick = Math.max(fromTick, firstTick); tick < toTick; tick++)
      workingAt[tick] = (workingAt[tick] as number) | (1 << group)
  }
  const slotAt = new Int32Array(horizon + 1)
  const slotTick = new Int32Array(horizon)
  const working = new Int32Array(horizon)
  const present = new Int32Array(horizon)
  let count = 0
  let now = 0
  let people = 0
  for (let tick = 0; tick < horizon; tick++) {
    slotAt[tick] = count
    const bits = workingAt[tick] as number
    if (bits === 0) continue
    if (bits !== now) people = peopleOf(groups, bits)
    now = bits
    slotTick[count] = tick
    working[count] = bits
    present[count] = people
    count++
  }
  slotAt[horizon] = count
  return {
    slotTick: slotTick.slice(0, count),
    slotAt,
    working: working.slice(0, count),
    present: present.slice(0, count),
  }
}

function peopleOf(groups: readonly number[], working: number): number {
  return groups.reduce((mask, people, group) => ((working >> group) & 1 ? mask | people : mask), 0)
}

function dayTable(
  local: LocalTime,
  firstDay: number,
  days: number,
  origin: number,
  grid: number,
  horizon: number,
): Int32Array {
  const table = new Int32Array(horizon + 1).fill(days)
  for (let day = 0; day < days; day++) {
    const from = Math.round((local.instantOf(firstDay + day, 0) - origin) / grid)
    const to = Math.round((local.instantOf(firstDay + day + 1, 0) - origin) / grid)
    table.fill(day, from, to)
  }
  return table
}
