import { dayOfDate, weekdayOf } from '../../time/local-date.ts'
import { localTimeIn } from '../../time/local-time.ts'
import { choreMinutes, daysTouched, hoursLeft, withoutChores } from '../calendar.ts'
import { type DayWindow, isBegun, type Person, type ScheduleProblem, type SiteClock } from '../model.ts'

type SiteHours = Extract<SiteClock, { kind: 'site' }>

/**
 * The wall clock in grid steps. A *tick* is a step counted from `origin`, the midnight before work starts; drying and open times are
 * constants in ticks.
 */
export interface TickAxis {
  readonly origin: number
  readonly grid: number
  /** Nothing is placed beyond it. */
  readonly horizon: number
  /** Nothing open starts before it. */
  readonly firstTick: number
  /** First tick of each day, and of the day after the last. */
  readonly dayStart: Int32Array
  /** Day of each tick up to the horizon. */
  readonly dayOfTick: Int32Array
}

/** When somebody, or two together, can be put on tasks: windows in ticks, by time. */
export interface Windows {
  readonly from: Int32Array
  readonly to: Int32Array
  /** The last window that a task may go on into over a break. */
  readonly stretchLast: Int32Array
  /** The first window that ends after the begin of each day. */
  readonly firstOfDay: Int32Array
}

/** A plan is looked for within so many days at most. */
const mostDays = 12_000
/** Facts from before so many days count as if they were of that day. */
const daysBack = 120

/**
 * The first tick that does not lie before the instant.
 *
 * @param instant minutes
 */
export function tickOf(axis: TickAxis, instant: number): number {
  return Math.ceil((instant - axis.origin) / axis.grid)
}

/** The day of a tick; ticks beyond the axis count as its ends. */
export function dayOf(axis: TickAxis, tick: number): number {
  return axis.dayOfTick[Math.max(0, Math.min(axis.horizon, tick))] as number
}

/** The axis of a problem, long enough for every plan of it. */
export function buildAxis(problem: ScheduleProblem): TickAxis {
  return problem.clock.kind === 'unbroken' ? unbrokenAxis(problem) : siteAxis(problem, problem.clock)
}

function minutesAhead(problem: ScheduleProblem): number {
  const waits = problem.links.reduce(
    (sum, { atLeast, atMost }) => sum + Math.max(0, atLeast ?? 0, atMost ?? 0),
    0,
  )
  return problem.tasks.reduce((sum, { work, effects }) => sum + work + (effects.touchDry ?? 0), waits)
}

function latestMention({ clock, tasks }: ScheduleProblem): number {
  return tasks.reduce(
    (latest, task) =>
      Math.max(latest, task.earliestStart ?? 0, task.state.kind === 'pinned' ? task.state.start : 0),
    clock.start as number,
  )
}

/** A day of the unbroken clock is one grid step, so that days on site count steps. */
function unbrokenAxis(problem: ScheduleProblem): TickAxis {
  const { clock, gridMinutes } = problem
  const ahead = minutesAhead(problem) + latestMention(problem) - clock.start
  const horizon = Math.ceil(ahead / gridMinutes) + problem.links.length + problem.tasks.length + 2
  const steps = Int32Array.from({ length: horizon + 2 }, (_, tick) => tick)
  return {
    origin: clock.start,
    grid: gridMinutes,
    horizon,
    firstTick: 0,
    dayStart: steps,
    dayOfTick: steps,
  }
}

function siteAxis(problem: ScheduleProblem, clock: SiteHours): TickAxis {
  const local = localTimeIn(clock.timeZone)
  const grid = problem.gridMinutes
  const firstDay = firstDayOf(problem, clock)
  const origin = local.instantOf(firstDay, 0)
  const days = daysNeeded(problem, origin)
  const dayStart = Int32Array.from({ length: days + 1 }, (_, day) =>
    Math.round((local.instantOf(firstDay + day, 0) - origin) / grid),
  )
  const horizon = dayStart[days] as number
  const dayOfTick = new Int32Array(horizon + 1).fill(days)
  for (let day = 0; day < days; day++) dayOfTick.fill(day, dayStart[day], dayStart[day + 1])
  const firstTick = Math.ceil((clock.start - origin) / grid)
  return { origin, grid, horizon, firstTick, dayStart, dayOfTick }
}

/** Work that is done or under way is on the axis too, so that it is known since when a room is out of use. */
function firstDayOf({ tasks }: ScheduleProblem, clock: SiteHours): number {
  const local = localTimeIn(clock.timeZone)
  const begun = tasks.map(({ state }) => (isBegun({ state }) && 'start' in state ? state.start : clock.start))
  const start = begun.reduce((first, next) => Math.min(first, next), clock.start as number)
  return Math.max(local.dayAt(clock.start) - daysBack, local.dayAt(start))
}

/** As many days as the person with the fewest hours would need for everything alone, and all waits besides. */
function daysNeeded(problem: ScheduleProblem, origin: number): number {
  const work = problem.tasks.reduce((sum, task) => sum + task.work + 60, 0)
  const weekly = problem.people
    .map(({ week }) => week.flat().reduce((sum, { from, to }) => sum + to - from - 45, 0))
    .filter((minutes) => minutes > 0)
  const alone = (work / Math.max(120, Math.min(...weekly, 2400))) * 7
  const longest = problem.links.reduce((most, { atLeast }) => Math.max(most, atLeast ?? 0), 0)
  const off = problem.people.reduce((most, { daysOff }) => Math.max(most, daysOff.length), 0)
  const mention = (latestMention(problem) - origin) / 1440
  return Math.min(mostDays, Math.ceil(1.5 * alone + 90 + off + (4 * longest) / 1440 + mention))
}

