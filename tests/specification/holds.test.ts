import { expect, test } from 'vitest'
import type { HoldRecord } from '../../core/project/hold-records.ts'
import { heldUntil } from '../../core/specification/holds.ts'
import { specify } from '../../core/specification/specify.ts'
import {
  type Hold,
  type HoldKind,
  type Operation,
  operations,
  type Specification,
} from '../../core/specification/types.ts'
import { toSquareFeet } from '../../core/units/area.ts'
import { feet } from '../../core/units/length.ts'
import { buildJob, conditionOn, existingOn, finishFor, rectangularRoom } from '../fixtures/job-builder.ts'
import { plainSurfaces, takeoffOf, wallOf } from './hand-takeoff.ts'
import { type OneSurface, specifyOne, squareFoot, stepOf } from './one-surface.ts'
import { everySpecification } from './random-house.ts'
import { comesBefore } from './step-list.ts'

const old = { header: { yearBuilt: 1925 } }
/** Surface at 10 C, dew point of 20 C and 60 % at 12 C: too cold by 5. */
const coldRoom = {
  rooms: [rectangularRoom('r', 12, 10, { above: 'unheated' })],
  header: {
    air: {
      temperatureC: 20,
      relativeHumidityPercent: 60,
      outdoorTemperatureC: 0,
      surfaceTemperatureC: 10,
    },
  },
}

/** What brings each kind of hold, and the day it is expected for a job that starts on March 29: by its usual number of days. */
const causes: Readonly<Record<HoldKind, readonly [given: OneSurface, expectedOn: string]>> = {
  asbestos: [{ surfaceClass: 'walls', conditions: [['unsandedPatch']], job: old }, '2027-04-08'],
  leak: [{ surfaceClass: 'walls', conditions: [['waterStain']] }, '2027-04-12'],
  mildewCause: [{ surfaceClass: 'walls', conditions: [['mildew']] }, '2027-04-12'],
  newPlaster: [{ surfaceClass: 'walls', conditions: [['newPlaster']] }, '2027-04-26'],
  movingCrack: [{ surfaceClass: 'walls', conditions: [['movingCrack']] }, '2027-04-12'],
  loosePlaster: [
    { surfaceClass: 'walls', conditions: [['loosePlasterKeys', { severity: 'severe' }]] },
    '2027-04-12',
  ],
  dewPoint: [{ surfaceClass: 'ceiling', job: coldRoom }, '2027-04-01'],
  unknownCoat: [{ surfaceClass: 'walls', coat: 'unknown' }, '2027-03-30'],
}

function record(holdKey: string, changes: Partial<HoldRecord> = {}): HoldRecord {
  const nothing = { whoSeesToIt: '', expectedOn: null, clearedOn: null, clearedBy: '', note: '' }
  return { id: 'h' as HoldRecord['id'], holdKey, ...nothing, ...changes }
}

function onlyHold(specification: Specification): Hold {
  const [hold, ...others] = specification.holds
  if (hold === undefined || others.length > 0) throw new Error(`${specification.holds.length} holds`)
  return hold
}

const leak: OneSurface = { surfaceClass: 'walls', conditions: [['waterStain']] }
const leakKey = 'r/leak/wall:r:north:whole'

for (const [kind, [given, expectedOn]] of Object.entries(causes)) {
  test(`${kind}: a hold with its surfaces, its usual day, and every step that touches them`, () => {
    const specification = specifyOne(given)
    const hold = onlyHold(specification)
    expect(hold).toMatchObject({ kind, roomId: 'r', expectedOn, expectedIsAssumed: true, cleared: null })
    expect(hold.whoSeesToIt).not.toBe('')
    // Dust that may hold asbestos is not stirred up either, so dusting its surfaces down waits as well.
    const onSurface = specification.steps.filter(
      (step) => step.groupKey !== 'room' || step.key === 'r/room/dustDown/held',
    )
    expect(hold.stepKeys).toEqual(onSurface.map((step) => step.key))
    expect(hold.stepKeys.includes('r/room/dustDown/held')).toBe(kind === 'asbestos')
    expect(specification.notices).toContainEqual(
      expect.objectContaining({ sentence: hold.reason, hold: true, holdKey: hold.key }),
    )
  })
}

test('covering the room, taking hardware off and dusting down do not wait', () => {
  const specification = specifyOne(leak)
  const free = specification.steps.filter((step) => !onlyHold(specification).stepKeys.includes(step.key))
  expect(free.map((step) => step.operation)).toEqual(['protectRoom', 'dustDown', 'cleanUp', 'inspect'])
})

const crackOnNorth = conditionOn('crack', 'movingCrack', wallOf('r', 'north'), { length: feet(3) })
const patchOnNorth = conditionOn('patch', 'unsandedPatch', wallOf('r', 'north'), { count: 1 })
const nailHoles = conditionOn('holes', 'hole', { roomId: 'r', surfaceClass: 'walls' }, { count: 22 })

