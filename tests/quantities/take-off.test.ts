import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Job, records } from '../../core/project/job.ts'
import type { CeilingOpening, Opening, Room, TrimRun } from '../../core/project/sketch-records.ts'
import type { Finish } from '../../core/project/survey-records.ts'
import { compareGirthPolicies, compareOpeningPolicies } from '../../core/quantities/policy-comparison.ts'
import { createTakeOff, takeOff } from '../../core/quantities/take-off.ts'
import type { Takeoff } from '../../core/quantities/takeoff-types.ts'
import { toSquareFeet, toSquareMetres } from '../../core/units/area.ts'
import { feet, inches, lengthFromUnits, metres } from '../../core/units/length.ts'
import { manyRooms } from '../benchmarks/many-rooms.ts'
import { between, oneOf, type Random, randomFrom } from './random-sketch.ts'
import { ceilingOpening, finish, opening, rectangle, run, sash, sketch } from './sketched.ts'

/** All figures and their wording, as plain data. */
const plain = (takeoff: Takeoff) =>
  takeoff.surfaces.map((surface) => ({
    key: surface.key,
    figures: [
      surface.grossArea,
      surface.deductedArea,
      surface.netArea,
      surface.policyArea,
      surface.equivalentArea,
      surface.length,
      surface.count,
      surface.cuttingIn,
      surface.masking,
      surface.glassPerimeter,
      surface.reachHeight,
    ],
    derivation: surface.derivation,
  }))

/** One small edit of any kind, as the sketch or a panel would make it; many leave a sketch that is refused, which must not matter here. */
const edits: readonly ((job: Job, random: Random) => Job)[] = [
  (job, random) =>
    changeOne(job, 'rooms', random, (room) => ({
      ...room,
      ceiling: { kind: 'flat', height: lengthFromUnits(between(random, feet(7), feet(12))) },
    })),
  (job, random) =>
    changeOne(job, 'rooms', random, (room) => ({
      ...room,
      corners: room.corners.map((corner) => ({ ...corner, x: lengthFromUnits(corner.x + feet(0, 3)) })),
    })),
  (job, random) =>
    changeOne(job, 'openings', random, (each) => ({
      ...each,
      width: lengthFromUnits(between(random, feet(1), feet(4))),
    })),
  (job, random) => changeOne(job, 'openings', random, (each) => ({ ...each, far: null })),
  (job, random) => removeOne(job, 'openings', random),
  (job, random) => removeOne(job, 'rooms', random),
  (job, random) =>
    changeOne(job, 'trimRuns', random, (each) => ({ ...each, girth: inches(between(random, 2, 14)) })),
  (job, random) => removeOne(job, 'trimRuns', random),
  (job, random) => withFinish(job, houseOrRoomFinish(job, random)),
  (job, random) => removeOne(job, 'finishes', random),
  (job) => ({ ...job, finishes: Object.fromEntries(Object.entries(job.finishes).reverse()) }),
  (job) => ({ ...job, rooms: Object.fromEntries(Object.entries(job.rooms).reverse()) }),
  (job, random) => ({
    ...job,
    houseRules: {
      ...job.houseRules,
      openingPolicy: oneOf(random, ['exactNet', 'is1200Part13', 'partDeduction']),
    },
  }),
  (job, random) => ({ ...job, header: { ...job.header, unitSystem: oneOf(random, ['imperial', 'metric']) } }),
  (job, random) => {
    const room = oneOf(random, records(job.rooms))
    const first = room.corners[0] as Room['corners'][number]
    const hatch = { ...ceilingOpening(room.id, [first.x, first.y], feet(2), feet(2)), id: `hatch-${room.id}` }
    return { ...job, ceilingOpenings: { ...job.ceilingOpenings, [hatch.id]: hatch as CeilingOpening } }
  },
]

type Named = 'rooms' | 'openings' | 'trimRuns' | 'finishes'

function changeOne<Name extends Named>(
  job: Job,
  name: Name,
  random: Random,
  change: (item: Job[Name][string]) => Job[Name][string],
): Job {
  const list = Object.values(job[name]) as readonly Job[Name][string][]
  if (list.length === 0) return job
  const item = oneOf(random, list)
  return { ...job, [name]: { ...job[name], [item.id]: change(item) } }
}

