import type { LengthUnitSystem } from '../units/length.ts'
import { dayOfDate, weekdayOf } from './local-date.ts'
import type { SiteMoment } from './site-moment.ts'

const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const

/** `Mon Mar 29` where the job is measured in feet, `Mon 29 Mar` where it is measured in metres. */
export function dateWords(date: string, system: LengthUnitSystem): string {
  const [, month = 1, day = 1] = date.split('-').map(Number)
  const weekday = weekdays[weekdayOf(dayOfDate(date))] ?? ''
  const name = months[month - 1] ?? ''
  return system === 'imperial' ? `${weekday} ${name} ${day}` : `${weekday} ${day} ${name}`
}

/** `Fri Apr 9, 2027` or `Fri 9 Apr 2027`. */
export function dateWordsWithYear(date: string, system: LengthUnitSystem): string {
  const year = date.slice(0, 4)
  return system === 'imperial' ? `${dateWords(date, system)}, ${year}` : `${dateWords(date, system)} ${year}`
}

function timeWords(moment: SiteMoment, system: LengthUnitSystem): string {
  return timeOfDayWords(moment.slice(11), system)
}

/** A local time `08:05` as `8:05 am` or `08:05`. */
export function timeOfDayWords(time: string, system: LengthUnitSystem): string {
  if (system === 'metric') return time
  const [hours = 0] = time.split(':').map(Number)
  return `${((hours + 11) % 12) + 1}:${time.slice(3)} ${hours < 12 ? 'am' : 'pm'}`
}

/** `Fri Apr 9, 11:45 am` or `Fri 9 Apr, 11:45`. */
export function momentWords(moment: SiteMoment, system: LengthUnitSystem): string {
  return `${dateWords(moment.slice(0, 10), system)}, ${timeWords(moment, system)}`
}

/** `Mon Mar 29, 8:00 am to 4:30 pm`, the second date only where it is another day. */
export function spanWords(from: SiteMoment, to: SiteMoment, system: LengthUnitSystem): string {
  const end = from.slice(0, 10) === to.slice(0, 10) ? timeWords(to, system) : momentWords(to, system)
  return `${momentWords(from, system)} to ${end}`
}
