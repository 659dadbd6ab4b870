import { expect, test } from 'vitest'
import { readiness } from '../../core/progress/readiness.ts'
import { jobProgress } from '../../core/progress/room-progress.ts'
import { marksWithoutStep, stepStates } from '../../core/progress/step-states.ts'
import type { Mark } from '../../core/project/progress-records.ts'
import { elapsedMinutes } from '../../core/units/duration.ts'
import { plainJob, plainSpecification } from '../fixtures/plain-room.ts'
import { marksOf, type SiteMark } from './site-marks.ts'

const ceiling = 'study/ceiling/coat-1'
const mask = 'study/walls/mask'
const first = 'study/walls/coat-1'
const second = 'study/walls/coat-2'

function jobWith(...marks: readonly SiteMark[]) {
  return plainJob({ marks: marksOf(...marks) })
}

function stateOf(stepKey: string, ...marks: readonly SiteMark[]) {
  return stepStates(jobWith(...marks), plainSpecification).get(stepKey)?.state
}

test('a step nobody marked is to do', () => {
  expect(stateOf(first)).toEqual({ kind: 'todo' })
})

test('a finished coat says when it is dry to the touch and when the next may go on', () => {
  expect(stateOf(first, { stepKey: first, mark: 'done', at: '2027-03-30T14:00' })).toEqual({
    kind: 'done',
    at: '2027-03-30T14:00',
    touchDryAt: '2027-03-30T15:00', // 60 min
    recoatFrom: '2027-03-30T18:00', // 240 min
    recoatBy: null,
  })
})

test('drying runs through the night in which clocks go forward', () => {
  // New York, 14 March 2027: 02:00 becomes 03:00, so four hours after 23:00 it is 04:00 on the clock.
  expect(stateOf(first, { stepKey: first, mark: 'done', at: '2027-03-13T23:00' })).toMatchObject({
    recoatFrom: '2027-03-14T04:00',
  })
})

test('an open time shows the latest moment for the next coat', () => {
  const order = plainSpecification.order.map((each) => ({ ...each, maximumWait: elapsedMinutes(300) }))
  const states = stepStates(jobWith({ stepKey: first, mark: 'done', at: '2027-03-30T10:00' }), {
    ...plainSpecification,
    order,
  })
  expect(states.get(first)?.state).toMatchObject({ recoatBy: '2027-03-30T15:00' })
})

test('of several limits the next coat goes by the earliest, of several waits by the longest', () => {
  const [order] = plainSpecification.order.filter((each) => each.before === first)
  if (order === undefined) throw new Error('something follows the first coat')
  const limits = [300, 180, 600].map((minutes) => ({
    ...order,
    minimumWait: elapsedMinutes(minutes / 6),
    maximumWait: elapsedMinutes(minutes),
  }))
  for (const each of [limits, limits.toReversed()]) {
    const states = stepStates(jobWith({ stepKey: first, mark: 'done', at: '2027-03-30T10:00' }), {
      ...plainSpecification,
      order: [...each, { ...order, maximumWait: null, minimumWait: elapsedMinutes(0) }],
    })
    expect(states.get(first)?.state).toMatchObject({
      recoatBy: '2027-03-30T13:00', // 180 min, the least of the limits
      recoatFrom: '2027-03-30T11:40', // 100 min, the longest wait
    })
  }
})

test('the latest mark counts, and a mark can be taken back', () => {
  const started = { stepKey: first, mark: 'started', at: '2027-03-30T09:00' } as const
  expect(stateOf(first, started)?.kind).toBe('started')
  expect(stateOf(first, started, { stepKey: first, mark: 'cleared', at: '2027-03-30T09:01' })).toEqual({
    kind: 'todo',
  })
  expect(
    stateOf(first, { stepKey: first, mark: 'redo', at: '2027-03-31T09:00', note: 'lap marks' }, started),
  ).toEqual({ kind: 'redo', at: '2027-03-31T09:00', note: 'lap marks' })
})

test('marks of the same minute keep the order in which they were made', () => {
  const at = '2027-03-30T09:00'
  expect(
    stateOf(first, { stepKey: first, mark: 'started', at }, { stepKey: first, mark: 'done', at })?.kind,
  ).toBe('done')
})

