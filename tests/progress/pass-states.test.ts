import { expect, test } from 'vitest'
import { gatherPasses } from '../../core/passes/gather.ts'
import { labour } from '../../core/price/labour.ts'
import { passStates, tickedTogether } from '../../core/progress/pass-states.ts'
import { jobProgress } from '../../core/progress/room-progress.ts'
import { stepStates } from '../../core/progress/step-states.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { oldHouse } from '../../demo-data/old-house.ts'
import { whyWords } from '../../renderer/panels/site/OutOfOrder.tsx'
import { passWords } from '../../renderer/panels/site/step-words.ts'
import { plainJob, plainSpecification } from '../fixtures/plain-room.ts'
import { marksOf, type SiteMark } from './site-marks.ts'

const ceiling = 'study/ceiling/coat-1'
const first = 'study/walls/coat-1'
const second = 'study/walls/coat-2'

function at(now: string, ...marks: readonly SiteMark[]) {
  const job = plainJob({ marks: marksOf(...marks) })
  const minutes = new Map(labour(job, plainSpecification).steps.map((line) => [line.stepKey, line.minutes]))
  const passes = gatherPasses(job, plainSpecification, minutes)
  const states = stepStates(job, plainSpecification)
  const all = passStates(job, passes.passes, plainSpecification, states, now)
  const passOf = (stepKey: string) => {
    const found = all.find(({ pass }) => pass.stepKeys.includes(stepKey))
    if (found === undefined) throw new Error(`no pass holds ${stepKey}`)
    return found
  }
  const ticked = (...keys: readonly string[]) => tickedTogether(job, plainSpecification, states, keys, now)
  return { all, passOf, ticked }
}

function done(stepKey: string, moment: string): SiteMark {
  return { stepKey, mark: 'done', at: moment }
}

test('a pass comes after the steps of others, never after its own', () => {
  const { all, passOf } = at('2027-03-29T08:00')
  const protect = passOf('study/protect')
  expect(protect.ready).toEqual({ kind: 'ready', startBy: null })
  expect(passOf(second).ready).toEqual({ kind: 'after', stepKeys: [first] })
  const own = new Set(passOf(first).pass.stepKeys)
  const { ready } = passOf(first)
  expect(ready.kind).toBe('after')
  expect(ready.kind === 'after' ? ready.stepKeys.filter((key) => own.has(key)) : []).toEqual([])
  expect(all.every(({ state }) => state.kind === 'todo')).toBe(true)
})

test('a pass is under way with some of its steps, done with all, and asks again for what is to be redone', () => {
  const keys = at('2027-03-30T08:00').passOf(first).pass.stepKeys
  const marks = keys.map((key, index) => done(key, `2027-03-30T1${index}:00`))
  expect(keys.length).toBeGreaterThan(1)
  expect(at('2027-03-30T15:00', ...marks.slice(0, 1)).passOf(first).state).toEqual({
    kind: 'underWay',
    settled: 1,
    total: keys.length,
  })
  expect(at('2027-03-30T15:00', ...marks).passOf(first).state).toEqual({
    kind: 'done',
    at: `2027-03-30T1${keys.length - 1}:00`,
  })
  const redo: SiteMark = { stepKey: first, mark: 'redo', at: '2027-03-31T08:00' }
  expect(at('2027-03-31T09:00', ...marks, redo).passOf(first).state).toEqual({ kind: 'redo' })
})

test('what is ticked before what comes first, or before it is dry, is out of order and says why', () => {
  const before = at('2027-03-30T08:00').ticked(second)
  expect(before).toEqual({ kind: 'after', stepKeys: [first] })
  // The first coat at 14:00 dries 240 min, to 18:00.
  const wet = at('2027-03-30T15:00', done(first, '2027-03-30T14:00')).ticked(second)
  expect(wet).toMatchObject({ kind: 'waiting', until: '2027-03-30T18:00' })
  expect(at('2027-03-30T18:00', done(first, '2027-03-30T14:00')).ticked(second).kind).toBe('ready')
  // Ticked together they stand in no other's way.
  expect(at('2027-03-30T08:00').ticked(first, second)).toMatchObject({ kind: 'after' })
  const words = (why: typeof before) =>
    why.kind === 'ready' || why.kind === 'settled' ? '' : whyWords(why, 'imperial', (key) => `<${key}>`)
  expect(words(before)).toBe(
    `Not checked off yet, and before it in the order of work: <${first}>. Was it done all the same?`,
  )
  expect(words(wet)).toContain('not before Tue Mar 30, 6:00 pm')
})

test('a pass says in a few words how it stands', () => {
  const words = (now: string, stepKey: string, ...marks: readonly SiteMark[]) =>
    passWords(at(now, ...marks).passOf(stepKey), 'imperial', (key) => `<${key}>`).text
  expect(words('2027-03-29T08:00', 'study/protect')).toBe('can start')
  expect(words('2027-03-29T09:00', 'study/protect', done('study/protect', '2027-03-29T08:30'))).toBe(
    'done Mon Mar 29, 8:30 am',
  )
  expect(words('2027-03-29T08:00', ceiling)).toBe('after <study/protect>')
})

test('a closet counts with the room it is worked with', () => {
  const house = oldHouse()
  const { rooms } = jobProgress(house, specify(house, takeOff(house)), '2027-03-29T08:00')
  const ids = rooms.map(({ roomId }) => roomId as string)
  expect(ids).toContain('rear-bedroom')
  expect(ids).not.toContain('rear-closet')
  expect(ids).toHaveLength(13)
})
