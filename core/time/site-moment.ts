import { type EpochMinutes, epochMinutes } from './instant.ts'
import { dateOfDay, dayOfDate } from './local-date.ts'
import { localTimeIn } from './local-time.ts'

/** A moment on site as it is written everywhere, `2027-03-31T08:30`. */
export type SiteMoment = string

/** Minutes after midnight of `08:30`. */
export function minuteOfDay(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number)
  return hours * 60 + minutes
}

/** Minutes since 1970 UTC of a moment in an IANA zone; a date alone is its midnight. */
export function instantOf(moment: SiteMoment, timeZone: string): EpochMinutes {
  const [date = '', time = '00:00'] = moment.split('T')
  return epochMinutes(localTimeIn(timeZone).instantOf(dayOfDate(date), minuteOfDay(time)))
}

/** Writes instants as local moments of one time zone. */
export function momentsIn(timeZone: string): (instant: number) => string {
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

/** The moment of an instant (minutes since 1970 UTC) in an IANA zone. */
export function momentOf(instant: number, timeZone: string): SiteMoment {
  return momentsIn(timeZone)(instant)
}

/** Wall-clock time goes on through nights and through the changes of summer time. `elapsed` in minutes. */
export function momentAfter(moment: SiteMoment, elapsed: number, timeZone: string): SiteMoment {
  return momentOf(instantOf(moment, timeZone) + Math.ceil(elapsed), timeZone)
}

/** The date of a moment. */
export function dateOf(moment: SiteMoment): string {
  return moment.slice(0, 10)
}

/** Local date and time to the minute of a moment of the machine's clock, in the machine's own zone. */
export function machineMoment(at: Date): SiteMoment {
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`
  return `${day}T${two(at.getHours())}:${two(at.getMinutes())}`
}
