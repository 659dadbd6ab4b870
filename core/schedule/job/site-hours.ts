import type { Job } from '../../project/job.ts'
import type { CrewMember, Weekday } from '../../project/shop-records.ts'
import { dateOfDay, dayOfDate, localTimeIn } from '../calendar.ts'
import {
  type DayWindow,
  type EpochMinutes,
  epochMinutes,
  type Person,
  type PlanSegment,
  type SiteClock,
  type Week,
} from '../model.ts'

/** Sunday first, as the engine counts. */
const engineDays: readonly Weekday[] = [
  'sunday',
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
]

interface Hours {
  readonly from: string
  readonly to: string
}

/** Minutes after midnight of `08:30`. */
function minuteOfDay(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number)
  return hours * 60 + minutes
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

export function personOf(
  member: CrewMember,
  grid: number,
  burdenPercent: number,
  busy: readonly PlanSegment[],
): Person {
  const week = engineDays.map((day) => windowsOnGrid(member.week[day], grid, false)) as unknown as Week
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
  const opens = localInstant(`${header.startsOn}T${houseRules.siteHours.from}`, header.timeZone)
  const from = now === null ? opens : Math.max(opens, localInstant(now, header.timeZone))
  return {
    kind: 'site',
    timeZone: header.timeZone,
    start: epochMinutes(Math.ceil(from / grid) * grid),
    siteHours: engineDays.map(() => hours) as unknown as Week,
    holidays: houseRules.holidays,
  }
}

/** Minutes since 1970 UTC of a local moment like `2027-03-31T08:30`. */
export function localInstant(moment: string, timeZone: string): EpochMinutes {
  const [date = '', time = '00:00'] = moment.split('T')
  return epochMinutes(localTimeIn(timeZone).instantOf(dayOfDate(date), minuteOfDay(time)))
}

/** Writes instants as local moments of one time zone. */
export function localMoments(timeZone: string): (instant: number) => string {
  const local = localTimeIn(timeZone)
  const dates = new Map<number, string>()
  const times = new Map<number, string>()
  return (instant) => {
    const day = local.dayAt(instant)
    const date = dates.get(day) ?? dateOfDay(day)
    dates.set(day, date)
    const minute = Math.round(instant + local.offsetAt(instant) - day * 1440)
    const time = times.get(minute) ?? `${two(Math.floor(minute / 60))}:${two(minute % 60)}`
    times.set(minute, time)
    return `${date}T${time}`
  }
}

function two(value: number): string {
  return String(value).padStart(2, '0')
}