/** Four walls of 96, 80, 96 and 80 sq ft; what is said lies on the north wall, and 22 nail holes on all four. */
function fourWalls(condition: typeof crackOnNorth) {
  const job = buildJob({
    header: { yearBuilt: 1925 },
    rooms: [rectangularRoom('r', 12, 10)],
    existing: [existingOn('walls', 'plaster', 'latexFlat')],
    finishes: [finishFor('walls', 'latexWall', 'white', 'flat')],
    conditions: [condition, nailHoles],
  })
  const walls = plainSurfaces('r').filter((each) => each.surfaceClass === 'walls')
  return specify(job, takeoffOf(...walls))
}

test('of four walls only the one with the moving crack waits; the others go on in a group that keeps its key', () => {
  const specification = fourWalls(crackOnNorth)
  const keys = new Set(specification.steps.map((step) => step.groupKey))
  expect([...keys].toSorted()).toEqual(['room', 'walls', 'walls+held'])
  const hold = onlyHold(specification)
  expect(hold.surfaceKeys).toEqual(['wall:r:north:whole'])
  expect(hold.stepKeys.every((key) => key.startsWith('r/walls+held/'))).toBe(true)
  expect(toSquareFeet(stepOf(specification, 'walls+held/coat/1').amounts.area)).toBe(96)
  expect(toSquareFeet(stepOf(specification, 'walls/coat/1').amounts.area)).toBe(256)
  // 22 holes by area: 96 of 352 sq ft are 6 of them.
  expect(stepOf(specification, 'walls+held/fill/1').amounts.count).toBe(6)
  expect(stepOf(specification, 'walls/fill/1').amounts.count).toBe(16)
})

test('nothing on the free walls before the finish waits for the held wall', () => {
  const specification = fourWalls(crackOnNorth)
  const held = new Set(onlyHold(specification).stepKeys)
  const after = new Set<string>(held)
  for (const { before, after: next } of specification.order) if (after.has(before)) after.add(next)
  const preparing = specification.steps.filter(
    ({ groupKey, operation }) =>
      groupKey === 'walls' && ['fill', 'sandFill', 'vacuum', 'spotPrime', 'prime'].includes(operation),
  )
  expect(preparing.length).toBeGreaterThan(2)
  expect(preparing.filter(({ key }) => after.has(key))).toEqual([])
})

test('where one wall may hold asbestos, that wall is not dusted before it is cleared, and the others are', () => {
  const specification = fourWalls(patchOnNorth)
  const hold = onlyHold(specification)
  expect(hold.surfaceKeys).toEqual(['wall:r:north:whole'])
  expect(stepOf(specification, 'room/dustDown/held').surfaceKeys).toEqual(['wall:r:north:whole'])
  expect(toSquareFeet(stepOf(specification, 'room/dustDown/held').amounts.area)).toBe(96)
  expect(toSquareFeet(stepOf(specification, 'room/dustDown/1').amounts.area)).toBe(256)
  expect(hold.stepKeys).toContain('r/room/dustDown/held')
  expect(hold.stepKeys).not.toContain('r/room/dustDown/1')
  expect(comesBefore(specification, 'r/room/dustDown/held', 'r/walls+held/sandPatch/1')).toBe(true)
  const waits = specification.order.filter(({ before }) => before === 'r/room/dustDown/held')
  expect(waits.filter(({ after }) => after.startsWith('r/walls/'))).toEqual([])
})

test('whatever is found: held and free surfaces are never in one step, and no held dust is stirred up before its hold', () => {
  everySpecification(({ steps, holds }) => {
    const held = new Set(holds.flatMap((hold) => hold.surfaceKeys))
    for (const step of steps.filter(({ surfaceClass }) => surfaceClass !== null)) {
      const isHeld = step.surfaceKeys.map((key) => held.has(key))
      expect(new Set(isHeld).size, step.key).toBeLessThanOrEqual(1)
    }
    for (const hold of holds.filter(({ kind }) => kind === 'asbestos')) {
      const dusting = steps.filter(
        ({ operation, surfaceKeys }) =>
          ['dustDown', 'dustOff', 'vacuum'].includes(operation) &&
          surfaceKeys.some((key) => hold.surfaceKeys.includes(key)),
      )
      expect(hold.stepKeys).toEqual(expect.arrayContaining(dusting.map((step) => step.key)))
    }
  })
})

test('what cures by itself counts from the day it was found, the rest from the first day', () => {
  const foundEarly = { foundOn: '2027-03-10' }
  const plaster = specifyOne({ surfaceClass: 'walls', conditions: [['newPlaster', foundEarly]] })
  // March 10 and 28 days.
  expect(onlyHold(plaster).expectedOn).toBe('2027-04-07')
  const stain = specifyOne({ surfaceClass: 'walls', conditions: [['waterStain', foundEarly]] })
  // March 29 and 14 days.
  expect(onlyHold(stain).expectedOn).toBe('2027-04-12')
})

