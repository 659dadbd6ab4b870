import { addDays, dateOfDay, dayOfDate, type LocalDate, weekdayOf } from './local-date.ts'

/** A day without work, under the name it goes by. */
interface Holiday {
  readonly date: LocalDate
  readonly name: string
}

interface YearlyDay {
  readonly name: string
  readonly in: (year: number) => LocalDate
}

const onDate =
  (monthAndDay: string) =>
  (year: number): LocalDate =>
    `${year}-${monthAndDay}`

/** The n-th weekday of a month (1 to 12); Sunday is 0. */
const onWeekday = (nth: number, weekday: number, month: number) => (year: number) => {
  const first = dayOfDate(`${year}-${String(month).padStart(2, '0')}-01`)
  return dateOfDay(first + ((weekday - weekdayOf(first) + 7) % 7) + 7 * (nth - 1))
}

const [monday, thursday] = [1, 4]

/** Dates: 5 U.S.C. 6103(a). That these six of its eleven are the ones on which shops of the trade are closed is common practice. */
const yearlyDays: readonly YearlyDay[] = [
  { name: 'New Year’s Day', in: onDate('01-01') },
  { name: 'Memorial Day', in: (year) => addDays(onWeekday(1, monday, 6)(year), -7) },
  { name: 'Independence Day', in: onDate('07-04') },
  { name: 'Labor Day', in: onWeekday(1, monday, 9) },
  { name: 'Thanksgiving Day', in: onWeekday(4, thursday, 11) },
  { name: 'Christmas Day', in: onDate('12-25') },
]

/**
 * The six usual holidays of the United States between two dates, both included, in their order. One on a Saturday is kept on the Friday before it, one on a Sunday on
 * the Monday after it (5 U.S.C. 6103(b); Executive Order 11582); the day itself is among them too, for shops that work on weekends.
 */
export function usualHolidays(from: LocalDate, until: LocalDate): readonly Holiday[] {
  // New Year's Day of the year after may be kept before it begins.
  const years = Array.from({ length: yearOf(until) - yearOf(from) + 2 }, (_, index) => yearOf(from) + index)
  return years
    .flatMap((year) => yearlyDays.flatMap((day) => daysKept(day.name, day.in(year))))
    .filter(({ date }) => date >= from && date <= until)
    .toSorted((one, other) => (one.date < other.date ? -1 : 1))
}

function yearOf(date: LocalDate): number {
  return Number(date.slice(0, 4))
}

function daysKept(name: string, date: LocalDate): readonly Holiday[] {
  const weekday = weekdayOf(dayOfDate(date))
  const away = weekday === 6 ? -1 : weekday === 0 ? 1 : 0
  const kept = away === 0 ? [] : [{ date: addDays(date, away), name: `${name}, kept` }]
  return [{ date, name }, ...kept]
}

/** From the day a job may begin until the end of the year after: as far ahead as anybody plans a house. */
export function holidaysAhead(startsOn: LocalDate): readonly Holiday[] {
  return usualHolidays(startsOn, `${yearOf(startsOn) + 1}-12-31`)
}

/** Days without work with more of them: each once, in their order. */
export function withDaysOff(dates: readonly LocalDate[], more: readonly LocalDate[]): LocalDate[] {
  return [...new Set([...dates, ...more])].toSorted()
}
