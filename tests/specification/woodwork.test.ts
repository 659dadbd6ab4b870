import fc from 'fast-check'
import { expect, test } from 'vitest'
import { gatherPasses } from '../../core/passes/gather.ts'
import { defaultRate } from '../../core/price/default-rates.ts'
import { labourParts, stepMinutes, woodworkMinutes } from '../../core/price/labour.ts'
import type { Job } from '../../core/project/job.ts'
import type { Rate } from '../../core/project/shop-records.ts'
import { type TrimKind, trimKinds } from '../../core/project/vocabulary.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import type { Takeoff } from '../../core/quantities/takeoff-types.ts'
import { amountsSum } from '../../core/specification/amounts.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Specification, Step } from '../../core/specification/types.ts'
import { partWords } from '../../core/specification/woodwork.ts'
import { toSquareFeet } from '../../core/units/area.ts'
import { feet, toFeet } from '../../core/units/length.ts'
import { oldHouse } from '../../demo-data/old-house.ts'
import { buildJob, conditionOn, existingOn, finishFor, rectangularRoom } from '../fixtures/job-builder.ts'
import { partOf, plainSurfaces, quantity, takeoffOf, trimOf } from './hand-takeoff.ts'
import { windowIn } from './rooms.ts'

function trimRun(kind: TrimKind) {
  const sizes = { height: feet(0.5), girth: feet(0.5), level: feet(0), profiled: false }
  return { id: `r-${kind}`, roomId: 'r', kind, walls: null, ...sizes } as never
}

interface House {
  readonly job: Job
  readonly takeoff: Takeoff
}

/** A room with a crown of 48 ft, casings of 121 ft and a base of 56 ft, each half a foot round, and both faces of a door. */
function house(
  given: {
    readonly deglosser?: boolean
    readonly lengths?: readonly number[]
    readonly crownAt?: number
  } = {},
): House {
  const [crown = 48, casings = 121, base = 56] = given.lengths ?? []
  const job = buildJob({
    rooms: [rectangularRoom('r', 12, 10)],
    trimRuns: trimKinds.map(trimRun),
    openings: [{ ...windowIn('d', 'r', 'fixed'), kind: 'door', sash: null }],
    existing: [
      existingOn('trim', 'wood', 'oilPaint', { sheen: 'gloss' }),
      existingOn('doors', 'wood', 'oilPaint', { sheen: 'gloss' }),
    ],
    finishes: [
      finishFor('walls', 'latexWall', 'white', 'flat'),
      finishFor('trim', 'waterborneEnamel', 'white', 'satin'),
      finishFor('doors', 'waterborneEnamel', 'white', 'satin'),
    ],
    conditions: [conditionOn('dents', 'hole', { roomId: 'r', surfaceClass: 'trim' }, { count: 5 })],
    rules: given.deglosser ? [{ id: 'oil-deglosser' as never, on: true, numbers: {} }] : [],
  })
  const long = (length: number) => ({ area: length / 2, length, masking: length / 3 })
  const surfaces = [
    ...plainSurfaces('r').filter((each) => each.surfaceClass !== 'trim'),
    quantity('r', trimOf('r', 'r-baseboard'), 'trim', long(base)),
    quantity('r', partOf('d', 'casing'), 'trim', { ...long(casings), count: 2 }),
    quantity('r', trimOf('r', 'r-crown'), 'trim', {
      ...long(crown),
      cuttingIn: 2 * crown,
      reach: given.crownAt ?? 8,
    }),
    quantity('r', partOf('d', 'slab'), 'doors', { area: 40, count: 2 }),
  ]
  return { job, takeoff: takeoffOf(...surfaces) }
}

function stepFrom({ job, takeoff }: House, key: string): Step {
  const step = specify(job, takeoff).steps.find((each) => each.key === key)
  if (step === undefined) throw new RangeError(key)
  return step
}

function addsUp({ steps }: Specification, job: Job): void {
  for (const step of steps.filter(({ parts }) => parts.length > 0)) {
    expect(amountsSum(step.parts.map((part) => part.amounts)), step.key).toEqual(step.amounts)
    const minutes = woodworkMinutes(job, step).reduce((sum, part) => sum + part.minutes, 0)
    expect(minutes, step.key).toBeCloseTo(stepMinutes(job, step), 6)
  }
}

test('a coat on trim says its crown, casings and base, from the ceiling down, under the key it always had', () => {
  const coat = stepFrom(house(), 'r/trim/coat/1')
  expect(coat.parts.map((part) => [part.kind, toFeet(part.amounts.length)])).toEqual([
    ['crown', 48],
    ['casing', 121],
    ['baseboard', 56],
  ])
  expect(toFeet(coat.amounts.length)).toBe(225)
  expect(coat.parts.map((part) => partWords(part, 'imperial'))).toEqual([
    'crown 48\' 0"',
    'casings 121\' 0"',
    'base 56\' 0"',
  ])
})

