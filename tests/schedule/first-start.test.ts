import { expect, test } from 'vitest'
import { tableOf } from '../../core/project/empty-job.ts'
import { crewDays, firstStart, type PersonDays } from '../../core/schedule/jobs/first-start.ts'
import { randomStream } from '../../core/schedule/random.ts'
import { addDays } from '../../core/time/local-date.ts'
import { instantOf } from '../../core/time/site-moment.ts'
import { plainJob } from '../fixtures/plain-room.ts'

const monday = '2027-03-29'

/** A full day is 8 hours; `-` is at another job, `.` a day off. */
function person(name: string, days: string): PersonDays {
  return {
    name,
    minutes: [...days].map((day) => (day === '.' ? 0 : 480)),
    isAway: [...days].map((day) => day === '-'),
  }
}

const ada = person('Ada', '88--8..88888..88888')
const ben = person('Ben', '-8888..88888..88888')
const ask = { people: 1, mayLeave: false, from: monday }

test('80 hours of two people are five days from the first on which both stay', () => {
  // Ada leaves on Wednesday and Thursday; from Friday on both are there: Fri, Mon, Tue, Wed, Thu.
  expect(firstStart([ada, ben], { ...ask, people: 2, minutes: 80 * 60 })).toEqual({
    startsOn: addDays(monday, 4),
    finishesOn: addDays(monday, 10),
    names: ['Ada', 'Ben'],
  })
})

test('who may leave begins sooner: Tuesday 16 hours, Wednesday and Thursday 8 each, Friday and Monday 16, Tuesday the rest', () => {
  expect(firstStart([ada, ben], { ...ask, people: 2, minutes: 80 * 60, mayLeave: true })).toEqual({
    startsOn: addDays(monday, 1),
    finishesOn: addDays(monday, 8),
    names: ['Ben', 'Ada'],
  })
})

test('one person alone is the one who can, and more than there are never can', () => {
  expect(firstStart([ada, ben], { ...ask, minutes: 16 * 60 })?.names).toEqual(['Ada'])
  expect(firstStart([ada, ben], { ...ask, minutes: 17 * 60 })).toEqual({
    startsOn: addDays(monday, 1),
    finishesOn: addDays(monday, 3),
    names: ['Ben'],
  })
  expect(firstStart([ada, ben], { ...ask, people: 3, minutes: 60 })).toBeNull()
  expect(firstStart([ada, ben], { ...ask, minutes: 1000 * 60 })).toBeNull()
})

test('no earlier day would do, by trying every team on every day', () => {
  const random = randomStream(3)
  for (let round = 0; round < 60; round++) {
    const days = Array.from({ length: 4 }, (_, index) =>
      person(`P${index}`, Array.from({ length: 15 }, () => '88-8.'[Math.floor(random() * 5)]).join('')),
    )
    const [people, minutes] = [1 + Math.floor(random() * 3), 480 * (1 + Math.floor(random() * 6))]
    expect(firstStart(days, { ...ask, people, minutes })?.startsOn ?? null).toBe(
      byTrying(days, people, minutes),
    )
  }
})

function byTrying(days: readonly PersonDays[], people: number, minutes: number): string | null {
  const teams = Array.from({ length: 2 ** days.length }, (_, bits) =>
    days.filter((_day, index) => (bits >> index) % 2 === 1),
  ).filter(({ length }) => length === people)
  for (let first = 0; first < 15; first++) {
    for (let last = first; last < 15; last++) {
      const can = teams.some(
        (team) =>
          team.every(
            (each) => each.minutes[first] !== 0 && !each.isAway.slice(first, last + 1).includes(true),
          ) &&
          team.reduce(
            (sum, each) => sum + each.minutes.slice(first, last + 1).reduce((all, one) => all + one, 0),
            0,
          ) >= minutes,
      )
      if (can) return addDays(monday, first)
    }
  }
  return null
}

test('days of the crew are those of their weeks, less setting up and leaving, days off and breaks', () => {
  const job = plainJob()
  const [first] = Object.values(job.crew)
  if (first === undefined) throw new Error('nobody on the crew')
  const hours = [{ from: '08:00', to: '16:30' }]
  const week = { ...first.week, monday: hours, tuesday: hours, wednesday: [], sunday: [] }
  const breaks = [{ from: '12:00', to: '12:30' }]
  const member = { ...first, name: 'Ada', week, breaks, daysOff: ['2027-03-30'], partDays: [] }
  const houseRules = {
    ...job.houseRules,
    siteHours: { from: '07:00', to: '18:00' },
    setUpMinutes: 15,
    cleanUpMinutes: 20,
  }
  const shop = { ...job, houseRules, crew: tableOf([member]) }
  const { timeZone } = job.header
  const busy = {
    [first.id]: [
      {
        start: instantOf('2027-04-05T08:00', timeZone),
        end: instantOf('2027-04-05T09:00', timeZone),
      },
    ],
  }
  const [days] = crewDays(shop, busy, monday, 8)
  expect(days?.name).toBe('Ada')
  // Monday 8:00 to 16:30 is 8 h 30 min, less 30 min of lunch, 15 to set up and 20 to leave.
  expect(days?.minutes[0]).toBe(510 - 30 - 15 - 20)
  expect([days?.minutes[1], days?.minutes[2]]).toEqual([0, 0])
  expect(days?.isAway).toEqual([false, false, false, false, false, false, false, true])
})
