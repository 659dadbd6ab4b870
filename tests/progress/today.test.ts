import { expect, test } from 'vitest'
import { stepStates } from '../../core/progress/step-states.ts'
import { dayOnSite, marksAsPlanned } from '../../core/progress/today.ts'
import type { WorkPlan } from '../../core/work-order/work-plan.ts'
import { plainPlan } from '../fixtures/plain-plan.ts'
import { plainJob, plainSpecification } from '../fixtures/plain-room.ts'
import { marksOf, type SiteMark } from './site-marks.ts'

function on(date: string, plan: WorkPlan = plainPlan, ...marks: readonly SiteMark[]) {
  const job = plainJob({ marks: marksOf(...marks) })
  return dayOnSite(job, plan, stepStates(job, plainSpecification), date)
}

test('a day has its passes in order by half days, with who works on them', () => {
  const day = on('2027-03-29')
  expect(day?.left).toEqual([])
  expect(day?.passes.map(({ steps, half, endsAt }) => [steps[0]?.step.key, half, endsAt])).toEqual([
    ['study/protect', 'morning', '2027-03-29T08:55'],
    ['study/ceiling/coat-1', 'morning', '2027-03-29T09:25'],
    ['study/walls/mask', 'morning', '2027-03-29T10:45'],
    ['study/walls/coat-1', 'morning', '2027-03-29T13:25'],
  ])
})

test('what was planned before and is not ticked comes first, and a day without work is the next with some', () => {
  const day = on('2027-03-30', plainPlan, { stepKey: 'study/protect', mark: 'done', at: '2027-03-29T09:00' })
  expect(day?.left.map(({ steps }) => steps[0]?.step.key)).toEqual([
    'study/ceiling/coat-1',
    'study/walls/mask',
    'study/walls/coat-1',
  ])
  expect(on('2027-03-20')?.date).toBe('2027-03-29')
  expect(on('2027-03-31')?.passes).toEqual([])
})

test('nobody working from a day on, and nothing open, is no day', () => {
  expect(on('2027-03-29', { ...plainPlan, tasks: [] })).toBeNull()
})

test('as planned is done at the planned end, or now where that is earlier, once for each step', () => {
  const passes = on('2027-03-29')?.passes ?? []
  const marks = marksAsPlanned([...passes, ...passes], '2027-03-29T09:10')
  expect(marks.map(({ stepKey, mark, at }) => [stepKey, mark, at])).toEqual([
    ['study/protect', 'done', '2027-03-29T08:55'],
    ['study/ceiling/coat-1', 'done', '2027-03-29T09:10'],
    ['study/walls/mask', 'done', '2027-03-29T09:10'],
    ['study/walls/coat-1', 'done', '2027-03-29T09:10'],
  ])
})

test('a pass that goes on another day is begun as planned, and done on its last day', () => {
  const [first] = plainPlan.tasks
  if (first === undefined) throw new Error('the plan has no task')
  const later = { startsAt: '2027-03-30T08:00', endsAt: '2027-03-30T09:00' }
  const plan = {
    ...plainPlan,
    tasks: [{ ...first, endsAt: later.endsAt, segments: [...first.segments, later] }],
  }
  const now = '2027-03-30T12:00'
  const [begun] = on('2027-03-29', plan)?.passes ?? []
  expect(begun?.goesOn).toBe(true)
  expect(marksAsPlanned(begun === undefined ? [] : [begun], now).map(({ mark }) => mark)).toEqual(['started'])
  const after = on('2027-03-30', plan, { stepKey: 'study/protect', mark: 'started', at: '2027-03-29T08:55' })
  expect(after?.left).toEqual([])
  expect(marksAsPlanned(after?.passes ?? [], now).map(({ mark }) => mark)).toEqual(['done'])
})
