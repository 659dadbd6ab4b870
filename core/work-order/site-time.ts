import { dateOfDay, dayOfDate, localTimeIn } from '../schedule/calendar.ts'

/** A moment on site as it is written everywhere, `2027-03-31T08:30`. */
export type SiteMoment = string

/** Minutes since 1970 UTC of a local moment in an IANA zone. */
export function instantOf(moment: SiteMoment, timeZone: string): number {
  const [date = '', time = '00:00'] = moment.split('T')
  const [hours = 0, minutes = 0] = time.split(':').map(Number)
  return localTimeIn(timeZone).instantOf(dayOfDate(date), hours * 60 + minutes)
}

export function momentOf(instant: number, timeZone: string): SiteMoment {
  const local = localTimeIn(timeZone)
  const day = local.dayAt(instant)
  const minute = instant + local.offsetAt(instant) - day * 1440
  return `${dateOfDay(day)}T${two(Math.floor(minute / 60))}:${two(minute % 60)}`
}

/** Wall-clock time goes on through nights and through the changes of summer time. */
export function momentAfter(moment: SiteMoment, elapsed: number, timeZone: string): SiteMoment {
  return momentOf(instantOf(moment, timeZone) + Math.ceil(elapsed), timeZone)
}

function two(value: number): string {
  return String(value).padStart(2, '0')
}
