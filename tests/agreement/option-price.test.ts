import fc from 'fast-check'
import { expect, test } from 'vitest'
import { applyChanges, changesBack } from '../../core/agreement/changes.ts'
import { composeChanges, type Wish, type WishPlace } from '../../core/agreement/compose.ts'
import { priceJob, priceOfChanges } from '../../core/agreement/whole-price.ts'
import { defaultRates } from '../../core/price/default-rates.ts'
import { estimate } from '../../core/price/estimate.ts'
import type { JobChange } from '../../core/project/agreement-records.ts'
import type { Job } from '../../core/project/job.ts'
import type { RoomId, WallId } from '../../core/project/sketch-records.ts'
import type { ColourId } from '../../core/project/survey-records.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { buildJob, existingOn, finishFor, rectangularRoom } from '../fixtures/job-builder.ts'

const dining = 'dining' as RoomId
const bedroom = 'bedroom' as RoomId
const wall = { kind: 'wall', roomId: dining, wallId: 'north' as WallId, zone: 'whole' } as const

/** Two rooms; one wall of the dining room is set apart in red. */
const job: Job = buildJob({
  rooms: [rectangularRoom('dining', 12, 14), rectangularRoom('bedroom', 10, 11)],
  existing: [
    existingOn('walls', 'gypsumBoard', 'latexFlat'),
    existingOn('ceiling', 'gypsumBoard', 'latexFlat'),
  ],
  finishes: [
    finishFor('walls', 'latexWall', 'sage', 'eggshell'),
    finishFor('ceiling', 'latexCeiling', 'white', 'flat'),
    {
      ...finishFor('walls', 'latexWall', 'red', 'eggshell'),
      id: 'finish-north' as never,
      scope: { level: 'surface', surface: wall },
    },
  ],
  rates: defaultRates,
})

const parts: fc.Arbitrary<WishPlace> = fc.record({
  roomId: fc.constantFrom(null, dining, bedroom),
  surfaceClasses: fc.subarray(['walls', 'ceiling'] as const, { minLength: 1 }),
})
const wishes: fc.Arbitrary<Wish> = fc.constantFrom(
  { kind: 'leaveOut' },
  { kind: 'paint' },
  { kind: 'color', colourId: 'off-white' as ColourId },
  { kind: 'sheen', sheen: 'satin' },
  { kind: 'product', productClass: 'waterborneEnamel' },
  { kind: 'moreCoats', coats: 1 },
)
const lists: fc.Arbitrary<readonly JobChange[]> = fc
  .array(fc.tuple(parts, wishes), { minLength: 1, maxLength: 3 })
  .map((each) => each.flatMap(([part, wish]) => composeChanges(job, part, wish)))

/** A whole job priced from the start, by nothing that was kept of another one. */
function priceAnew(priced: Job) {
  const takeoff = takeOff(priced)
  const { totals } = estimate(priced, takeoff, specify(priced, takeoff))
  return totals
}

function changed(changes: readonly JobChange[], from = job): Job {
  const next = applyChanges(from, changes)
  if (!next.ok) throw new Error(next.problem.sentence)
  return next.value
}

test('an option costs the whole job with it less the whole job without it, before tax and in tax', () => {
  fc.assert(
    fc.property(lists, (changes) => {
      const price = priceOfChanges(priceJob, job, changes)
      const [before, after] = [priceAnew(job), priceAnew(changed(changes))]
      expect(price).toEqual({
        ok: true,
        value: {
          beforeTaxCents: after.beforeTax - before.beforeTax,
          taxCents: after.tax - before.tax,
          minutes: after.labourMinutes - before.labourMinutes,
        },
      })
    }),
    { numRuns: 40 },
  )
})

test('the way back from a list of changes costs what the list saved, and leads to the same job', () => {
  fc.assert(
    fc.property(lists, (changes) => {
      const without = changed(changes)
      const back = changesBack(job, changes)
      expect(changed(back, without).finishes).toEqual(job.finishes)
      const [there, again] = [priceOfChanges(priceJob, job, changes), priceOfChanges(priceJob, without, back)]
      if (!there.ok || !again.ok) throw new Error('both fit')
      expect(again.value.beforeTaxCents + there.value.beforeTaxCents).toBe(0)
      expect(again.value.taxCents + there.value.taxCents).toBe(0)
    }),
    { numRuns: 40 },
  )
})

const coatsOn = (priced: Job, room: RoomId, surfaceClass: 'walls' | 'ceiling') =>
  specify(priced, takeOff(priced))
    .steps.filter((step) => step.roomId === room && step.surfaceClass === surfaceClass)
    .filter(({ operation }) => operation === 'coat')

test('one coat more is one coat more than the rules count, with its reason', () => {
  const more = changed(
    composeChanges(job, { roomId: bedroom, surfaceClasses: ['walls'] }, { kind: 'moreCoats', coats: 1 }),
  )
  expect(coatsOn(job, bedroom, 'walls')).toHaveLength(2)
  expect(coatsOn(more, bedroom, 'walls')).toHaveLength(3)
  expect(
    coatsOn(more, bedroom, 'walls').map(({ because }) =>
      because.some(({ ruleId }) => ruleId === 'coats-asked-for'),
    ),
  ).toEqual([false, false, true])
  expect(coatsOn(more, dining, 'walls')).toEqual(coatsOn(job, dining, 'walls'))
})

test('a room left out takes along what was set apart in it, and its steps go', () => {
  const without = changed(
    composeChanges(job, { roomId: dining, surfaceClasses: ['walls', 'ceiling'] }, { kind: 'leaveOut' }),
  )
  expect(coatsOn(without, dining, 'walls')).toEqual([])
  expect(coatsOn(without, dining, 'ceiling')).toEqual([])
  expect(coatsOn(without, bedroom, 'walls')).toHaveLength(2)
})

test('a second color leaves a wall alone that has a color of its own', () => {
  const other = changed(
    composeChanges(
      job,
      { roomId: dining, surfaceClasses: ['walls'] },
      { kind: 'color', colourId: 'off-white' as ColourId },
    ),
  )
  expect(new Set(coatsOn(other, dining, 'walls').map(({ colourId }) => colourId))).toEqual(
    new Set(['off-white', 'red']),
  )
})

test('changes that name what is gone are refused with a sentence', () => {
  const gone = applyChanges(job, [
    {
      kind: 'finish',
      scope: { level: 'room', roomId: 'attic' as RoomId, surfaceClass: 'walls' },
      set: { paint: true },
    },
  ])
  expect(gone).toMatchObject({ ok: false, problem: { kind: 'notFound' } })
})
