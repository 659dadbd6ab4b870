import { expect, test } from 'vitest'
import { presentWindows, subtractWindows, withoutChores } from '../../core/schedule/calendar.ts'
import { verifyPlan } from '../../core/schedule/judge/verify.ts'
import { createSearch } from '../../core/schedule/tries/search.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { dateOfDay, dayOfDate } from '../../core/time/local-date.ts'
import { localTimeIn } from '../../core/time/local-time.ts'
import { link, person, problem, task, weekOf } from './builders.ts'

const utc = (year: number, month: number, day: number, hour: number, minute = 0): number =>
  Date.UTC(year, month - 1, day, hour, minute) / 60_000

test('eight in the morning in New York is an hour earlier by UTC after the clocks go forward', () => {
  // 2026-03-08: clocks go from 2:00 EST (UTC-5) to 3:00 EDT (UTC-4)
  const local = localTimeIn('America/New_York')
  expect(local.instantOf(dayOfDate('2026-03-07'), 8 * 60)).toBe(utc(2026, 3, 7, 8 + 5))
  expect(local.instantOf(dayOfDate('2026-03-08'), 8 * 60)).toBe(utc(2026, 3, 8, 8 + 4))
  expect(local.instantOf(dayOfDate('2026-03-09'), 8 * 60)).toBe(utc(2026, 3, 9, 8 + 4))
})

test('a minute that the clocks jump over becomes the first one after the jump', () => {
  const local = localTimeIn('America/New_York')
  expect(local.instantOf(dayOfDate('2026-03-08'), 2 * 60 + 30)).toBe(utc(2026, 3, 8, 3 + 4))
})

test('of a minute that comes twice in autumn the first one counts', () => {
  // 2026-11-01: 1:30 EDT (UTC-4), then again 1:30 EST (UTC-5)
  const local = localTimeIn('America/New_York')
  expect(local.instantOf(dayOfDate('2026-11-01'), 90)).toBe(utc(2026, 11, 1, 1 + 4, 30))
  expect(local.dayAt(utc(2026, 11, 2, 4, 59))).toBe(dayOfDate('2026-11-01'))
  expect(dateOfDay(local.dayAt(utc(2026, 11, 2, 5)))).toBe('2026-11-02')
})

test('drying over the night of the change is an hour shorter on the clock', () => {
  // Sat 2026-03-07, crew works weekends here: coat 1 Sat 15-16 EST, dries 16 h of real time.
  // 16:00 EST = 21:00 UTC; + 16 h = 13:00 UTC Sunday = 9:00 EDT, not 8:00.
  const everyDay = [{ from: 8 * 60, to: 16 * 60 }]
  const week = [everyDay, everyDay, everyDay, everyDay, everyDay, everyDay, everyDay] as const
  const job = problem({
    clock: {
      kind: 'site',
      timeZone: 'America/New_York',
      start: epochMinutes(utc(2026, 3, 7, 15 + 5)),
      siteHours: week,
      holidays: [],
    },
    people: [person('Ann', { week })],
    tasks: [task('coat 1'), task('coat 2')],
    links: [link('coat 1', 'coat 2', 16 * 60)],
  })
  const search = createSearch(job, 1)
  search.step(20)
  const plan = search.best()
  if (plan === undefined) throw new Error('there is no plan')
  expect(plan.tasks[1]?.start).toBe(utc(2026, 3, 8, 9 + 4))
  expect(verifyPlan(job, plan)).toEqual([])
})

test('breaks are cut out of the day and chores off both its ends', () => {
  const windows = subtractWindows([{ from: 480, to: 960 }], [{ from: 720, to: 750 }])
  expect(windows).toEqual([
    { from: 480, to: 720 },
    { from: 750, to: 960 },
  ])
  // 220 minutes at the end are the afternoon's 210 and the last 10 of the morning
  expect(withoutChores(windows, { before: 20, after: 220 })).toEqual([
    { from: 480 + 20, to: 720 - (220 - 210) },
  ])
})

test('holidays, days off and part days overrule the week', () => {
  const clock = {
    kind: 'site',
    timeZone: 'UTC',
    start: epochMinutes(0),
    siteHours: weekOf(9, 18),
    holidays: ['2026-03-03'],
  } as const
  const ann = person('Ann', {
    daysOff: ['2026-03-04'],
    partDays: [{ date: '2026-03-05', windows: [{ from: 540, to: 660 }] }],
  })
  const on = (date: string) => presentWindows(clock, ann, dayOfDate(date))
  expect(on('2026-03-02')).toEqual([{ from: 540, to: 960 }])
  expect(on('2026-03-03')).toEqual([])
  expect(on('2026-03-04')).toEqual([])
  expect(on('2026-03-05')).toEqual([{ from: 540, to: 660 }])
})
