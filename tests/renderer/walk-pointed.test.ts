import { expect, test } from 'vitest'
import { records } from '../../core/project/job.ts'
import { feet } from '../../core/units/length.ts'
import { pointedAt, surfaceOf } from '../../renderer/panels/walk/pointed.ts'
import { sidesOf } from '../../renderer/panels/walk/survey-places.ts'
import { door, east, north, parlour, study, twoRooms } from '../sketch/two-rooms.ts'

const job = twoRooms()
const sides = records(job.openings).flatMap((opening) =>
  sidesOf(job, opening).map((side) => ({ opening, side })),
)

/** What a press at a place in feet picks; the study is 12 ft wide, the parlour begins 5 in behind it. */
function picked(x: number, y: number, reach = 100) {
  const pointed = pointedAt(records(job.rooms), sides, { x: feet(x), y: feet(y) }, reach)
  return pointed === null ? null : surfaceOf(pointed)
}

test('the middle of a room means its ceiling, beside the house is nothing', () => {
  expect(picked(6, 5)).toEqual({ kind: 'ceiling', roomId: study })
  expect(picked(20, 5)).toEqual({ kind: 'ceiling', roomId: parlour })
  expect(picked(-3, 5)).toBeNull()
})

test('a wall is hit within a foot of its line, from inside its room', () => {
  expect(picked(6, 0.9)).toEqual({ kind: 'wall', roomId: study, wallId: north, zone: 'whole' })
  expect(picked(6, 1.1)).toEqual({ kind: 'ceiling', roomId: study })
  expect(picked(11.5, 8)).toEqual({ kind: 'wall', roomId: study, wallId: east, zone: 'whole' })
})

test('an opening goes before its wall, on the side of it that is nearer', () => {
  expect(picked(11.9, 4)).toMatchObject({ kind: 'opening', openingId: door, side: 'near' })
  expect(picked(12.5, 4)).toMatchObject({ kind: 'opening', openingId: door, side: 'far' })
  expect(picked(11.9, 6)).toMatchObject({ kind: 'wall', roomId: study })
  expect(picked(11.5, 4)).toMatchObject({ kind: 'wall', roomId: study })
  expect(picked(11.5, 4, 300)).toMatchObject({ kind: 'opening', side: 'near' })
})
