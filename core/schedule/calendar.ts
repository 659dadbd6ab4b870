import { dateOfDay, weekdayOf } from '../time/local-date.ts'
import type { DayWindow, Person, ScheduleProblem, SiteClock } from './model.ts'

const minutesPerDay = 1440

type SiteHoursClock = Extract<SiteClock, { kind: 'site' }>

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

/** The person's windows on a local day: own week or part day, within site hours, without breaks; before chores are taken off. */
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
  const total = windows.reduce((sum, { from, to }) => sum + to - from, 0)
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
  if (problem.clock.kind === 'unbroken') return [{ from: 0, to: minutesPerDay }]
  return withoutChores(presentWindows(problem.clock, person, day), choreMinutes(problem))
}
