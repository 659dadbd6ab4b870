import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { sketchProblems } from '../../core/project/sketch-problems.ts'
import type { Opening, Room, TrimRun } from '../../core/project/sketch-records.ts'
import { roomWalls } from '../../core/project/walls.ts'
import { quantityTotals } from '../../core/quantities/quantity-totals.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import type { SurfaceQuantity } from '../../core/quantities/takeoff-types.ts'
import { quantityGroups } from '../../core/specification/quantity-groups.ts'
import { feet, inches, type Length, metres, millimetres } from '../../core/units/length.ts'
import { mapTable, moveJob, planMoves } from './plan-moves.ts'
import { ceilingKinds, oneOf, type Random, randomFrom, randomOpening, randomRoom } from './random-sketch.ts'
import { casing, finish, houseFinish, opening, rectangle, room, run, sash, sketch } from './sketched.ts'

const figures = [
  'grossArea',
  'deductedArea',
  'netArea',
  'policyArea',
  'equivalentArea',
  'length',
  'count',
  'cuttingIn',
  'masking',
  'glassPerimeter',
  'reachHeight',
] as const

/** A sound room with openings, trim, rails and an accent wall; every ceiling shape. */
function randomJob(seed: number): Job {
  const random = randomFrom(seed)
  for (;;) {
    const shape = randomRoom(random, 'r', oneOf(random, ceilingKinds))
    const job = furnish(random, shape)
    if (sketchProblems(job).length === 0) return job
  }
}

function furnish(random: Random, shape: Room): Job {
  const trimRuns = [run('r', 'baseboard'), run('r', 'crown', { height: inches(4) })]
  if (random() < 0.5) trimRuns.push(run('r', 'chairRail', { level: inches(32), height: inches(2) }))
  let openings: readonly Opening[] = []
  const job = () => sketch({ rooms: [shape], openings, trimRuns, finishes: twoFinishes(shape) })
  for (const wall of roomWalls(shape)) {
    const dressed = {
      ...randomOpening(random, `o${openings.length}`, wall.id, wall.length),
      casingNear: casing,
      jambDepth: inches(4),
      sash: sash({ stile: millimetres(20), topRail: millimetres(20), bottomRail: millimetres(20) }),
    }
    const before = openings
    openings = [...openings, dressed]
    if (sketchProblems(job()).length > 0) openings = before
  }
  return job()
}

function twoFinishes(shape: Room) {
  const wallId = shape.corners[0]?.wallId as Room['corners'][number]['wallId']
  return [
    houseFinish('walls', 'linen'),
    houseFinish('ceiling', 'sage'),
    houseFinish('trim', 'brick'),
    finish(
      'accent',
      { level: 'surface', surface: { kind: 'wall', roomId: shape.id, wallId, zone: 'whole' } },
      'brick',
    ),
  ]
}

/** Slanting lengths are not whole, so that a rounding may fall the other way: one grain. */
function expectSame(one: SurfaceQuantity | undefined, other: SurfaceQuantity, grain: number): void {
  for (const name of figures) {
    expect(Math.abs((one?.[name] ?? Number.NaN) - other[name]), `${other.key} ${name}`).toBeLessThanOrEqual(
      grain,
    )
  }
}

const anySeed = fc.integer({ min: 1, max: 1_000_000 })

test.each(planMoves)('a plan $name has the same figures, surface by surface', (move) => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      const job = randomJob(seed)
      const moved = takeOff(moveJob(job, move))
      for (const surface of takeOff(job).surfaces) expectSame(moved.byKey.get(surface.key), surface, 1)
    }),
    { numRuns: 60, seed: 1 },
  )
})

