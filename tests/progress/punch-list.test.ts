import { expect, test } from 'vitest'
import { punchList } from '../../core/progress/punch-list.ts'
import { plainJob, plainSpecification } from '../fixtures/plain-room.ts'
import { marksOf, type SiteMark } from './site-marks.ts'

const coat = 'study/walls/coat-1'
const ceiling = 'study/ceiling/coat-1'

function listOf(...marks: readonly SiteMark[]) {
  return punchList(plainJob({ marks: marksOf(...marks) }), plainSpecification)
}

test('what is judged not good after the step was done is open', () => {
  const items = listOf(
    { stepKey: coat, mark: 'done', at: '2027-03-30T10:00' },
    { stepKey: coat, mark: 'redo', at: '2027-03-31T09:00', note: 'lap marks' },
  )
  expect(items).toMatchObject([{ seen: 'lap marks', notedAt: '2027-03-31T09:00', madeGoodAt: null }])
})

test('it is made good by the first time the step is done after that, and by nothing else', () => {
  const items = listOf(
    { stepKey: coat, mark: 'done', at: '2027-03-30T10:00' },
    { stepKey: coat, mark: 'redo', at: '2027-03-31T09:00' },
    { stepKey: coat, mark: 'started', at: '2027-03-31T10:00' },
    { stepKey: ceiling, mark: 'done', at: '2027-03-31T11:00' },
    { stepKey: coat, mark: 'done', at: '2027-03-31T12:00' },
    { stepKey: coat, mark: 'done', at: '2027-04-01T12:00' },
  )
  expect(items.map((item) => item.madeGoodAt)).toEqual(['2027-03-31T12:00'])
})

test('each finding of a step is an item, open ones first and each group in the order noted', () => {
  const items = listOf(
    { stepKey: coat, mark: 'redo', at: '2027-03-29T09:00', note: 'first' },
    { stepKey: coat, mark: 'done', at: '2027-03-30T10:00' },
    { stepKey: coat, mark: 'redo', at: '2027-03-31T09:00', note: 'later' },
    { stepKey: ceiling, mark: 'redo', at: '2027-03-30T09:00', note: 'ceiling' },
  )
  expect(items.map((item) => [item.seen, item.madeGoodAt])).toEqual([
    ['ceiling', null],
    ['later', null],
    ['first', '2027-03-30T10:00'],
  ])
})

test('findings of one minute stay in the order in which they were noted', () => {
  const at = '2027-03-31T09:00'
  const notes = ['lap marks', 'a run', 'dust in it']
  const items = listOf(...notes.map((note) => ({ stepKey: coat, mark: 'redo', at, note }) as const))
  expect(items.map(({ seen }) => seen)).toEqual(notes)
})
