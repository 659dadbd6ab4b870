import { expect, test } from 'vitest'
import { crewParts } from '../../core/work-order/html.ts'
import { readMemory, toggled } from '../../renderer/panels/paper/choice-memory.ts'
import { pagesOf } from '../../renderer/panels/paper/page-count.ts'

test('what was chosen last comes back; what cannot be read is as if nothing had been chosen', () => {
  const usual = {
    documentId: 'workOrder',
    parts: crewParts,
    rooms: null,
    people: null,
    weeks: null,
    daysBetweenTrips: 14,
  }
  expect(readMemory(null)).toEqual(usual)
  expect(readMemory('{')).toEqual(usual)
  expect(readMemory('7')).toEqual(usual)
  expect(readMemory('{"documentId":"poster","rooms":[1],"daysBetweenTrips":0,"parts":["walls"]}')).toEqual(
    usual,
  )
  const chosen = {
    documentId: 'weeks',
    parts: ['cover'],
    rooms: ['hall'],
    people: ['ada'],
    weeks: ['2027-03-29'],
    daysBetweenTrips: 7,
  }
  expect(readMemory(JSON.stringify(chosen))).toEqual(chosen)
})

test('a choice of all is one of those to come too', () => {
  const all = ['hall', 'study', 'bath']
  expect(toggled(all, null, 'study', false)).toEqual(['hall', 'bath'])
  expect(toggled(all, ['hall', 'bath'], 'study', true)).toBeNull()
  expect(toggled(all, ['bath'], 'hall', true)).toEqual(['hall', 'bath'])
  // A room that is gone since is let go.
  expect(toggled(all, ['attic', 'bath'], 'bath', false)).toEqual([])
})

test('sheets of paper are counted by what fits between the margins', () => {
  const millimetres = (height: number) => (height / 25.4) * 96
  expect(pagesOf([millimetres(259), millimetres(100)], 'letter')).toEqual({ pages: 2, isExact: true })
  expect(pagesOf([millimetres(261)], 'letter')).toEqual({ pages: 2, isExact: false })
  expect(pagesOf([millimetres(261)], 'a4')).toEqual({ pages: 1, isExact: true })
  expect(pagesOf([], 'a4')).toEqual({ pages: 0, isExact: true })
})
