/** `2026-03-29`, in the site's own time zone. */
export type LocalDate = string

const millisecondsPerDay = 86_400_000

/** Days since 1970-01-01 of a date like `2026-03-29`. */
export function dayOfDate(date: LocalDate): number {
  return Date.parse(`${date}T00:00Z`) / millisecondsPerDay
}

/** @param day days since 1970-01-01, as `dayOfDate` counts them */
export function dateOfDay(day: number): LocalDate {
  return new Date(day * millisecondsPerDay).toISOString().slice(0, 10)
}

/** The date so many days later, or earlier where `days` is negative. */
export function addDays(date: LocalDate, days: number): LocalDate {
  return dateOfDay(dayOfDate(date) + days)
}

/** 1970-01-01 was a Thursday; Sunday is 0. */
export function weekdayOf(day: number): number {
  return (((day + 4) % 7) + 7) % 7
}