function removeOne(job: Job, name: Named, random: Random): Job {
  const list = records<{ readonly id: string }>(job[name])
  if (list.length < 2) return job
  const gone = oneOf(random, list).id
  return { ...job, [name]: Object.fromEntries(Object.entries(job[name]).filter(([id]) => id !== gone)) }
}

function withFinish(job: Job, added: Finish): Job {
  return { ...job, finishes: { ...job.finishes, [added.id]: added } }
}

function houseOrRoomFinish(job: Job, random: Random): Finish {
  const surfaceClass = oneOf(random, ['walls', 'trim', 'doors', 'ceiling'] as const)
  const colourId = oneOf(random, ['linen', 'sage', null])
  const room = oneOf(random, records(job.rooms))
  const scope = oneOf(random, [
    { level: 'house', surfaceClass },
    { level: 'room', roomId: room.id, surfaceClass },
    { level: 'surface', surface: { kind: 'ceiling', roomId: room.id } },
    ...records(job.openings)
      .slice(0, 5)
      .map((each) => ({
        level: 'surface' as const,
        surface: {
          kind: 'opening' as const,
          openingId: each.id,
          side: 'near' as const,
          part: 'jamb' as const,
        },
      })),
  ] as const)
  return finish(`finish-${between(random, 0, 5)}`, scope, colourId)
}

test('after any run of edits the remembered takeoff says what a fresh one says, words included', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
      const random = randomFrom(seed)
      const measure = createTakeOff()
      let job = manyRooms(6)
      measure(job)
      for (let step = 0; step < 8; step++) {
        job = oneOf(random, edits)(job, random)
        // Fresh records throughout, so that nothing remembered anywhere can answer.
        expect(plain(measure(job))).toEqual(plain(takeOff(structuredClone(job))))
      }
    }),
    { numRuns: 20, seed: 7 },
  )
})

test('an edit of one room leaves the figures of all rooms it does not share an opening with untouched', () => {
  const job = manyRooms(25)
  const measure = createTakeOff()
  const before = measure(job)
  const room = job.rooms['room-12'] as Room
  const after = measure({
    ...job,
    rooms: { ...job.rooms, [room.id]: { ...room, corners: [...room.corners] } },
  })
  const changed = new Set(
    after.surfaces.flatMap((surface) =>
      before.byKey.get(surface.key) === surface ? [] : [surface.roomId as string],
    ),
  )
  expect([...changed].sort()).toEqual(['room-11', 'room-12', 'room-13', 'room-17', 'room-7'])
})

test('another color that tells the same surfaces apart measures nothing again; one that two surfaces share does', () => {
  const job = manyRooms(4)
  const { colourId, sheen, productClass } = job.finishes['finish-trim'] as Finish
  const measure = createTakeOff()
  const first = measure(job)
  const apart = changeFinish(job, 'finish-walls', { colourId: 'sage' as Finish['colourId'] })
  expect(measure(apart)).toBe(first)
  expect(plain(takeOff(apart))).toEqual(plain(first))
  const alike = changeFinish(job, 'finish-walls', { colourId, sheen, productClass })
  const cutIn = (takeoff: Takeoff) => takeoff.surfaces.reduce((sum, { cuttingIn }) => sum + cuttingIn, 0)
  expect(plain(measure(alike))).toEqual(plain(takeOff(alike)))
  expect(cutIn(measure(alike))).toBeLessThan(cutIn(first))
})

function changeFinish(job: Job, id: string, changes: Partial<Finish>): Job {
  return { ...job, finishes: { ...job.finishes, [id]: { ...(job.finishes[id] as Finish), ...changes } } }
}

test('surfaces are found by their keys, and nothing by a key that is none', () => {
  const takeoff = takeOff(manyRooms(4))
  expect(takeoff.byKey.size).toBe(takeoff.surfaces.length)
  for (const surface of takeoff.surfaces) expect(takeoff.byKey.get(surface.key)).toBe(surface)
  expect([...takeoff.byKey.keys()]).toEqual(takeoff.surfaces.map((surface) => surface.key))
  for (const key of ['', 'wall', 'opening:none:far:slab', 'wall:room-0:north-0:lower:x', 'opening']) {
    expect(takeoff.byKey.has(key)).toBe(false)
  }
})

