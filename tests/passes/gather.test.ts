import fc from 'fast-check'
import { expect, test } from 'vitest'
import { createGatherPasses, gatherPasses } from '../../core/passes/gather.ts'
import type { Passes } from '../../core/passes/pass-types.ts'
import { labour } from '../../core/price/labour.ts'
import { tableOf } from '../../core/project/empty-job.ts'
import type { HoldRecord } from '../../core/project/hold-records.ts'
import type { Job } from '../../core/project/job.ts'
import { roomSetsOf } from '../../core/project/room-sets.ts'
import type { Room, RoomId } from '../../core/project/sketch-records.ts'
import { createTakeOff, takeOff } from '../../core/quantities/take-off.ts'
import { createSpecify, specify } from '../../core/specification/specify.ts'
import { lShapedRoom } from '../../demo-data/l-shaped-room.ts'
import { oldHouse } from '../../demo-data/old-house.ts'
import { plainRoom } from '../../demo-data/plain-room.ts'
import { randomHouse } from '../specification/random-house.ts'
import { type Gathered, gathered } from './gathered.ts'
import { randomWork } from './random-work.ts'
import { expectSound } from './sound-passes.ts'

test.each([
  ['old house', oldHouse()],
  ['plain room', plainRoom()],
  ['room with a corner', lShapedRoom()],
])(
  'the passes of the %s hold every step once, in an order without a circle or a wait inside',
  (_name, job) => {
    const { passes, specification, minutes } = gathered(job)
    expectSound(passes, specification, minutes)
  },
)

test('so do those of a room with anything found in it', () => {
  fc.assert(
    fc.property(randomHouse, ({ job, takeoff }) => {
      const { passes, specification, minutes } = gathered(job, takeoff)
      expectSound(passes, specification, minutes)
    }),
    { numRuns: 120, seed: 12 },
  )
})

test('and those of work that no rule book would ask for', () => {
  fc.assert(
    fc.property(randomWork, ({ job, specification, minutes }) => {
      expectSound(gatherPasses(job, specification, minutes), specification, minutes)
    }),
    { numRuns: 400, seed: 12 },
  )
})

test('the old house is gathered into about fourteen passes a room set, none too small for a visit', () => {
  const { passes } = gathered(oldHouse())
  expect(passes.sets).toHaveLength(13)
  expect(passes.passes.length / passes.sets.length).toBeLessThanOrEqual(15)
  expect(passes.passes.filter(({ personMinutes }) => personMinutes <= 15)).toEqual([])
})

test('a plain room is nine passes, in the words of the trade: filler dries between the repairs and their sanding', () => {
  const { passes } = gathered(plainRoom())
  expect(passes.passes.map(({ key, name }) => [key, name])).toEqual([
    ['room/setUp/1', 'Set up'],
    ['room/sand/1', 'Repairs; sand woodwork; caulk trim'],
    ['room/prime/1', 'Sand and prime patches on walls and trim'],
    ['room/ceiling/1', 'Ceiling'],
    ['room/woodwork/1', 'Woodwork, first coat'],
    ['room/woodwork/2', 'Woodwork, second coat'],
    ['room/walls/1', 'Walls, first coat'],
    ['room/walls/2', 'Walls, second coat'],
    ['room/putBack/1', 'Put back, clean up, look over'],
  ])
})

test('small fills and caulk are no passes of their own: they go with repairs or sanding that are there anyway', () => {
  const { passes, specification } = gathered(oldHouse())
  const operationOf = new Map(specification.steps.map(({ key, operation }) => [key, operation]))
  const operationsOf = (stepKeys: readonly string[]) => stepKeys.map((key) => operationOf.get(key))
  const caulked = passes.passes
    .map(({ stepKeys }) => operationsOf(stepKeys))
    .filter((of) => of.includes('caulk'))
  expect(caulked.length).toBeGreaterThan(5)
  for (const operations of caulked) expect(new Set(operations).size).toBeGreaterThan(1)
  const filled = passes.passes.filter(({ stepKeys }) => operationsOf(stepKeys).includes('fillSmall'))
  expect(filled.length).toBeGreaterThan(5)
  for (const { name } of filled) expect(name).toContain('Repairs')
})

test('closets are worked with the rooms their doors lead to, in the order of these rooms', () => {
  const { passes } = gathered(oldHouse())
  const bedroom = passes.sets.find(({ id }) => id === 'rear-bedroom')
  expect(bedroom?.roomIds).toEqual(['rear-bedroom', 'rear-closet'])
  const coats = passes.passes.filter(
    ({ roomSetId, kind }) => roomSetId === 'rear-bedroom' && kind === 'ceiling',
  )
  expect(coats.map(({ roomIds }) => roomIds)).toEqual([['rear-bedroom', 'rear-closet']])
})

test('a room said to be worked alone is a set of its own', () => {
  const house = oldHouse()
  const closet = house.rooms['rear-closet'] as Room
  const alone = { ...house, rooms: { ...house.rooms, [closet.id]: { ...closet, workedWith: closet.id } } }
  expect(roomSetsOf(alone).map(({ id }) => id)).toContain('rear-closet')
})

