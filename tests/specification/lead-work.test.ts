import fc from 'fast-check'
import { expect, test } from 'vitest'
import { estimate } from '../../core/price/estimate.ts'
import type { Opening, Room } from '../../core/project/sketch-records.ts'
import type { SurfaceQuantity } from '../../core/quantities/takeoff-types.ts'
import { firstOpenings } from '../../core/sketch/opening-templates.ts'
import { sheetedFloor } from '../../core/specification/lead-steps.ts'
import { createSpecify } from '../../core/specification/specify.ts'
import type { Operation } from '../../core/specification/types.ts'
import { toSquareFeet } from '../../core/units/area.ts'
import { feet } from '../../core/units/length.ts'
import { buildJob, conditionOn, existingOn, finishFor, rectangularRoom } from '../fixtures/job-builder.ts'
import { partOf, plainSurfaces, quantity, takeoffOf, trimOf } from './hand-takeoff.ts'
import { baseboard, squareFootMm2 } from './rooms.ts'

const leadOperations: readonly Operation[] = [
  'postSigns',
  'sheetFloor',
  'sealOpenings',
  'cleanDaily',
  'bagSheeting',
  'cleanFinal',
  'wipeCheck',
]

/** One room of a house: its age, loose paint on the walls in tenths of a square foot, and trim that is sanded or not. */
const roomOfHouse = fc.record({
  yearBuilt: fc.constantFrom(null, 1925, 1977, 1978, 1995),
  looseTenths: fc.integer({ min: 0, max: 120 }),
  wallsBare: fc.boolean(),
  trimSanded: fc.boolean(),
  earlier: fc.constantFrom(0, 0, 3, 6),
  on: fc.constantFrom(true, true, true, false),
})
type Given = typeof roomOfHouse extends fc.Arbitrary<infer Value> ? Value : never

function jobOf({ yearBuilt, looseTenths, wallsBare, trimSanded, earlier, on }: Given) {
  return buildJob({
    header: { yearBuilt },
    rooms: [rectangularRoom('r', 12, 10)],
    trimRuns: [baseboard('r', false)],
    existing: [
      existingOn('walls', 'plaster', wallsBare ? 'bare' : 'latexFlat'),
      existingOn('trim', 'wood', trimSanded ? 'latexGlossy' : 'latexFlat', {
        sheen: trimSanded ? 'gloss' : 'flat',
      }),
    ],
    finishes: [
      finishFor('walls', 'latexWall', 'white', 'flat'),
      finishFor('trim', 'waterborneEnamel', 'white', 'satin'),
    ],
    conditions:
      looseTenths === 0
        ? []
        : [
            conditionOn(
              'loose',
              'loosePaint',
              { roomId: 'r', surfaceClass: 'walls' },
              { areaMm2: (looseTenths / 10) * squareFootMm2 },
            ),
          ],
    rules: [{ id: 'lead-safe' as never, on, numbers: { earlierSquareFeet: earlier } }],
  })
}

/** The baseboard of the room is 22 sq ft; bare walls have no paint to disturb. */
function disturbedTenths({ looseTenths, wallsBare, trimSanded }: Given): number {
  return (wallsBare ? 0 : looseTenths) + (trimSanded ? 220 : 0)
}

test('lead-safe steps stand exactly where the arithmetic of 40 CFR 745.83 says so', () => {
  const specify = createSpecify()
  fc.assert(
    fc.property(roomOfHouse, (given) => {
      const job = jobOf(given)
      const takeoff = takeoffOf(...plainSurfaces('r').slice(1))
      const specification = specify(job, takeoff)
      const disturbed = disturbedTenths(given)
      const isOld = given.yearBuilt === null || given.yearBuilt < 1978
      const covered = given.on && isOld && disturbed > 0 && disturbed + given.earlier * 10 > 60
      const found = specification.steps.map((step) => step.operation)
      expect(leadOperations.filter((each) => found.includes(each))).toEqual(covered ? leadOperations : [])
      const papers = estimate(job, takeoff, specification).labour.houseWork
      expect(papers.length).toBe(covered ? 1 : 0)
      expect(specification.clashes).toEqual([])
    }),
    { numRuns: 300, seed: 745 },
  )
})

test('whatever disturbs old paint lies between the sheeting and the wipe check, and finish coats after it', () => {
  const specify = createSpecify()
  fc.assert(
    fc.property(roomOfHouse, (given) => {
      const { steps } = specify(jobOf(given), takeoffOf(...plainSurfaces('r').slice(1)))
      const at = (operation: Operation) => steps.findIndex((step) => step.operation === operation)
      if (at('wipeCheck') < 0) return
      for (const [index, step] of steps.entries()) {
        if (step.operation === 'scrape' || step.key.endsWith('/sand/1')) {
          expect(index).toBeGreaterThan(Math.max(at('postSigns'), at('sheetFloor'), at('sealOpenings')))
          expect(index).toBeLessThan(Math.min(at('bagSheeting'), at('cleanFinal'), at('wipeCheck')))
        }
        if (step.operation === 'coat') expect(index).toBeGreaterThan(at('wipeCheck'))
      }
    }),
    { numRuns: 200, seed: 745 },
  )
})

test('floor is sheeted before each disturbed surface and beyond its ends, all of it under a ceiling, never more than there is', () => {
  const window: Opening = {
    ...firstOpenings.window,
    id: 'w' as Opening['id'],
    name: '',
    roomId: 'r' as Opening['roomId'],
    wallId: 'north' as Opening['wallId'],
    offset: feet(2),
    width: feet(3),
    far: null,
    casingFar: null,
  }
  const job = buildJob({
    rooms: [rectangularRoom('r', 12, 10)],
    openings: [window],
  })
  const [room] = Object.values(job.rooms) as [Room]
  const sheeted = (reach: number, ...surfaces: readonly SurfaceQuantity[]) =>
    toSquareFeet(sheetedFloor(job, room, surfaces, reach))
  const [ceiling, north, east] = plainSurfaces('r') as [SurfaceQuantity, SurfaceQuantity, SurfaceQuantity]
  const upper = { ...north, key: `${north.key}-upper` }
  const part = (name: 'sash' | 'casing') => quantity('r', partOf('w', name), 'sash', { area: 6, length: 14 })
  const run = quantity('r', trimOf('r', 'rail'), 'trim', { area: 5, length: 8 })
  expect(sheeted(1, north)).toBe(14)
  expect(sheeted(1, north, upper)).toBe(14)
  expect(sheeted(1, north, east)).toBe(14 + 12)
  expect(sheeted(2, north)).toBe(16 * 2)
  expect(sheeted(1, part('sash'))).toBe(5)
  expect(sheeted(1, part('sash'), part('casing'))).toBe(5)
  expect(sheeted(1, run)).toBe(10)
  expect(sheeted(6, north, east)).toBe(120)
  expect(sheeted(1, ceiling)).toBe(120)
  expect(sheeted(1)).toBe(0)
})