/** Two rooms with a shared door, a window, and trim. */
function twoRooms(changes: Partial<Opening> = {}): Job {
  return sketch({
    rooms: [rectangle('a', feet(12), feet(10)), rectangle('b', feet(12), feet(8), {}, [0, feet(10, 6)])],
    openings: [
      opening('door', 'a-2', feet(3), inches(32), inches(80), {
        kind: 'door',
        far: { roomId: 'b' as Opening['roomId'], wallId: 'b-0' as Opening['wallId'] },
        casingNear: casing,
        casingFar: casing,
        jambDepth: inches(6),
        slab: {
          kind: 'panelled',
          thickness: inches(1.375),
          leaves: 1,
          paintNear: true,
          paintFar: true,
          edgesShow: 'near',
        },
        ...changes,
      }),
      opening('window', 'a-0', feet(4), feet(3), feet(4), {
        sill: feet(3),
        casingNear: casing,
        sash: sash(),
      }),
    ],
    trimRuns: [run('a', 'baseboard'), run('a', 'crown'), run('b', 'baseboard')],
    finishes: [houseFinish('walls', 'linen'), houseFinish('ceiling', 'sage'), houseFinish('trim', 'brick')],
  })
}

test.each(planMoves)('two rooms with a shared door $name have exactly the same figures', (move) => {
  const moved = takeOff(moveJob(twoRooms(), move))
  const before = takeOff(twoRooms())
  expect(moved.surfaces.length).toBe(before.surfaces.length)
  for (const surface of before.surfaces) expectSame(moved.byKey.get(surface.key), surface, 0)
})

test('whichever corner the outline starts from, each wall has the same figures', () => {
  fc.assert(
    fc.property(anySeed, fc.integer({ min: 1, max: 8 }), (seed, shift) => {
      const job = randomJob(seed)
      const turned = {
        ...job,
        rooms: mapTable(job.rooms, (shape) => {
          const first = shift % shape.corners.length
          return { ...shape, corners: [...shape.corners.slice(first), ...shape.corners.slice(0, first)] }
        }),
      }
      const after = takeOff(turned)
      for (const surface of takeOff(job).surfaces) expectSame(after.byKey.get(surface.key), surface, 1)
    }),
    { numRuns: 60, seed: 2 },
  )
})

test('an outline drawn the other way round has the same ceiling and the same walls', () => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      const shape = randomRoom(randomFrom(seed), 'r', 'gable')
      const job = sketch({ rooms: [shape] })
      if (sketchProblems(job).length > 0) return
      const spots = shape.corners.map((corner) => [corner.x, corner.y] as const)
      const back = sketch({ rooms: [room('r', [...spots].reverse(), { ceiling: shape.ceiling })] })
      const areas = (one: Job) =>
        takeOff(one)
          .surfaces.map((surface) => surface.netArea)
          .sort((a, b) => a - b)
      areas(job).forEach((area, index) => {
        expect(Math.abs(area - (areas(back)[index] ?? Number.NaN))).toBeLessThanOrEqual(1)
      })
    }),
    { numRuns: 60, seed: 3 },
  )
})

test('records renamed throughout give the same figures', () => {
  const text = JSON.stringify(twoRooms())
  const renamed = JSON.parse(
    text
      .replaceAll('"a', '"north-room')
      .replaceAll('"north-roombove"', '"above"')
      .replaceAll('"north-roomir"', '"air"'),
  ) as Job
  const before = takeOff(twoRooms()).surfaces
  const after = takeOff(renamed).surfaces
  expect(after.map((surface) => figures.map((name) => surface[name]))).toEqual(
    before.map((surface) => figures.map((name) => surface[name])),
  )
  expect(after[0]?.roomId).toBe('north-room')
})

test('a wall divided by a corner in its middle has the same figures in two parts', () => {
  const whole = twoRooms()
  const a = whole.rooms.a as Room
  const [first, ...rest] = a.corners as readonly [Room['corners'][number], ...Room['corners'][number][]]
  const middle = { ...first, wallId: 'a-0b' as Room['corners'][number]['wallId'], x: feet(8) }
  const divided = { ...whole, rooms: { ...whole.rooms, a: { ...a, corners: [first, middle, ...rest] } } }
  expect(sketchProblems(divided)).toEqual([])
  expect(quantityTotals(takeOff(divided).surfaces)).toEqual(quantityTotals(takeOff(whole).surfaces))
})