test('rooms that are said to be worked with one another in a ring are worked alone', () => {
  const house = oldHouse()
  const ring = (id: string, other: string) => ({ ...(house.rooms[id] as Room), workedWith: other as RoomId })
  const rooms = { ...house.rooms, living: ring('living', 'dining'), dining: ring('dining', 'living') }
  const sets = roomSetsOf({ ...house, rooms })
  expect(sets.filter(({ id }) => id === 'living' || id === 'dining').map(({ roomIds }) => roomIds)).toEqual([
    ['living'],
    ['dining'],
  ])
})

test('keys outlive an edit elsewhere in the house', () => {
  const house = oldHouse()
  const { passes } = gathered(house)
  const living = { ...(house.rooms.living as Room), note: 'Piano stays' }
  const again = gathered({ ...house, rooms: { ...house.rooms, living } })
  expect(again.passes.passes.map(({ key }) => key)).toEqual(passes.passes.map(({ key }) => key))
})

test('a pass waits for the latest day of what holds its steps', () => {
  const { passes, specification } = gathered(oldHouse())
  const holds = specification.holds.filter(({ cleared }) => cleared === null)
  const dayOf = (stepKey: string) =>
    holds
      .flatMap(({ stepKeys, expectedOn }) => (stepKeys.includes(stepKey) ? [expectedOn ?? '9999'] : []))
      .toSorted()
      .at(-1)
  expect(holds.length).toBeGreaterThan(5)
  for (const pass of passes.passes) {
    const days = pass.stepKeys.flatMap((key) => dayOf(key) ?? [])
    expect(pass.notBefore ?? '').toBe(days.toSorted().at(-1) ?? '')
  }
})

test('where nobody knows when a hold is cleared, it keeps back nothing but what follows from it', () => {
  const house = oldHouse()
  const { holds } = specify(house, takeOff(house))
  const unknown = holds.map(
    ({ key }): HoldRecord => ({
      id: key as HoldRecord['id'],
      holdKey: key,
      whoSeesToIt: '',
      expectedOn: null,
      clearedOn: null,
      clearedBy: '',
      note: '',
    }),
  )
  const { passes, specification, minutes } = gathered({ ...house, holds: tableOf(unknown) })
  const waiting = new Set(specification.holds.flatMap(({ stepKeys }) => stepKeys))
  for (let known = 0; known < waiting.size; ) {
    known = waiting.size
    for (const { before, after } of specification.order) if (waiting.has(before)) waiting.add(after)
  }
  const held = passes.passes.filter(({ holdKeys }) => holdKeys.length > 0)
  expect(held.length).toBeGreaterThan(20)
  expectSound(passes, specification, minutes)
  for (const { stepKeys } of held) {
    // Tape comes off when somebody is in the room anyway.
    expect(stepKeys.filter((key) => !waiting.has(key) && !key.includes('/unmask/'))).toEqual([])
  }
})

test('the house rules part priming, repairs and large passes', () => {
  const house = oldHouse()
  const withRules = (change: Partial<Job['houseRules']['passes']>) =>
    gathered({
      ...house,
      houseRules: { ...house.houseRules, passes: { ...house.houseRules.passes, ...change } },
    })
  const classesOf = ({ passes, specification }: Gathered, kind: string) => {
    const byKey = new Map(specification.steps.map((step) => [step.key, step]))
    return passes.passes
      .filter((pass) => pass.kind === kind)
      .map((pass) => new Set(pass.stepKeys.flatMap((key) => byKey.get(key)?.surfaceClass ?? [])))
  }
  const isMixed = (classes: ReadonlySet<string>) =>
    (classes.has('walls') || classes.has('ceiling')) &&
    (classes.has('trim') || classes.has('sash') || classes.has('doors'))
  expect(classesOf(withRules({}), 'prime').some(isMixed)).toBe(true)
  const apart = withRules({ primed: 'apart', repairs: 'apart' })
  expectSound(apart.passes, apart.specification, apart.minutes)
  expect(classesOf(apart, 'prime').some(isMixed)).toBe(false)
  const most = (hours: number) => withRules({ largestHours: hours }).passes.passes.length
  expect(most(4)).toBeGreaterThan(most(6.5))
  expect(most(6.5)).toBeGreaterThanOrEqual(most(12))
})

test('an edit gathers the room sets it touches again, the others keep their passes, and the answer is the same', () => {
  const [measure, follow, gather] = [createTakeOff(), createSpecify(), createGatherPasses()]
  const gatheredBy = (job: Job) => {
    const specification = follow(job, measure(job))
    const minutes = new Map(labour(job, specification).steps.map((line) => [line.stepKey, line.minutes]))
    return gather(job, specification, minutes)
  }
  const house = oldHouse()
  const before = gatheredBy(house)
  const [found] = Object.values(house.conditions).filter(
    ({ on }) => on.level === 'room' && on.roomId === 'living',
  )
  const without = Object.fromEntries(Object.entries(house.conditions).filter(([id]) => id !== found?.id))
  expect(found).toBeDefined()
  const edited = { ...house, conditions: without }
  const after = gatheredBy(edited)
  expect(after).toEqual(gathered(edited).passes)
  const kept = new Set(before.passes)
  const isKept = (pass: Passes['passes'][number]) => kept.has(pass)
  expect(after.passes.filter(({ roomSetId }) => roomSetId !== 'living').every(isKept)).toBe(true)
  expect(after.passes.filter(({ roomSetId }) => roomSetId === 'living').some(isKept)).toBe(false)
})
