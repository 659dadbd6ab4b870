import { expect, test } from 'vitest'
import { kindOfPass, passKinds } from '../../core/passes/pass-types.ts'
import { dayOfDate } from '../../core/time/local-date.ts'
import { phaseOf, phases } from '../../core/work-order/phases.ts'
import { halfDayAt, type PictureTask, pictureOf } from '../../renderer/panels/calendar/whole-job/picture.ts'

const monday = dayOfDate('2027-03-29')

function task(
  key: string,
  phase: PictureTask['phase'],
  segments: readonly (readonly [string, string])[],
  changes: Partial<PictureTask> = {},
): PictureTask {
  return {
    key,
    phase,
    roomSetId: 'study',
    segments: segments.map(([startsAt, endsAt]) => ({ startsAt, endsAt })),
    crewMemberIds: ['ada'],
    dryUntil: null,
    ...changes,
  }
}

test('a day is two half-days: 7 to noon and noon to 5, what lies outside at its edge', () => {
  expect(halfDayAt('2027-03-29T07:00', monday)).toBe(0)
  expect(halfDayAt('2027-03-29T09:30', monday)).toBe(0.5)
  expect(halfDayAt('2027-03-29T12:00', monday)).toBe(1)
  expect(halfDayAt('2027-03-30T14:30', monday)).toBe(3.5)
  expect(halfDayAt('2027-03-30T20:00', monday)).toBe(4)
  expect(halfDayAt('2027-03-30T05:00', monday)).toBe(2)
})

test('passes of one phase one after another are one block; another phase or days without work part it', () => {
  const { rooms } = pictureOf(
    [
      task('a', 'prepare', [['2027-03-29T07:00', '2027-03-29T12:00']]),
      task('b', 'prepare', [
        ['2027-03-29T12:30', '2027-03-29T17:00'],
        ['2027-03-30T07:00', '2027-03-30T09:30'],
      ]),
      task('c', 'prime', [['2027-03-30T09:30', '2027-03-30T12:00']]),
      task('d', 'prime', [['2027-04-02T07:00', '2027-04-02T12:00']]),
    ],
    [],
    [],
  )
  expect(rooms[0]?.blocks.map(({ phase, from, to, taskKeys }) => [phase, from, to, taskKeys.join()])).toEqual(
    [
      ['prepare', 0, 2.5, 'a,b'],
      ['prime', 2.5, 3, 'c'],
      ['prime', 8, 9, 'd'],
    ],
  )
})

test('two people at once in a room are drawn one behind the other, and nothing is drawn twice', () => {
  const { rooms } = pictureOf(
    [
      task('a', 'walls', [['2027-03-29T07:00', '2027-03-29T12:00']]),
      task('b', 'woodwork', [['2027-03-29T08:00', '2027-03-29T17:00']], { crewMemberIds: ['ben'] }),
    ],
    [],
    [],
  )
  expect(rooms[0]?.blocks.map(({ phase, from, to }) => [phase, from, to])).toEqual([
    ['walls', 0, 1],
    ['woodwork', 1, 2],
  ])
})

test('a room is drying from the end of a coat, out of use by whole days, and given back between', () => {
  const { rooms } = pictureOf(
    [task('a', 'prime', [['2027-03-29T07:00', '2027-03-29T12:00']], { dryUntil: '2027-03-30T12:00' })],
    [
      { roomId: 'study', from: '2027-03-29T00:00', to: '2027-03-30T23:59' },
      { roomId: 'study', from: '2027-04-05T00:00', to: '2027-04-06T23:59' },
    ],
    [],
  )
  const [row] = rooms
  expect(row?.drying).toEqual([{ from: 1, to: 3 }])
  expect(row?.outOfUse).toEqual([
    { from: 0, to: 4 },
    { from: 14, to: 18 },
  ])
  expect(row?.givenBack).toEqual([{ from: 4, to: 14 }])
  expect(row?.lastDay).toBe('2027-04-06')
})

test('somebody is shown by half-days in the room with most of the minutes; one after another is one stay', () => {
  const other = { roomSetId: 'hall' }
  const { people } = pictureOf(
    [
      task('a', 'walls', [
        ['2027-03-29T07:00', '2027-03-29T12:00'],
        ['2027-03-29T12:30', '2027-03-29T13:00'],
      ]),
      task('b', 'walls', [['2027-03-29T13:00', '2027-03-29T17:00']], other),
      task('c', 'walls', [['2027-03-30T07:00', '2027-03-30T11:00']], other),
    ],
    [],
    ['ada', 'ben'],
  )
  expect(people).toEqual([
    {
      crewMemberId: 'ada',
      stays: [
        { roomSetId: 'study', from: 0, to: 1 },
        { roomSetId: 'hall', from: 1, to: 3 },
      ],
      elsewhere: [],
    },
    { crewMemberId: 'ben', stays: [], elsewhere: [] },
  ])
})

test('every kind of pass has a phase, and its key says its kind', () => {
  for (const kind of passKinds) {
    expect(phases).toContain(phaseOf(kind))
    expect(kindOfPass(`bedroom-1/${kind}/2`)).toBe(kind)
  }
  expect(kindOfPass('bedroom-1')).toBeUndefined()
})

test('who is on another job is drawn there, cut to the days of the plan, over nights as one', () => {
  const { people } = pictureOf(
    [
      task('a', 'prepare', [['2027-03-30T07:00', '2027-03-30T12:00']]),
      task('b', 'walls', [['2027-04-01T07:00', '2027-04-01T12:00']]),
    ],
    [],
    ['ada', 'ben'],
    [
      { crewMemberId: 'ben', from: '2027-03-31T07:00', to: '2027-03-31T17:00' },
      { crewMemberId: 'ben', from: '2027-03-30T12:00', to: '2027-03-30T17:00' },
      { crewMemberId: 'ben', from: '2027-04-01T12:00', to: '2027-04-08T17:00' },
      { crewMemberId: 'ben', from: '2027-03-01T07:00', to: '2027-03-02T17:00' },
    ],
  )
  expect(people.map(({ elsewhere }) => elsewhere)).toEqual([
    [],
    [
      { from: 1, to: 4 },
      { from: 5, to: 6 },
    ],
  ])
})
