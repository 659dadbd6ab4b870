import { dateOfDay, weekdayOf } from '../time/local-date.ts'
import { localTimeIn } from '../time/local-time.ts'
import type { DayWindow, Person, PlanSegment, ScheduleProblem, SiteClock } from './model.ts'

const minutesPerDay = 1440

type SiteHoursClock = Extract<SiteClock, { kind: 'site' }>

/** Times that lie in both lists. */
export function intersectWindows(
  left: readonly DayWindow[],
  right: readonly DayWindow[],
): readonly DayWindow[] {
  return left.flatMap((one) =>
    right.flatMap((other) => {
      const from = Math.max(one.from, other.from)
      const to = Math.min(one.to, other.to)
      return from < to ? [{ from, to }] : []
    }),
  )
}

/** Times of the first list without those of the second. */
export function subtractWindows(
  windows: readonly DayWindow[],
  taken: readonly DayWindow[],
): readonly DayWindow[] {
  return taken.reduce<readonly DayWindow[]>(
    (left, gap) =>
      left.flatMap(({ from, to }) => {
        const pieces = [
          { from, to: Math.min(to, gap.from) },
          { from: Math.max(from, gap.to), to },
        ]
        return gap.to <= from || gap.from >= to
          ? [{ from, to }]
          : pieces.filter((piece) => piece.from < piece.to)
      }),
    windows,
  )
}

/** The person's windows on a local day: own week or part day, within site hours, without breaks; before chores and other jobs are taken off. */
export function presentWindows(clock: SiteHoursClock, person: Person, day: number): readonly DayWindow[] {
  const date = dateOfDay(day)
  if (clock.holidays.includes(date) || person.daysOff.includes(date)) return []
  const own = person.partDays.find((part) => part.date === date)?.windows ?? person.week[weekdayOf(day)] ?? []
  const site = siteWindows(clock, day)
  const windows = subtractWindows(intersectWindows(own, site), person.breaks)
  return [...windows].sort((one, other) => one.from - other.from)
}

function siteWindows(clock: SiteHoursClock, day: number): readonly DayWindow[] {
  return clock.holidays.includes(dateOfDay(day)) ? [] : (clock.siteHours[weekdayOf(day)] ?? [])
}

/** The local days that some stretches touch. */
export function daysTouched(clock: SiteHoursClock, stretches: readonly PlanSegment[]): ReadonlySet<number> {
  const local = localTimeIn(clock.timeZone)
  return new Set(
    stretches.flatMap(({ start, end }) => {
      const [first, last] = [local.dayAt(start), local.dayAt(end - 1)]
      return Array.from({ length: last - first + 1 }, (_, index) => first + index)
    }),
  )
}

/**
 * What other jobs leave of somebody's windows on a local day: the longer part of the day, before or behind them, so that they come and leave
 * once a day, with setting up and leaving of their own. On whole steps of the grid.
 */
export function hoursLeft(
  clock: SiteHoursClock,
  person: Person,
  day: number,
  gridMinutes: number,
): readonly DayWindow[] {
  const windows = presentWindows(clock, person, day)
  const taken = takenOn(clock, person, day)
  if (taken === null) return windows
  const before = intersectWindows(windows, [{ from: 0, to: taken.from }])
  const behind = intersectWindows(windows, [{ from: taken.to, to: minutesPerDay }])
  const part = minutesIn(before) >= minutesIn(behind) ? before : behind
  return part.flatMap(({ from, to }) => {
    const [first, last] = [Math.ceil(from / gridMinutes), Math.floor(to / gridMinutes)]
    return first < last ? [{ from: first * gridMinutes, to: last * gridMinutes }] : []
  })
}

/** From the first to the last work for other jobs on a local day, minutes after midnight; null where there is none. */
function takenOn(clock: SiteHoursClock, { busy }: Person, day: number): DayWindow | null {
  const local = localTimeIn(clock.timeZone)
  const [begin, end] = [local.instantOf(day, 0), local.instantOf(day + 1, 0)]
  const own = busy.filter((stretch) => stretch.start < end && stretch.end > begin)
  if (own.length === 0) return null
  const minute = (instant: number): number =>
    Math.min(minutesPerDay, Math.max(0, instant + local.offsetAt(instant) - day * minutesPerDay))
  return {
    from: Math.min(...own.map((stretch) => minute(stretch.start))),
    to: Math.max(...own.map((stretch) => minute(stretch.end))),
  }
}

export function minutesIn(windows: readonly DayWindow[]): number {
  return windows.reduce((sum, { from, to }) => sum + to - from, 0)
}

/** Minutes of chores at the begin and at the end of each person's day. */
export function choreMinutes(problem: ScheduleProblem): { readonly before: number; readonly after: number } {
  const { dailyChores, alarmsRestoredDaily } = problem.rules
  const alarms = problem.rooms.some((room) => room.alarm) ? (alarmsRestoredDaily?.minutes ?? 0) : 0
  return { before: (dailyChores?.setUp ?? 0) + alarms, after: (dailyChores?.cleanUp ?? 0) + alarms }
}

/** Takes working minutes off the begin and the end of a day's windows, passing over breaks. */
export function withoutChores(
  windows: readonly DayWindow[],
  chores: { readonly before: number; readonly after: number },
): readonly DayWindow[] {
  const total = minutesIn(windows)
  let passed = 0
  return windows.flatMap(({ from, to }) => {
    const begin = Math.max(from, from + chores.before - passed)
    const end = Math.min(to, from + total - chores.after - passed)
    passed += to - from
    return begin < end ? [{ from: begin, to: end }] : []
  })
}

/** The windows in which a person may be put on tasks on a local day. */
export function workingWindows(problem: ScheduleProblem, person: Person, day: number): readonly DayWindow[] {
  const { clock, gridMinutes } = problem
  if (clock.kind === 'unbroken') return [{ from: 0, to: minutesPerDay }]
  return withoutChores(hoursLeft(clock, person, day, gridMinutes), choreMinutes(problem))
}