test('one more opening never raises the net area of the walls, nor lowers it below nothing', () => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      const random = randomFrom(seed)
      const shape = randomRoom(random, 'r', oneOf(random, ceilingKinds))
      const plain = sketch({ rooms: [shape] })
      if (sketchProblems(plain).length > 0) return
      const wall = oneOf(random, roomWalls(shape))
      const more = sketch({ rooms: [shape], openings: [randomOpening(random, 'o', wall.id, wall.length)] })
      // Also where the opening does not fit: figures of a refused sketch are still never negative.
      const before = takeOff(plain)
      for (const surface of takeOff(more).surfaces) {
        expect(surface.netArea).toBeGreaterThanOrEqual(0)
        const was = before.byKey.get(surface.key)
        if (was !== undefined) expect(surface.netArea).toBeLessThanOrEqual(was.netArea)
      }
    }),
    { numRuns: 300, seed: 4 },
  )
})

test('no figure is ever negative, fractional or not a number, however broken the sketch', () => {
  const anything = fc.integer({ min: -metres(5), max: metres(5) })
  const size = fc.integer({ min: 1, max: metres(6) })
  const spots = fc.array(fc.tuple(anything, anything), { minLength: 3, maxLength: 7 })
  fc.assert(
    fc.property(spots, size, size, size, size, (corners, offset, width, height, rise) => {
      const odd = opening('o', 'r-0', offset, width, height, {
        head: { kind: 'segment', rise: rise as Length },
        sash: sash({ operation: 'doubleHung', lightsAcross: 4 }),
        stool: { depth: inches(4), thickness: inches(1), apron: inches(3) },
        jambDepth: inches(4),
        casingNear: casing,
      })
      const job = sketch({
        rooms: [
          room('r', corners, {
            ceiling: { kind: 'shed', along: 'x', startHeight: 0 as Length, endHeight: rise as Length },
          }),
        ],
        openings: [odd],
        trimRuns: [
          run('r', 'baseboard'),
          run('r', 'crown'),
          run('r', 'wainscotCap', { level: offset as Length }),
        ],
      })
      for (const surface of takeOff(job).surfaces) {
        for (const name of figures) {
          expect(Number.isSafeInteger(surface[name]) && surface[name] >= 0, `${surface.key} ${name}`).toBe(
            true,
          )
        }
      }
    }),
    { numRuns: 400, seed: 5 },
  )
})

test('rooms, storeys and kinds each add up to the house exactly', () => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      const job = randomJob(seed)
      const takeoff = takeOff(job)
      const house = quantityTotals(takeoff.surfaces)
      for (const by of ['storey', 'room', 'surfaceClass'] as const) {
        const groups = quantityGroups(job, takeoff, { steps: [] }, by)
        const sums = figures.flatMap((name) =>
          name in house
            ? [groups.reduce((sum, group) => sum + group.totals[name as keyof typeof house], 0)]
            : [],
        )
        const expected = figures.flatMap((name) => (name in house ? [house[name as keyof typeof house]] : []))
        expect(sums).toEqual(expected)
      }
    }),
    { numRuns: 30, seed: 6 },
  )
})

test('the same room typed in feet and inches and in millimetres has exactly the same figures', () => {
  const byInches = (value: number) => inches(value)
  const byMillimetres = (value: number) => millimetres(value * 25.4)
  const typed = (length: (value: number) => Length): Job =>
    sketch({
      rooms: [
        rectangle('a', length(150.5), length(120), {
          ceiling: {
            kind: 'gable',
            along: 'x',
            startHeight: length(96),
            endHeight: length(90.25),
            ridgeAt: length(70),
            ridgeHeight: length(130),
          },
        }),
      ],
      openings: [
        opening('w', 'a-1', length(20), length(32), length(54), {
          sill: length(30),
          sash: sash({ stile: length(2.25), topRail: length(2.25), bottomRail: length(3.25) }),
        }),
      ],
      trimRuns: [run('a', 'baseboard', { height: length(7.5), girth: length(9.125) } as Partial<TrimRun>)],
    })
  const imperial = takeOff(typed(byInches)).surfaces
  const metric = takeOff(typed(byMillimetres)).surfaces
  expect(metric.map((surface) => figures.map((name) => surface[name]))).toEqual(
    imperial.map((surface) => figures.map((name) => surface[name])),
  )
})
