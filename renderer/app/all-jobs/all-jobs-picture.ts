import type { BookPerson, DoubleBooking } from '../../../core/schedule/jobs/book-people.ts'
import { dateOfDay, dayOfDate, weekdayOf } from '../../../core/time/local-date.ts'
import { localTimeIn } from '../../../core/time/local-time.ts'

/** A stay at a job as it is drawn: places in days from the first one drawn. */
interface DrawnStay {
  readonly jobKey: string
  readonly from: number
  readonly to: number
  readonly date: string
}

interface DrawnPerson {
  readonly name: string
  readonly stays: readonly DrawnStay[]
  /** Where they are at two jobs at once. */
  readonly shared: readonly { readonly from: number; readonly to: number }[]
}

export interface AllJobsPicture {
  readonly firstDay: number
  readonly days: number
  readonly people: readonly DrawnPerson[]
}

/** Hours that a day is drawn for; what lies before or after is drawn at its edge. */
const morning = 6 * 60
const evening = 18 * 60
/** Days of the past that are drawn at most. */
const daysBack = 28

/**
 * The people of the book by days, from the Monday of the first week with work (at most four weeks back) to the Sunday of the last one. With no
 * work at all it is the week of today.
 *
 * @param today local date
 */
export function allJobsPicture(
  people: readonly BookPerson[],
  shared: readonly DoubleBooking[],
  timeZone: string,
  today: string,
): AllJobsPicture {
  const local = localTimeIn(timeZone)
  const now = dayOfDate(today)
  const worked = people.flatMap(({ stays }) =>
    stays.flatMap(({ from, to }) => [local.dayAt(from), local.dayAt(to)]),
  )
  const firstDay = mondayOf(Math.max(now - daysBack, Math.min(...worked, now + daysBack)))
  const lastDay = mondayOf(Math.max(firstDay, ...worked)) + 6
  const place = (instant: number): number => {
    const day = local.dayAt(instant)
    const minute = instant + local.offsetAt(instant) - day * 1440
    return day - firstDay + Math.min(1, Math.max(0, (minute - morning) / (evening - morning)))
  }
  const drawn = ({ from, to }: { readonly from: number; readonly to: number }) => ({
    from: place(from),
    to: place(to),
  })
  const isIn = ({ to }: { readonly to: number }) => local.dayAt(to) >= firstDay
  return {
    firstDay,
    days: lastDay - firstDay + 1,
    people: people.map(({ name, stays }) => ({
      name,
      stays: stays
        .filter(isIn)
        .map((stay) => ({ jobKey: stay.jobKey, date: dateOfDay(local.dayAt(stay.from)), ...drawn(stay) })),
      shared: shared
        .filter((each) => each.name === name)
        .flatMap(({ stretches }) => stretches.filter(isIn).map(drawn)),
    })),
  }
}

function mondayOf(day: number): number {
  return day - ((weekdayOf(day) + 6) % 7)
}

/** `A` to `Z`, then `A2` and on: what a job is called in the drawing. */
export function jobLetter(index: number): string {
  const round = Math.floor(index / 26)
  return String.fromCharCode(65 + (index % 26)) + (round === 0 ? '' : String(round + 1))
}

/** The stays of one person in words: each job with its first and its last day drawn. */
export function stayWords(
  stays: readonly DrawnStay[],
  titleOf: (jobKey: string) => string,
  dayWords: (date: string) => string,
): string {
  const keys = [...new Set(stays.map(({ jobKey }) => jobKey))]
  if (keys.length === 0) return 'free all the time'
  return keys
    .map((key) => {
      const own = stays.filter(({ jobKey }) => jobKey === key)
      const [first, last] = [own[0]?.date ?? '', own.at(-1)?.date ?? '']
      const days = new Set(own.map(({ date }) => date)).size
      return `${titleOf(key)}, ${days === 1 ? dayWords(first) : `${days} days from ${dayWords(first)} to ${dayWords(last)}`}`
    })
    .join('; ')
}
