import type { DayWindow, Person, ScheduleProblem } from '../model.ts'
import type { WallClock } from './wall-clock.ts'

export const away = 0
export const here = 1
export const atChores = 2

/** For each minute of the clock whether a person can work (`here`), is `away`, or sets up and cleans up (`atChores`). */
export type Presence = Uint8Array

export interface Presences {
  readonly clock: WallClock
  /** Null is the site itself, for work that needs nobody. */
  readonly of: (person: Person | null) => Presence
}

export function createPresences(problem: ScheduleProblem, clock: WallClock): Presences {
  const known = new Map<Person | null, Presence>()
  return {
    clock,
    of: (person) => {
      const presence = known.get(person) ?? presenceOf(problem, clock, person)
      known.set(person, presence)
      return presence
    },
  }
}

function presenceOf(problem: ScheduleProblem, clock: WallClock, person: Person | null): Presence {
  const there = new Uint8Array(clock.to - clock.from)
  for (const { day, from, to, minute } of clock.stretches) {
    const ofStretch = there.subarray(from - clock.from, to - clock.from)
    const mark = (window: DayWindow, value: number): void => {
      ofStretch.fill(value, Math.max(0, window.from - minute), Math.max(0, window.to - minute))
    }
    for (const window of windowsOn(problem, person, day)) mark(window, here)
    for (const pause of person?.breaks ?? []) mark(pause, away)
  }
  markChores(problem, clock, there)
  return there
}

/** Where site hours and the person's own windows of the day overlap; breaks not yet taken out. */
function windowsOn(problem: ScheduleProblem, person: Person | null, day: number): readonly DayWindow[] {
  if (problem.clock.kind !== 'site') return []
  const date = new Date(day * 86_400_000)
  const name = date.toISOString().slice(0, 10)
  const weekday = date.getUTCDay()
  if (problem.clock.holidays.includes(name) || person?.daysOff.includes(name) === true) return []
  const site = problem.clock.siteHours[weekday] ?? []
  if (person === null) return site
  const own = person.partDays.find((part) => part.date === name)?.windows ?? person.week[weekday] ?? []
  return site.flatMap((open) => {
    return own.map((window) => ({ from: Math.max(open.from, window.from), to: Math.min(open.to, window.to) }))
  })
}

/** The first and the last minutes that are worked each local day. */
function markChores(problem: ScheduleProblem, clock: WallClock, there: Presence): void {
  const { dailyChores, alarmsRestoredDaily } = problem.rules
  const alarms = problem.rooms.some((room) => room.alarm) ? (alarmsRestoredDaily?.minutes ?? 0) : 0
  const before = (dailyChores?.setUp ?? 0) + alarms
  const after = (dailyChores?.cleanUp ?? 0) + alarms
  const { stretches } = clock
  for (let index = 0; index < stretches.length; ) {
    const first = index
    while (index < stretches.length && stretches[index]?.day === stretches[first]?.day) index++
    const ofDay = there.subarray(
      (stretches[first]?.from ?? 0) - clock.from,
      (stretches[index - 1]?.to ?? 0) - clock.from,
    )
    for (
      let left = before, at = ofDay.indexOf(here);
      left > 0 && at >= 0;
      left--, at = ofDay.indexOf(here, at)
    )
      ofDay[at] = atChores
    for (
      let left = after, at = ofDay.lastIndexOf(here);
      left > 0 && at >= 0;
      left--, at = ofDay.lastIndexOf(here, at)
    )
      ofDay[at] = atChores
  }
}
