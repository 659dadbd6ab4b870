import { expect, test } from 'vitest'
import type { CrewMemberId } from '../../core/project/shop-records.ts'
import type { RoomId } from '../../core/project/sketch-records.ts'
import { workOrderHtml } from '../../core/work-order/html.ts'
import { densityOf, weeksByPage } from '../../core/work-order/pages/week-fit.ts'
import {
  type ChosenWeek,
  chosenDay,
  chosenRooms,
  chosenWeeks,
  wholeJob,
} from '../../core/work-order/paper-choice.ts'
import { mondayOf } from '../../core/work-order/site-days.ts'
import { sampleOrder } from './sample-order.ts'

const order = sampleOrder()
const [ada, ben] = ['ada', 'ben'] as readonly string[] as readonly CrewMemberId[]
if (ada === undefined || ben === undefined) throw new Error('two people')

test('a week begins on its Monday, over the ends of months and years too', () => {
  expect(['2027-03-29', '2027-04-04', '2027-04-05', '2027-01-01'].map(mondayOf)).toEqual([
    '2027-03-29',
    '2027-03-29',
    '2027-04-05',
    '2026-12-28',
  ])
})

test('a week sheet for each person holds that person’s days, and the alarms of the days that are theirs', () => {
  const weeks = chosenWeeks(order.weeks, { ...wholeJob, people: [ada, ben] })
  expect(weeks.map(({ person, week }) => [person, week.days.map(({ date }) => date)])).toEqual([
    ['Ada', ['2027-03-29', '2027-03-30']],
    ['Ben', ['2027-03-29']],
  ])
  expect(weeks.map(({ week }) => week.days.map(({ chores }) => chores.length))).toEqual([[1, 1], [0]])
  expect(chosenWeeks(order.weeks, wholeJob).map(({ person }) => person)).toEqual([null])
  expect(chosenWeeks(order.weeks, { ...wholeJob, weeks: ['2027-04-05'] })).toEqual([])
})

test('today is the day asked for, the next one with work, or the last', () => {
  const on = (day: string | null) => chosenDay(order.days, { ...wholeJob, day })?.date
  expect([on(null), on('2027-03-30'), on('2027-03-01'), on('2027-06-01')]).toEqual([
    '2027-03-29',
    '2027-03-30',
    '2027-03-29',
    '2027-03-30',
  ])
})

test('only the rooms asked for are printed', () => {
  const choice = { ...wholeJob, rooms: ['study' as RoomId] }
  expect(chosenRooms(order.rooms, choice).map(({ name }) => name)).toEqual(['Study'])
  const page = workOrderHtml(order, 'letter', ['rooms'], choice)
  // Its door leads to the other room, which has no sheet of its own.
  expect(page.match(/<h2>/g)).toHaveLength(1)
})

/** A week in which so many people have so many passes in each half of its five days. */
function busyWeek(people: number, passes: number, days = 5): ChosenWeek {
  const half = [
    {
      roomSetId: 'study' as RoomId,
      roomName: 'Dining room',
      passes: Array.from({ length: passes }, (_, index) => `Woodwork, coat ${index}: doors and trim`),
    },
  ]
  const person = { crewMemberId: ada as CrewMemberId, name: 'Ada', cans: [], cautions: [] }
  return {
    person: null,
    week: {
      monday: '2027-03-29',
      days: Array.from({ length: days }, (_, index) => ({
        date: `2027-04-0${index + 1}`,
        people: Array.from({ length: people }, () => ({ ...person, morning: half, afternoon: half })),
        chores: [],
        choresOwner: null,
      })),
    },
  }
}

test('the fuller a week, the smaller its type; short weeks share a page and full ones do not', () => {
  expect([busyWeek(2, 1), busyWeek(6, 2), busyWeek(6, 3)].map((week) => densityOf([week]))).toEqual([
    'roomy',
    'close',
    'closest',
  ])
  const pages = weeksByPage([busyWeek(6, 3), busyWeek(2, 1, 2), busyWeek(1, 1, 1)])
  expect(pages.map((page) => page.length)).toEqual([1, 2])
})