test('doors are one kind by themselves, and where only spots are filled nothing is said by kind', () => {
  const door = stepFrom(house(), 'r/doors/coat/1')
  expect(door.parts.map((part) => partWords(part, 'imperial'))).toEqual(['doors 2 faces'])
  expect(stepFrom(house(), 'r/trim/fill/1').parts).toEqual([])
  expect(stepFrom(house(), 'r/walls/coat/1').parts).toEqual([])
})

test('minutes by kind: 24 sq ft of crown at 50 an hour and 96 ft of cutting in at 240, times the difficulty', () => {
  const given = house()
  const coat = stepFrom(given, 'r/trim/coat/1')
  const [crown, casings] = woodworkMinutes(given.job, coat)
  expect(crown?.minutes).toBeCloseTo((24 / 50 + 96 / 240) * 60 * coat.difficulty, 6)
  expect(casings?.minutes).toBeCloseTo((60.5 / 50) * 60 * coat.difficulty, 6)
})

test('somebody climbs for the crown of a high room, and not for its casings and base', () => {
  const [low, high] = [8, 10].map((crownAt) => stepFrom(house({ crownAt }), 'r/trim/coat/1').difficulty)
  // 24 of 112.5 sq ft are out of reach: 20 % of that much is 4.3 %.
  expect((high ?? 0) - (low ?? 0)).toBeCloseTo(0.04, 6)
})

test("a shop's own rate for crowns changes the crown and nothing else", () => {
  const given = house()
  const rate: Rate = { id: 'coat-crown' as Rate['id'], basis: 'length', perHour: 24, source: 'own' }
  const own = { ...given.job, rates: { ...given.job.rates, 'coat-crown': rate } }
  const coat = stepFrom(given, 'r/trim/coat/1')
  const [before, after] = [given.job, own].map((job) => woodworkMinutes(job, coat))
  expect(after?.[0]?.minutes).toBeCloseTo((48 / 24 + 96 / 240) * 60 * coat.difficulty, 6)
  expect(after?.slice(1)).toEqual(before?.slice(1))
  const trimRate = defaultRate('coat-trim')
  expect(labourParts(own, coat).map((part) => [part.rate.id, Number(part.quantity.toFixed(6))])).toEqual([
    ['coat-crown', 48],
    [trimRate?.id, 88.5],
    ['cutIn-trim', 96],
  ])
})

test('a line of a pass says its woodwork by kind', () => {
  const { job, takeoff } = house()
  const specification = specify(job, takeoff)
  const minutes = new Map(specification.steps.map((step) => [step.key, stepMinutes(job, step)]))
  const lines = gatherPasses(job, specification, minutes).passes.flatMap((pass) => pass.lines)
  const coat = lines.find((line) => line.stepKeys.includes('r/trim/coat/1'))
  expect(coat?.words).toContain('crown 48\' 0", casings 121\' 0", base 56\' 0"')
  expect(coat?.words).toContain('doors 2 faces')
  expect(coat?.parts.map((part) => part.kind)).toEqual(['crown', 'casing', 'baseboard', 'doors'])
})

test('parts of every step add up to the step, whatever the lengths, in batches too', () => {
  const length = fc.integer({ min: 1, max: 300_000 }).map((hundredths) => hundredths / 1000)
  fc.assert(
    fc.property(fc.tuple(length, length, length), fc.boolean(), (lengths, deglosser) => {
      const { job, takeoff } = house({ lengths, deglosser })
      const specification = specify(job, takeoff)
      expect(specification.steps.some(({ parts }) => parts.length > 1)).toBe(true)
      addsUp(specification, job)
    }),
    { numRuns: 60, seed: 11 },
  )
})

test('batches that are wiped and coated in turn hold all of the woodwork between them', () => {
  const given = house({ deglosser: true, lengths: [211.1, 173.7, 149.3] })
  const { steps } = specify(given.job, given.takeoff)
  const batches = steps.filter(
    ({ operation, surfaceClass }) => operation === 'degloss' && surfaceClass === 'trim',
  )
  expect(batches.length).toBeGreaterThan(1)
  const area = amountsSum(batches.map((step) => step.amounts)).area
  expect(toSquareFeet(area)).toBeCloseTo((211.1 + 173.7 + 149.3) / 2, 3)
})

test('parts of every step of the old house add up, and its trim is never one lump', () => {
  const job = oldHouse()
  const specification = specify(job, takeOff(job))
  addsUp(specification, job)
  const coats = specification.steps.filter(
    ({ operation, surfaceClass }) => operation === 'coat' && surfaceClass === 'trim',
  )
  expect(coats.length).toBeGreaterThan(10)
  expect(coats.filter(({ parts }) => parts.length === 0)).toEqual([])
})
