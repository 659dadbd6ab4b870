import { expect, test } from 'vitest'
import type { RoomId } from '../../core/project/sketch-records.ts'
import { houseDays, roomDayLines } from '../../core/work-order/house-day.ts'
import { fittedLines, housePicture, labelPlace } from '../../core/work-order/house-picture.ts'
import type { JudgedPlan, WorkPlanTask } from '../../core/work-order/work-plan.ts'
import { sampleInput } from './sample-order.ts'

const study = 'study' as RoomId
const { job } = sampleInput()

function task(key: string, startsAt: string, endsAt: string, dryUntil: string | null): WorkPlanTask {
  return {
    key,
    roomId: study,
    stepKeys: [],
    startsAt,
    endsAt,
    segments: [{ startsAt, endsAt }],
    crewMemberIds: [],
    dryUntil,
  }
}

/** Primed on a Friday, dry on Saturday night; given back for a week; coated on the 12th, dry the next noon. */
const plan: JudgedPlan = {
  startsOn: '2027-04-02',
  finishesOn: '2027-04-12',
  tasks: [
    task('prime', '2027-04-02T08:00', '2027-04-02T15:00', '2027-04-03T22:00'),
    task('coat', '2027-04-12T08:00', '2027-04-12T12:00', '2027-04-13T12:00'),
  ],
  roomsOutOfUse: [
    { roomId: study, from: '2027-04-12T00:00', to: '2027-04-13T23:59' },
    { roomId: study, from: '2027-04-02T00:00', to: '2027-04-04T23:59' },
  ],
}

function on(date: string) {
  const day = houseDays(job, plan).on(date).get(study)
  if (day === undefined) throw new Error('the study has no day')
  return day
}

test('a room goes from not begun by work, drying and closed days to given back, and at last it is ready', () => {
  const kinds = ['01', '02', '03', '04', '05', '11', '12', '13', '14', '20'].map(
    (day) => on(`2027-04-${day}`).kind,
  )
  expect(kinds).toEqual([
    'notBegun',
    'inWork',
    'drying',
    'closed',
    'givenBack',
    'givenBack',
    'inWork',
    'drying',
    'ready',
    'ready',
  ])
})

test('a day says until when something dries, when the room is free meanwhile and when it is back for good', () => {
  expect(on('2027-04-02')).toEqual({
    kind: 'inWork',
    dryUntil: '2027-04-03T22:00',
    beginsOn: null,
    freeOn: '2027-04-05',
    backOn: '2027-04-14',
  })
  expect(roomDayLines(on('2027-04-03'), 'imperial')).toEqual([
    'drying',
    'until Apr 4, morning',
    'free Apr 5',
    'back Apr 14',
  ])
  expect(roomDayLines(on('2027-04-05'), 'imperial')).toEqual(['given back', 'until Apr 12', 'back Apr 14'])
  expect(roomDayLines(on('2027-04-01'), 'metric')).toEqual(['from 2 Apr', 'back 14 Apr'])
})

test('the days run from the first work to the day all rooms are back, and a day is worked out once', () => {
  const days = houseDays(job, plan)
  expect([days.dates[0], days.dates.at(-1), days.dates.length]).toEqual(['2027-04-02', '2027-04-14', 13])
  expect(days.on('2027-04-03')).toBe(days.on('2027-04-03'))
})

test('of a room whose work is done the plan says nothing: what was worked and dried there stands in', () => {
  const done = houseDays(job, { ...plan, roomsOutOfUse: [] })
  expect(done.on('2027-04-12').get(study)?.kind).toBe('inWork')
  expect(done.on('2027-04-14').get(study)?.kind).toBe('ready')
})

test('done work without segments counts on the day it ended, and the room is begun from then on', () => {
  const [prime, coat] = plan.tasks
  if (prime === undefined || coat === undefined) throw new Error('the plan has two tasks')
  const ticked = houseDays(job, {
    ...plan,
    tasks: [{ ...prime, segments: [] }, coat],
    roomsOutOfUse: [{ roomId: study, from: '2027-04-12T00:00', to: '2027-04-13T23:59' }],
  })
  expect(['01', '02', '05'].map((day) => ticked.on(`2027-04-${day}`).get(study)?.kind)).toEqual([
    'notBegun',
    'inWork',
    'givenBack',
  ])
  expect(ticked.dates[0]).toBe('2027-04-02')
})

test('a room without work in the plan is said to have none', () => {
  const others = [...houseDays(job, plan).on('2027-04-02')].filter(([id]) => id !== study)
  expect(others.map(([, { kind }]) => kind)).toEqual(['noWork'])
})

test('a house is drawn inside its place, and every name stands inside its room', () => {
  const picture = housePicture(job, 600, 300, 20)
  const points = picture.rooms.flatMap(({ outline }) => outline)
  expect(picture.rooms).toHaveLength(Object.keys(job.rooms).length)
  expect(Math.max(...points.map(({ x }) => x))).toBeLessThanOrEqual(600)
  expect(Math.max(...points.map(({ y }) => y))).toBeLessThanOrEqual(300.001)
  expect(Math.min(...points.map(({ y }) => y))).toBeGreaterThanOrEqual(20)
})

test('the place of a name in an L-shaped room is not in the corner that is missing', () => {
  const shape = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 4 },
    { x: 4, y: 4 },
    { x: 4, y: 20 },
    { x: 0, y: 20 },
  ]
  expect(labelPlace(shape)).toMatchObject({ x: 5, y: 3, width: 10 })
})

test('as many words are written as a room has room for', () => {
  const room = (width: number, height: number) => ({
    name: 'Kitchen',
    label: { x: 0, y: 0, width, height, upright: { y: 0, length: height } },
  })
  expect(fittedLines(room(100, 60), ['drying', 'back Apr 14'], 10).lines).toEqual([
    'Kitchen',
    'drying',
    'back Apr 14',
  ])
  expect(fittedLines(room(100, 26), ['drying', 'back Apr 14'], 10).lines).toEqual(['Kitchen', 'drying'])
  expect(fittedLines(room(20, 30), ['drying', 'dry'], 10).lines).toEqual(['dry'])
  expect(fittedLines(room(5, 5), ['drying'], 10).lines).toEqual([])
  expect(fittedLines(room(20, 60), ['drying'], 10)).toEqual({
    size: 7.6,
    lines: ['Kitchen', 'drying'],
    isTurned: true,
  })
})
