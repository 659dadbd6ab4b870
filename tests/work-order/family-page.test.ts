import ICAL from 'ical.js'
import { expect, test } from 'vitest'
import type { RoomId } from '../../core/project/sketch-records.ts'
import { familyCalendar } from '../../core/work-order/family-calendar.ts'
import { readyAfter, stretchWords } from '../../core/work-order/family-page.ts'
import type { FamilyPage } from '../../core/work-order/family-types.ts'
import { workOrderHtml } from '../../core/work-order/html.ts'
import { workOrder } from '../../core/work-order/work-order.ts'
import { sampleInput, sampleOrder } from './sample-order.ts'

const order = sampleOrder()

test('the household reads which room when, when it is ready again, and what to take out', () => {
  // The last coat ends at 10:25 on the second day; the hand-written plan says nothing of drying.
  expect(
    order.family.rooms.map(({ name, stretches, readyAt, moveBefore }) => [
      name,
      stretches,
      readyAt,
      moveBefore,
    ]),
  ).toEqual([
    [
      'Study',
      [{ from: '2027-03-29', to: '2027-03-30' }],
      { date: '2027-03-30', half: 'noon' },
      ['papers, screens, small things'],
    ],
    ['Parlour & library <with "bay">', [], null, ['papers, screens, small things']],
  ])
})

test('a room is ready at the next noon, evening or morning after it is dry, never before', () => {
  expect(
    ['2027-03-30T12:00', '2027-03-30T12:01', '2027-03-30T18:00', '2027-03-31T23:10'].map(readyAfter),
  ).toEqual([
    { date: '2027-03-30', half: 'noon' },
    { date: '2027-03-30', half: 'evening' },
    { date: '2027-03-30', half: 'evening' },
    { date: '2027-04-01', half: 'morning' },
  ])
})

test('stretches are those in which the plan has the room out of use', () => {
  const input = sampleInput()
  const roomsOutOfUse = [
    { roomId: 'study' as RoomId, from: '2027-04-08T08:00', to: '2027-04-09T20:00' },
    { roomId: 'study' as RoomId, from: '2027-03-29T08:00', to: '2027-03-31T11:00' },
  ]
  const { family } = workOrder(input.job, input.takeoff, input.specification, input.estimate, {
    ...input.plan,
    roomsOutOfUse,
  })
  expect(family.rooms[0]?.stretches.map((each) => stretchWords(each, 'imperial'))).toEqual([
    'Mar\u00a029–31',
    'Apr\u00a08–9',
  ])
  expect(family.rooms[0]?.readyAt).toEqual({ date: '2027-04-10', half: 'morning' })
  expect(stretchWords({ from: '2027-03-29', to: '2027-04-02' }, 'metric')).toBe('29\u00a0Mar–2\u00a0Apr')
})

test('nothing internal is on the page or in its calendar: no price, hour, wage, crew name or product', () => {
  const { job, estimate } = sampleInput()
  const page = workOrderHtml(order, 'letter', ['family'])
  const calendar = familyCalendar(job, order.family, '2027-03-26T18:00')
  const products = estimate.materials.map(({ productName }) => productName)
  expect(products.length).toBeGreaterThan(1)
  const text = page.slice(page.indexOf('<body>')) + calendar
  for (const word of [...products, 'Ada', 'Ben', '$', 'person-hour', 'wage', '8:15'])
    expect(text).not.toContain(word)
})

test('the calendar of the household has a whole-day event for each time a room is taken', () => {
  const { job } = sampleInput()
  const family: FamilyPage = {
    ...order.family,
    rooms: order.family.rooms.map((room) => ({
      ...room,
      stretches: [...room.stretches, { from: '2027-04-12', to: '2027-04-12' }],
    })),
  }
  const events = new ICAL.Component(ICAL.parse(familyCalendar(job, family, '2027-03-26T18:00')))
    .getAllSubcomponents('vevent')
    .map((each) => new ICAL.Event(each))
  expect(
    events.map(({ summary, startDate, endDate }) => [summary, startDate.toString(), endDate.toString()]),
  ).toEqual([
    ['Study: painters at work', '2027-03-29', '2027-03-31'],
    ['Study: painters at work', '2027-04-12', '2027-04-13'],
    ['Parlour & library <with "bay">: painters at work', '2027-04-12', '2027-04-13'],
  ])
  expect(events[1]?.description).toBe(
    'Ready again: Tue Mar 30, noon.\nTake out before: papers, screens, small things.',
  )
  expect(new Set(events.map(({ uid }) => uid)).size).toBe(3)
})