/** Hours of one person on each day, other jobs and chores taken off, as windows that may be bridged over breaks. */
export function personWindows(problem: ScheduleProblem, axis: TickAxis, person: Person): Windows {
  const { clock } = problem
  if (clock.kind === 'unbroken') return allTheTime(axis)
  const local = localTimeIn(clock.timeZone)
  const firstDay = firstDayOf(problem, clock)
  const chores = choreMinutes(problem)
  const named = new Set([
    ...[...clock.holidays, ...person.daysOff, ...person.partDays.map(({ date }) => date)].map(dayOfDate),
    ...daysTouched(clock, person.busy),
  ])
  const usual = new Map<number, readonly DayWindow[]>()
  const windowsOn = (day: number): readonly DayWindow[] => {
    const worked = () => withoutChores(hoursLeft(clock, person, day, axis.grid), chores)
    if (named.has(day)) return worked()
    const weekday = weekdayOf(day)
    const known = usual.get(weekday) ?? worked()
    usual.set(weekday, known)
    return known
  }
  const spans: Span[] = []
  for (let day = 0; day + 1 < axis.dayStart.length; day++) {
    const midnight = axis.dayStart[day] as number
    const isEven = (axis.dayStart[day + 1] as number) - midnight === 1440 / axis.grid
    const tick = (minute: number): number =>
      isEven
        ? midnight + minute / axis.grid
        : Math.round((local.instantOf(firstDay + day, minute) - axis.origin) / axis.grid)
    for (const window of windowsOn(firstDay + day)) {
      const from = Math.max(axis.firstTick, tick(window.from))
      const to = tick(window.to)
      if (from < to) spans.push({ from, to, stretch: day })
    }
  }
  return windowsOf(axis, spans)
}

/** A window; what may be bridged over breaks has the same stretch. */
interface Span {
  readonly from: number
  readonly to: number
  readonly stretch: number
}

function allTheTime(axis: TickAxis): Windows {
  return windowsOf(axis, [{ from: axis.firstTick, to: axis.horizon, stretch: 0 }])
}

function spansOf({ from, to, stretchLast }: Windows): readonly Span[] {
  return Array.from(from, (start, index) => ({
    from: start,
    to: to[index] as number,
    stretch: stretchLast[index] as number,
  }))
}

/** What is left of windows beside stretches that are taken; no task goes on from one side of such a stretch to the other. */
function withoutSpans(
  spans: readonly Span[],
  taken: readonly { readonly from: number; readonly to: number }[],
): readonly Span[] {
  const left = taken.reduce<readonly Span[]>(
    (rest, gap) =>
      rest.flatMap((span) =>
        [
          { ...span, to: Math.min(span.to, gap.from) },
          { ...span, from: Math.max(span.from, gap.to) },
        ].filter(({ from, to }) => from < to),
      ),
    spans,
  )
  let stretch = 0
  return left.map((span, index) => {
    const before = left[index - 1]
    const isApart =
      before !== undefined &&
      (before.stretch !== span.stretch || taken.some((gap) => before.to <= gap.from && gap.to <= span.from))
    if (isApart) stretch++
    return { ...span, stretch }
  })
}

/** Windows less stretches that are taken by tasks at fixed times. */
export function windowsWithout(
  axis: TickAxis,
  windows: Windows,
  taken: readonly { readonly from: number; readonly to: number }[],
): Windows {
  return taken.length === 0 ? windows : windowsOf(axis, withoutSpans(spansOf(windows), taken))
}

/** For each day how many days before it have hours of anybody. */
export function workingDaysBefore(axis: TickAxis, windows: readonly Windows[]): Int32Array {
  const days = axis.dayStart.length
  const before = new Int32Array(days + 1)
  for (let day = 0; day < days; day++) {
    const isWorked = windows.some(({ from, firstOfDay }) => {
      const first = from[firstOfDay[day] as number]
      return first !== undefined && dayOf(axis, first) === day
    })
    before[day + 1] = (before[day] as number) + (isWorked ? 1 : 0)
  }
  return before
}

/** When both can be there. */
export function commonWindows(axis: TickAxis, one: Windows, other: Windows): Windows {
  const spans: Span[] = []
  for (let left = 0, right = 0; left < one.from.length && right < other.from.length; ) {
    const from = Math.max(one.from[left] as number, other.from[right] as number)
    const to = Math.min(one.to[left] as number, other.to[right] as number)
    const stretch = (one.stretchLast[left] as number) * 65_536 + (other.stretchLast[right] as number)
    if (from < to) spans.push({ from, to, stretch })
    if ((one.to[left] as number) < (other.to[right] as number)) left++
    else right++
  }
  return windowsOf(axis, spans)
}

function windowsOf(axis: TickAxis, spans: readonly Span[]): Windows {
  const count = spans.length
  const from = Int32Array.from(spans, (span) => span.from)
  const to = Int32Array.from(spans, (span) => span.to)
  const stretchLast = new Int32Array(count)
  for (let index = count - 1; index >= 0; index--) {
    const goesOn = index + 1 < count && spans[index]?.stretch === spans[index + 1]?.stretch
    stretchLast[index] = goesOn ? (stretchLast[index + 1] as number) : index
  }
  const firstOfDay = new Int32Array(axis.dayStart.length)
  for (let day = 0, index = 0; day < firstOfDay.length; day++) {
    while (index < count && (to[index] as number) <= (axis.dayStart[day] as number)) index++
    firstOfDay[day] = index
  }
  return { from, to, stretchLast, firstOfDay }
}