test('policies for openings stand side by side, each with its rule and source, the exact one with no difference', () => {
  const job = sketch({
    unitSystem: 'metric',
    rooms: [rectangle('a', metres(5), metres(4), { ceiling: { kind: 'flat', height: metres(3) } })],
    openings: [
      opening('door', 'a-0', metres(1), metres(1), metres(2), { kind: 'door' }),
      opening('small', 'a-1', metres(1), metres(0.5), metres(0.8), { sill: metres(1), sash: sash() }),
    ],
  })
  // Gross 18 x 3 = 54; door 2 m2 at the floor, nothing painted in it; window 0.4 m2, its sash painted.
  const areas = compareOpeningPolicies(job).map(({ policy, area }) => [
    policy,
    Number(toSquareMetres(area).toFixed(4)),
  ])
  expect(areas).toEqual([
    ['exactNet', 54 - 2 - 0.4],
    ['is1200Part13', 54 - 2],
    ['minimumVoid', 54 - 2],
    ['noDeduction', 54],
    ['partDeduction', Number((54 - 2 / 3 - 0.4 / 2).toFixed(4))],
  ])
  const [exact, ...others] = compareOpeningPolicies(job)
  expect([exact?.chosen, exact?.difference]).toEqual([true, 0])
  expect(others.every((each) => each.source !== '' && each.rule !== '' && !each.chosen)).toBe(true)
})

test('IS 1200 with a different finish on each face takes half an opening off each', () => {
  const far = { roomId: 'b' as Room['id'], wallId: 'b-0' as Room['corners'][number]['wallId'] }
  const job = sketch({
    unitSystem: 'metric',
    rooms: [
      rectangle('a', metres(5), metres(4), { ceiling: { kind: 'flat', height: metres(3) } }),
      rectangle('b', metres(5), metres(4), { ceiling: { kind: 'flat', height: metres(3) } }, [
        0,
        metres(4.2),
      ]),
    ],
    openings: [opening('o', 'a-2', metres(1), metres(1), metres(2), { kind: 'casedOpening', far })],
    finishes: [finish('b-walls', { level: 'room', roomId: far.roomId, surfaceClass: 'walls' }, 'sage')],
    houseRules: { openingPolicy: 'is1200Part13' },
  })
  const { byKey } = takeOff(job)
  const taken = ['wall:a:a-2:whole', 'wall:b:b-0:whole'].map((key) => {
    const wall = byKey.get(key)
    return toSquareMetres((wall?.grossArea ?? 0) - (wall?.policyArea ?? 0))
  })
  expect(taken).toEqual([1, 1])
})

test('policies for narrow girths stand side by side for trim', () => {
  const job = sketch({
    rooms: [rectangle('a', feet(12), feet(10))],
    trimRuns: [run('a', 'baseboard', { girth: inches(8) } as Partial<TrimRun>)],
  })
  // 44 ft: by 8 in girth, by 12 in, and counted by length under both others.
  const areas = compareGirthPolicies(job).map(({ policy, area }) => [
    policy,
    Number(toSquareFeet(area).toFixed(4)),
  ])
  expect(areas).toEqual([
    ['exactGirth', Number(((44 * 8) / 12).toFixed(4))],
    ['sixTwelveInch', 44],
    ['nineInchByLength', 0],
    ['threeHundredMillimetre', 0],
  ])
})

test('a far side given to a room that is not there is measured on the near side only', () => {
  const far = { roomId: 'gone' as Room['id'], wallId: 'gone-0' as Room['corners'][number]['wallId'] }
  const job = sketch({
    rooms: [rectangle('a', feet(12), feet(10))],
    openings: [opening('o', 'a-0', feet(1), feet(3), feet(7), { kind: 'door', far } as Partial<Opening>)],
  })
  expect(takeOff(job).surfaces.every((surface) => surface.roomId === 'a')).toBe(true)
})