test('two stains on one wall are one hold with both reasons; one whose leak was cured brings none', () => {
  const two = specifyOne({
    surfaceClass: 'walls',
    conditions: [
      ['waterStain', { suspectedCause: 'gutter' }],
      ['waterStain', { suspectedCause: 'bath above' }],
    ],
  })
  const hold = onlyHold(two)
  expect(hold.reason).toContain('gutter')
  expect(hold.reason).toContain('bath above')
  expect(hold.key).toBe(leakKey)
  expect(hold.surfaceKeys).toEqual(['wall:r:north:whole'])
  const cured = specifyOne({ surfaceClass: 'walls', conditions: [['waterStain', { causeCured: true }]] })
  expect(cured.holds).toEqual([])
})

test('two patches of new plaster on one wall wait for the later of the two', () => {
  const both = specifyOne({
    surfaceClass: 'walls',
    conditions: [
      ['newPlaster', { foundOn: '2027-03-20', areaMm2: squareFoot }],
      ['newPlaster', { foundOn: '2027-03-12', areaMm2: squareFoot }],
    ],
  })
  // March 20 and 28 days.
  expect(onlyHold(both).expectedOn).toBe('2027-04-17')
})

test('a house rule says the usual days', () => {
  const hold = onlyHold(specifyOne({ ...leak, rules: [['water-stain', true, { holdDays: 3 }]] }))
  expect(hold).toMatchObject({ expectedOn: '2027-04-01', usualDays: 3 })
})

test('what was said of a hold is found by its key: who, when, cleared on and by whom', () => {
  const said = record(leakKey, { whoSeesToIt: 'The roofer', expectedOn: '2027-05-01' })
  const told = onlyHold(specifyOne({ ...leak, job: { holds: [said] } }))
  expect(told).toMatchObject({
    whoSeesToIt: 'The roofer',
    expectedOn: '2027-05-01',
    expectedIsAssumed: false,
    cleared: null,
  })
  const cleared = specifyOne({
    ...leak,
    job: { holds: [record(leakKey, { clearedOn: '2027-03-30', clearedBy: 'C. Client' })] },
  })
  expect(onlyHold(cleared).cleared).toEqual({ on: '2027-03-30', by: 'C. Client' })
  expect(cleared.notices.filter((notice) => notice.hold)).toEqual([])
})

test('a day without a name, or a name without a day, clears nothing', () => {
  for (const half of [{ clearedOn: '2027-03-30' }, { clearedBy: 'C. Client' }]) {
    const specification = specifyOne({ ...leak, job: { holds: [record(leakKey, half)] } })
    expect(onlyHold(specification).cleared).toBeNull()
  }
})

test('what is said of a hold changes no step', () => {
  const said = [record(leakKey, { clearedOn: '2027-03-30', clearedBy: 'C. Client' })]
  expect(specifyOne({ ...leak, job: { holds: said } }).steps).toEqual(specifyOne(leak).steps)
  expect(stepOf(specifyOne(leak), 'walls/blockStain/1').surfaceKeys).toEqual(['wall:r:north:whole'])
})

test('until when its steps wait: cleared, expected, overdue, without a day', () => {
  const hold = { cleared: null, expectedOn: '2027-04-12', usualDays: 14 }
  expect(heldUntil({ ...hold, cleared: { on: '2027-04-02', by: 'x' } }, '2027-04-03')).toEqual({
    kind: 'free',
  })
  expect(heldUntil(hold, '2027-03-29')).toEqual({ kind: 'until', on: '2027-04-12' })
  expect(heldUntil(hold, '2027-04-12')).toEqual({ kind: 'until', on: '2027-04-12' })
  expect(heldUntil(hold, '2027-04-13')).toEqual({ kind: 'noDate', isOverdue: true, assumedOn: '2027-04-14' })
  expect(heldUntil({ ...hold, expectedOn: null }, '2027-03-29')).toEqual({
    kind: 'noDate',
    isOverdue: false,
    assumedOn: '2027-04-12',
  })
})

/** What cuts into a surface, wets it or covers it. */
const touching: readonly Operation[] = operations.filter(
  (operation) =>
    ![
      'protectRoom',
      'takeOff',
      'loosenHanging',
      'coverAlarm',
      'dustDown',
      'restoreAlarm',
      'refitHanging',
      'putBack',
      'cleanUp',
      'inspect',
    ].includes(operation),
)

test('whatever is found: no step that disturbs or coats a held surface is outside its hold, and each hold is in one room', () => {
  everySpecification((specification) => {
    for (const hold of specification.holds) {
      const onSurface = specification.steps.filter(
        (step) =>
          touching.includes(step.operation) && step.surfaceKeys.some((key) => hold.surfaceKeys.includes(key)),
      )
      expect(hold.stepKeys).toEqual(expect.arrayContaining(onSurface.map((step) => step.key)))
      for (const key of hold.stepKeys) {
        expect(specification.steps.find((step) => step.key === key)?.roomId).toBe(hold.roomId)
      }
    }
    expect(new Set(specification.holds.map((hold) => hold.key)).size).toBe(specification.holds.length)
  })
})