test('marks of steps that are no longer specified are kept apart, not lost', () => {
  const job = jobWith({ stepKey: 'study/gone', mark: 'done', at: '2027-03-30T09:00' })
  expect(marksWithoutStep(job, plainSpecification).map((mark) => mark.stepKey)).toEqual(['study/gone'])
})

function readyAt(now: string, stepKey: string, ...marks: readonly SiteMark[]) {
  const job = jobWith(...marks)
  return readiness(job, plainSpecification, stepStates(job, plainSpecification), now).get(stepKey)
}

test('a step waits for the steps before it, then for their drying, then is ready', () => {
  const done = (stepKey: string, at: string) => ({ stepKey, mark: 'done', at }) as const
  expect(readyAt('2027-03-30T09:00', mask)).toEqual({ kind: 'after', stepKeys: [ceiling] })
  expect(readyAt('2027-03-30T09:30', mask, done(ceiling, '2027-03-30T09:00'))).toMatchObject({
    kind: 'waiting',
    until: '2027-03-30T10:00',
  })
  expect(readyAt('2027-03-30T10:00', mask, done(ceiling, '2027-03-30T09:00'))).toEqual({
    kind: 'ready',
    startBy: null,
  })
  expect(readyAt('2027-03-30T10:00', ceiling, done(ceiling, '2027-03-30T09:00'))).toEqual({ kind: 'settled' })
})

test('a step left out on purpose holds nothing up', () => {
  expect(
    readyAt('2027-03-30T10:00', first, {
      stepKey: mask,
      mark: 'skipped',
      at: '2027-03-30T09:00',
      note: 'no trim',
    }),
  ).toEqual({ kind: 'ready', startBy: null })
})

test('a step whose open time has run out is overdue', () => {
  const order = plainSpecification.order.map((each) => ({ ...each, maximumWait: elapsedMinutes(300) }))
  const specification = { ...plainSpecification, order }
  const job = jobWith({ stepKey: first, mark: 'done', at: '2027-03-30T08:00' })
  const at = (now: string) => readiness(job, specification, stepStates(job, specification), now).get(second)
  expect(at('2027-03-30T12:30')).toEqual({ kind: 'ready', startBy: '2027-03-30T13:00' })
  expect(at('2027-03-30T13:01')).toMatchObject({ kind: 'overdue', since: '2027-03-30T13:00' })
})

const minutes = { protect: 40, ceiling: 58, mask: 17.6, coat: 127.6 }
const all = minutes.protect + minutes.ceiling + minutes.mask + 2 * minutes.coat

test('progress goes by minutes, not by the number of steps', () => {
  const job = jobWith({ stepKey: first, mark: 'done', at: '2027-03-30T12:00', actualMinutes: 150 })
  const progress = jobProgress(job, plainSpecification, '2027-03-30T12:30')
  expect(progress.share).toBeCloseTo(minutes.coat / all, 9)
  expect(progress.leftMinutes).toBeCloseTo(all - minutes.coat, 9)
  expect(progress.actualMinutes).toBe(150)
  expect(progress.rooms[0]).toMatchObject({ state: 'underWay', nextStepKey: 'study/protect' })
})

test('work under way leaves what is not yet worked, and a redo leaves the whole step again', () => {
  const started = jobWith({ stepKey: first, mark: 'started', at: '2027-03-30T12:00', actualMinutes: 27 })
  expect(jobProgress(started, plainSpecification, '2027-03-30T12:30').leftMinutes).toBeCloseTo(all - 27, 9)
  const redo = jobWith(
    { stepKey: first, mark: 'done', at: '2027-03-30T12:00' },
    { stepKey: first, mark: 'redo', at: '2027-03-31T12:00' },
  )
  expect(jobProgress(redo, plainSpecification, '2027-03-31T12:30').leftMinutes).toBeCloseTo(all, 9)
})

test('a room whose steps are all settled is drying until the last coat is dry, then finished', () => {
  const marks = plainSpecification.steps.map((step) => ({
    stepKey: step.key,
    mark: 'done' as Mark['mark'],
    at: '2027-03-31T12:00',
  }))
  const room = (now: string) => jobProgress(jobWith(...marks), plainSpecification, now).rooms[0]
  expect(room('2027-03-31T12:30')).toMatchObject({ state: 'drying', dryAt: '2027-03-31T13:00', share: 1 })
  expect(room('2027-03-31T13:00')?.state).toBe('finished')
})
