import {
  choreMinutes,
  dayOfDate,
  localTimeIn,
  presentWindows,
  siteWindows,
  weekdayOf,
  withoutChores,
} from './calendar.ts'
import type { Person, ScheduleProblem } from './model.ts'

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
  /** All slots in order. */
  readonly spans: readonly Span[]
}

/** Ticks (or minutes of a day), `to` excluded, in which the same groups (bits of their indices) work. */
export interface Span {
  readonly from: number
  readonly to: number
  readonly groups: number
}

/** The slot at or after a tick; ticks beside the axis count as its ends. */
export function slotAtTick({ slotAt, horizon }: Axis, tick: number): number {
  return slotAt[Math.max(0, Math.min(horizon, tick))] as number
}

/** The day of a tick, counted from the first; ticks beside the axis count as its ends. */
export function dayAtTick({ dayOfTick, horizon }: Axis, tick: number): number {
  return dayOfTick[Math.max(0, Math.min(horizon, tick))] as number
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
  return lags + minutesOfEffects(problem)
}

function minutesOfEffects(problem: ScheduleProblem): number {
  return problem.tasks.reduce((sum, { effects }) => {
    return sum + Math.max(effects.wetFor ?? 0, effects.closedFor ?? 0, effects.fumesFor ?? 0)
  }, 0)
}

/** Days of work lost at most: each minimum wait takes whole days of them, where rooms are done one after the other. */
function daysOfWaiting(problem: ScheduleProblem): number {
  const lags = problem.links.reduce(
    (sum, { atLeast }) => sum + Math.ceil(Math.max(0, atLeast ?? 0) / 1440),
    0,
  )
  return lags + Math.ceil(minutesOfEffects(problem) / 1440)
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
    spans: [{ from: 0, to: horizon, groups: 1 }],
  }
}

function siteAxis(
  problem: ScheduleProblem,
  clock: Extract<ScheduleProblem['clock'], { kind: 'site' }>,
): Axis {
  const local = localTimeIn(clock.timeZone)
  const grid = problem.gridMinutes
  const firstDay = local.dayAt(clock.start)
  const origin = local.instantOf(firstDay, 0)
  const tickOf = (day: number, minute: number): number =>
    Math.round((local.instantOf(firstDay + day, minute) - origin) / grid)
  const members = groupPeople(problem.people)
  const windowsOn = windowsByDay(problem, clock, members)
  const enough = 1.5 * slotsOfWork(problem) + 20
  const mention = latestMention(problem) - origin
  const waitingDays = daysOfWaiting(problem) + Math.ceil(mention / 1440) + 7
  const firstTick = Math.ceil((clock.start - origin) / grid)
  const spans: Span[] = []
  const slotsOf = members.map(() => 0)
  const dayTicks = [0]
  let daysOfWork = 0
  for (let day = 0; day < mostDays; day++) {
    if (
      Math.max(daysOfWork, day - 35) >= waitingDays &&
      slotsOf.every((slots) => slots >= enough || (slots === 0 && day >= 35))
    )
      break
    const [midnight, next] = [dayTicks[day] as number, tickOf(day + 1, 0)]
    const isEven = next - midnight === 1440 / grid
    const windows = windowsOn(firstDay + day)
    if (windows.length > 0) daysOfWork++
    for (const window of windows) {
      const from = isEven ? midnight + window.from / grid : tickOf(day, window.from)
      const to = isEven ? midnight + window.to / grid : tickOf(day, window.to)
      const begin = Math.max(firstTick, from)
      if (begin < to) spans.push({ from: begin, to, groups: window.groups })
      if (day < Math.floor(mention / 1440)) continue
      for (let group = 0; group < slotsOf.length; group++)
        if ((window.groups >> group) & 1) slotsOf[group] = (slotsOf[group] as number) + to - from
    }
    dayTicks.push(next)
  }
  const horizon = dayTicks[dayTicks.length - 1] as number
  const dayOfTick = new Int32Array(horizon + 1).fill(dayTicks.length - 1)
  for (let day = 0; day + 1 < dayTicks.length; day++) dayOfTick.fill(day, dayTicks[day], dayTicks[day + 1])
  const groups = members.map((group) =>
    group.reduce((mask, person) => mask | (1 << problem.people.indexOf(person)), 0),
  )
  return { origin, grid, horizon, ...slotTables(spans, horizon, groups), dayOfTick, groups }
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

/**
 * The windows of all groups on each local day, parted where one of them begins or ends, in minutes of the day: those of the weekday but
 * for days that are named.
 */
function windowsByDay(
  problem: ScheduleProblem,
  clock: Extract<ScheduleProblem['clock'], { kind: 'site' }>,
  members: readonly (readonly Person[])[],
): (day: number) => readonly Span[] {
  const chores = choreMinutes(problem)
  function windowsOn(day: number): readonly Span[] {
    const ofGroups = members.flatMap(([person], group): readonly Span[] => {
      const windows = person === undefined ? siteWindows(clock, day) : presentWindows(clock, person, day)
      return withoutChores(windows, chores).map(({ from, to }) => ({ from, to, groups: 1 << group }))
    })
    return parted(ofGroups)
  }
  const dates = problem.people.flatMap(({ daysOff, partDays }) => [
    ...daysOff,
    ...partDays.map((part) => part.date),
  ])
  const named = new Set([...clock.holidays, ...dates].map(dayOfDate))
  const usual = new Map<number, readonly Span[]>()
  return (day) => {
    if (named.has(day)) return windowsOn(day)
    const weekday = weekdayOf(day)
    const windows = usual.get(weekday) ?? windowsOn(day)
    usual.set(weekday, windows)
    return windows
  }
}

/** Spans that may overlap, parted where one of them begins or ends. */
function parted(spans: readonly Span[]): readonly Span[] {
  const edges = [...new Set(spans.flatMap(({ from, to }) => [from, to]))].sort((one, other) => one - other)
  return edges.slice(1).flatMap((to, index): readonly Span[] => {
    const from = edges[index] as number
    const groups = spans.reduce((bits, span) => {
      return span.from <= from && to <= span.to ? bits | span.groups : bits
    }, 0)
    return groups === 0 ? [] : [{ from, to, groups }]
  })
}

/** Needs spans in order. */
function slotTables(spans: readonly Span[], horizon: number, groups: readonly number[]) {
  const count = spans.reduce((sum, { from, to }) => sum + to - from, 0)
  const slotAt = new Int32Array(horizon + 1)
  const slotTick = new Int32Array(count)
  const present = new Int32Array(count)
  let slot = 0
  let tick = 0
  for (const span of spans) {
    slotAt.fill(slot, tick, span.from)
    present.fill(peopleOf(groups, span.groups), slot, slot + span.to - span.from)
    for (tick = span.from; tick < span.to; tick++) {
      slotTick[slot] = tick
      slotAt[tick] = slot
      slot++
    }
  }
  slotAt.fill(slot, tick)
  return { spans, slotTick, slotAt, present }
}

function peopleOf(groups: readonly number[], working: number): number {
  return groups.reduce((mask, people, group) => ((working >> group) & 1 ? mask | people : mask), 0)
}
