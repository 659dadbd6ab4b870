import { expect, test } from 'vitest'
import { usualHolidays } from '../../core/time/usual-holidays.ts'

/**
 * Checked against the dates that the U.S. Office of Personnel Management publishes as federal holidays of 2026 and 2027 (from memory), days kept in place of a weekend
 * among them.
 */
test('the usual holidays fall on the published dates, and on the weekday they are kept on', () => {
  const days = usualHolidays('2026-01-01', '2027-12-31').map(({ date, name }) => `${date} ${name}`)
  expect(days).toEqual([
    '2026-01-01 New Year’s Day',
    '2026-05-25 Memorial Day',
    '2026-07-03 Independence Day, kept',
    '2026-07-04 Independence Day',
    '2026-09-07 Labor Day',
    '2026-11-26 Thanksgiving Day',
    '2026-12-25 Christmas Day',
    '2027-01-01 New Year’s Day',
    '2027-05-31 Memorial Day',
    '2027-07-04 Independence Day',
    '2027-07-05 Independence Day, kept',
    '2027-09-06 Labor Day',
    '2027-11-25 Thanksgiving Day',
    '2027-12-24 Christmas Day, kept',
    '2027-12-25 Christmas Day',
    '2027-12-31 New Year’s Day, kept',
  ])
})

test('only days between the two dates are told', () => {
  expect(usualHolidays('2026-12-25', '2026-12-25').map(({ name }) => name)).toEqual(['Christmas Day'])
  expect(usualHolidays('2026-12-26', '2026-12-31')).toEqual([])
})
