import type { Job } from '../../project/job.ts'
import type { CrewMember, Weekday } from '../../project/shop-records.ts'
import { epochMinutes } from '../../time/instant.ts'
import { instantOf, minuteOfDay } from '../../time/site-moment.ts'
import type { DayWindow, Person, PlanSegment, SiteClock, WeekWindows } from '../model.ts'

/** Sunday first, as the engine counts. */
/** Windows of each day in the order of the engine, Sunday first. */
function weekOf(windows: (day: Weekday) => readonly DayWindow[]): WeekWindows {
  return [
    windows('sunday'),
    windows('monday'),
    windows('tuesday'),
    windows('wednesday'),
    windows('thursday'),
    windows('friday'),
    windows('saturday'),
  ]
}

interface Hours {
  readonly from: string
  readonly to: string
}

/** Working hours shrink to the grid, breaks grow to it: nobody is planned when they are not there. */
function windowsOnGrid(hours: readonly Hours[], grid: number, grows: boolean): readonly DayWindow[] {
  return hours.flatMap(({ from, to }) => {
    const [begin, end] = [minuteOfDay(from) / grid, minuteOfDay(to) / grid]
    const window = grows
      ? { from: Math.floor(begin) * grid, to: Math.min(1440, Math.ceil(end) * grid) }
      : { from: Math.ceil(begin) * grid, to: Math.floor(end) * grid }
    return window.from < window.to ? [window] : []
  })
}

/** Somebody of the crew as the engine reads them: hours on the grid, less other jobs; the wage with burden. */
export function personOf(
  member: CrewMember,
  grid: number,
  burdenPercent: number,
  busy: readonly PlanSegment[],
): Person {
  const week = weekOf((day) => windowsOnGrid(member.week[day], grid, false))
  const dates = [...new Set(member.partDays.map((part) => part.date))]
  return {
    id: member.id,
    skills: member.skills,
    week,
    breaks: windowsOnGrid(member.breaks, grid, true),
    daysOff: member.daysOff,
    partDays: dates.map((date) => ({
      date,
      windows: windowsOnGrid(
        member.partDays.filter((part) => part.date === date),
        grid,
        false,
      ),
    })),
    busy,
    centsPerHour: member.wageCents * (1 + burdenPercent / 100),
  }
}

/** `now` is a local moment or null; work starts then, or when the site opens on the first day, whichever is later. */
export function siteClock(job: Job, now: string | null, grid: number): Extract<SiteClock, { kind: 'site' }> {
  const { header, houseRules } = job
  const hours = windowsOnGrid([houseRules.siteHours], grid, false)
  const opens = instantOf(`${header.startsOn}T${houseRules.siteHours.from}`, header.timeZone)
  const from = now === null ? opens : Math.max(opens, instantOf(now, header.timeZone))
  return {
    kind: 'site',
    timeZone: header.timeZone,
    start: epochMinutes(Math.ceil(from / grid) * grid),
    siteHours: weekOf(() => hours),
    holidays: houseRules.holidays,
  }
}
