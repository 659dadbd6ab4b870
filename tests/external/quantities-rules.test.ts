import { expect, test } from 'vitest'
import type { BuiltItem } from '../../core/project/built-records.ts'
import { radiatorSectionSquareFeet } from '../../core/project/radiator-surface.ts'
import type { Opening } from '../../core/project/sketch-records.ts'
import { balustradeArea, equivalentArea, slabCoefficients } from '../../core/quantities/equivalents.ts'
import { narrowWork } from '../../core/quantities/girth-policies.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { squareMetres, sumAreas, toSquareFeet, toSquareMetres } from '../../core/units/area.ts'
import { feet, inches, type Length, metres, toFeet, zeroLength } from '../../core/units/length.ts'
import { inchesOf, opening, rectangle, sash, sketch, surfaceOf } from '../quantities/sketched.ts'

/** Two rooms back to back, 200 mm of wall between them, with one opening that both see, and plaster reveals. */
function sharedOpening(areaM2: number) {
  const height = 2
  return sketch({
    unitSystem: 'metric',
    rooms: [
      rectangle('a', metres(5), metres(4), { ceiling: { kind: 'flat', height: metres(3) } }),
      rectangle('b', metres(5), metres(4), { ceiling: { kind: 'flat', height: metres(3) } }, [
        0,
        metres(4.2),
      ]),
    ],
    openings: [
      opening('o', 'a-2', metres(1), metres(areaM2 / height), metres(height), {
        kind: 'casedOpening',
        far: { roomId: 'b' as Opening['roomId'], wallId: 'b-0' as Opening['wallId'] },
        jambDepth: metres(0.2),
        jambOf: 'wall',
      }),
    ],
    houseRules: { openingPolicy: 'is1200Part13' },
  })
}

test('IS 1200 Part 13:1994 cl. 3.2 (printed): 0.50 / 0.51 / 3.00 / 3.01 m2 with one finish are taken off no face, one, one, both with reveals added', () => {
  const results = [0.5, 0.51, 3, 3.01].map((areaM2) => {
    const { surfaces } = takeOff(sharedOpening(areaM2))
    const gross = sumAreas(surfaces.filter((one) => one.surface.kind === 'wall').map((one) => one.grossArea))
    const policy = sumAreas(
      surfaces.filter((one) => one.surface.kind === 'wall').map((one) => one.policyArea),
    )
    const reveal = surfaces.find((one) => one.key === 'opening:o:near:jamb')
    return { taken: toSquareMetres(gross - policy), revealAdded: (reveal?.policyArea ?? 0) > 0 }
  })
  expect(results).toEqual([
    { taken: 0, revealAdded: false },
    { taken: 0.51, revealAdded: false },
    { taken: 3, revealAdded: false },
    { taken: 6.02, revealAdded: true },
  ])
})

test('IS 1200 Part 15:1987 table (coefficients printed, products computed): panelled, glazed and flush doors and windows', () => {
  const bothSides = (wide: number, high: number, coefficient: number) =>
    toSquareMetres(2 * equivalentArea(squareMetres(wide * high), coefficient))
  expect(bothSides(2.1, 1, slabCoefficients.panelled)).toBe(5.46)
  expect(bothSides(1.2, 1.5, slabCoefficients.glazed)).toBe(2.88)
  expect(bothSides(2.1, 0.9, slabCoefficients.flush)).toBe(4.536)
})

test('the same three as surfaces of a sketch: doors by both faces, the window by its inner face', () => {
  const slab = (kind: 'panelled' | 'flush') => ({
    kind,
    thickness: inches(1.375),
    leaves: 1,
    paintNear: true,
    paintFar: true,
    edgesShow: 'near' as const,
  })
  const far = { roomId: 'b' as Opening['roomId'], wallId: 'b-0' as Opening['wallId'] }
  const job = sketch({
    unitSystem: 'metric',
    rooms: [rectangle('a', metres(8), metres(4)), rectangle('b', metres(8), metres(4), {}, [0, metres(4.1)])],
    openings: [
      opening('panelled', 'a-2', metres(1), metres(1), metres(2.1), {
        kind: 'door',
        far,
        slab: slab('panelled'),
      }),
      opening('flush', 'a-2', metres(4), metres(0.9), metres(2.1), {
        kind: 'door',
        far,
        slab: slab('flush'),
      }),
      opening('window', 'a-0', metres(1), metres(1.2), metres(1.5), { sash: sash() }),
    ],
  })
  const equivalent = (key: string) => toSquareMetres(surfaceOf(job, key).equivalentArea)
  expect(equivalent('opening:panelled:near:slab') + equivalent('opening:panelled:far:slab')).toBeCloseTo(
    5.46,
    9,
  )
  expect(equivalent('opening:flush:near:slab') + equivalent('opening:flush:far:slab')).toBeCloseTo(4.536, 9)
  expect(2 * equivalent('opening:window:near:sash')).toBeCloseTo(2.88, 9)
})

test('Measuring Painter’s Work and An Old Hand (rule printed): girths of 4, 6, 9, 12 and 14 in per 10 ft run; exactly 6 in counts as 6', () => {
  const areas = [4, 6, 9, 12, 14].map((girth) =>
    toSquareFeet(narrowWork('sixTwelveInch', inches(girth), feet(10)).area),
  )
  expect(areas.map((area) => Number(area.toFixed(3)))).toEqual([5, 5, 10, 10, 11.667])
})

test('Builder-Mechanic (printed): work up to 9 in wide goes by length; SMM7-era teaching: up to 300 mm', () => {
  expect(narrowWork('nineInchByLength', inches(9), feet(10))).toEqual({ area: 0, byLength: true })
  expect(narrowWork('nineInchByLength', inches(9.25), feet(10)).byLength).toBe(false)
  expect(narrowWork('threeHundredMillimetre', metres(0.3), feet(10)).byLength).toBe(true)
  expect(narrowWork('threeHundredMillimetre', metres(0.301), feet(10)).byLength).toBe(false)
})

test('18th-19th c. mensuration texts (rule printed, product computed): a balustrade with a 12 ft rail, 2 1/2 ft balusters and a 9 in rail is 69 sq ft', () => {
  expect(toSquareFeet(balustradeArea(feet(12), feet(2.5), feet(0.75)))).toBe(69)
})

const stair: BuiltItem = {
  kind: 'stair',
  id: 'stair' as BuiltItem['id'],
  roomId: 'a' as BuiltItem['roomId'],
  name: 'Main stair',
  treads: 13,
  risers: 14,
  stepLength: feet(3),
  treadDepth: inches(10),
  riserHeight: inches(7.5),
  paintTreads: true,
  paintRisers: true,
  stringers: 0,
  stringerLength: zeroLength,
  stringerGirth: zeroLength,
  balusters: 26,
  balusterHeight: feet(2.5),
  balusterGirth: inches(5),
  newels: 0,
  newelHeight: zeroLength,
  newelGirth: zeroLength,
  handrailLength: feet(12),
  handrailGirth: feet(0.75),
}

test('the stair rule on a sketch (rule printed, product computed): the line over all treads and risers times the step, and the balustrade', () => {
  const job = sketch({ rooms: [rectangle('a', feet(12), feet(12))], builtItems: [stair] })
  const surface = surfaceOf(job, 'built:a:stair')
  // Line over the steps: 13 x 10 in + 14 x 7 1/2 in = 235 in; 235/12 x 3 = 58.75 sq ft; balustrade 69.
  expect(toSquareFeet(surface.equivalentArea)).toBeCloseTo(58.75 + 69, 6)
  // By members: 26 x 2.5 x 5/12 + 12 x 0.75 = 27.0833 + 9.
  expect(toSquareFeet(surface.netArea)).toBeCloseTo(58.75 + 26 * 2.5 * (5 / 12) + 9, 6)
})

test('boiler maker’s guide (printed): a radiator 38 in high, 5 tube, 7 sections has 35 sq ft', () => {
  const job = sketch({
    rooms: [rectangle('a', feet(12), feet(12))],
    builtItems: [
      {
        kind: 'radiator',
        id: 'r' as BuiltItem['id'],
        roomId: 'a' as BuiltItem['roomId'],
        name: '',
        pattern: 'tube',
        columns: 5,
        heightInches: 38,
        sections: 7,
      },
    ],
  })
  expect(toSquareFeet(surfaceOf(job, 'built:a:r').netArea)).toBe(35)
})

test('boiler maker’s guide (printed cells): column and tube radiators by height', () => {
  const section = (pattern: 'column' | 'tube', columns: number, heightInches: 20 | 23 | 26 | 32 | 38) =>
    radiatorSectionSquareFeet({ pattern, columns, heightInches })
  expect([1, 2].map((columns) => section('column', columns, 20))).toEqual([1.5, 2])
  expect([3, 4].map((columns) => section('column', columns, 20))).toEqual([null, null])
  expect([1, 2, 3, 4].map((columns) => section('column', columns, 32))).toEqual([2.5, 10 / 3, 4.5, 6.5])
  expect([3, 4, 5, 6].map((columns) => section('tube', columns, 23))).toEqual([2, 2.5, 3, 3.5])
  expect([3, 4, 5, 6].map((columns) => section('tube', columns, 38))).toEqual([3.5, 4.25, 5, 6])
  expect(section('column', 5, 38)).toBeNull()
})

test('a joinery supplier’s sash guide (printed): a 54 in sash opening with rails of 2 1/4, 1 1/4 and 3 1/4 in takes glass 24 in high', () => {
  const rails = {
    stile: inches(2.25),
    topRail: inches(2.25),
    meetingRail: inches(1.25),
    bottomRail: inches(3.25),
  }
  const job = sketch({
    rooms: [rectangle('a', feet(12), feet(12))],
    openings: [
      opening('w', 'a-0', feet(2), inches(32), inches(54), {
        sill: feet(2),
        sash: sash({ operation: 'doubleHung', ...rails }),
      }),
    ],
  })
  const aroundOneLight = inchesOf(surfaceOf(job, 'opening:w:near:sash').glassPerimeter) / 2
  const daylightHeight = aroundOneLight / 2 - (32 - 2 * 2.25)
  // Eastern glass is 5/16 in larger than its daylight; the printed rule is good to 1/16 in a sash.
  expect(Math.abs(daylightHeight + 5 / 16 - 24)).toBeLessThanOrEqual(1 / 16)
})

/** Glass 28 x 24 in each, daylight less by 5/16 in; members take what the 32 x 54 in opening leaves. */
const fixtureSash = {
  operation: 'doubleHung',
  stile: inches((32 - 27.6875) / 2),
  topRail: inches(2.25),
  meetingRail: inches(1.25),
  bottomRail: inches(54 - 2 * 23.6875 - 2.25 - 1.25),
  muntin: inches(0.875),
} as const

function fixture(lightsAcross: number, lightsDown: number) {
  const job = sketch({
    rooms: [rectangle('a', feet(12), feet(12))],
    openings: [
      opening('w', 'a-0', feet(2), inches(32), inches(54), {
        sill: feet(2),
        sash: sash({ ...fixtureSash, lightsAcross, lightsDown }),
      }),
    ],
  })
  const surface = surfaceOf(job, 'opening:w:near:sash')
  return {
    whole: toSquareFeet(surface.grossArea),
    daylight: toSquareFeet(surface.deductedArea),
    wood: toSquareFeet(surface.netArea),
    edge: toFeet(surface.glassPerimeter),
    count: surface.count,
  }
}

test('the sash of 8b (computed, assumed geometry), one light over one: daylight 9.109, wood 2.891 sq ft, glass edge 17.13 ft', () => {
  const one = fixture(1, 1)
  expect(one.whole).toBeCloseTo(12, 9)
  expect(one.daylight).toBeCloseTo(9.109, 3)
  expect(one.wood).toBeCloseTo(2.891, 3)
  expect(one.edge).toBeCloseTo(17.125, 6)
  expect(one.count).toBe(2)
})

test('the same sash as six over six: daylight 8.218, wood 3.782 sq ft, glass edge 40.10 ft; edge grows 134 %, wood 31 %', () => {
  const six = fixture(3, 2)
  const one = fixture(1, 1)
  expect(six.daylight).toBeCloseTo(8.218, 3)
  expect(six.wood).toBeCloseTo(3.782, 3)
  expect(six.edge).toBeCloseTo(40.1, 2)
  expect(six.edge / one.edge).toBeCloseTo(2.34, 2)
  expect(six.wood / one.wood).toBeCloseTo(1.31, 2)
})

test('Armstrong 1908 p. 127 (printed): cupboards and pantry shelves count one and a half times', () => {
  const job = sketch({
    rooms: [rectangle('a', feet(12), feet(12))],
    builtItems: [
      {
        kind: 'shelf',
        id: 's' as BuiltItem['id'],
        roomId: 'a' as BuiltItem['roomId'],
        name: '',
        length: feet(4),
        depth: feet(1),
        thickness: inches(0.75) as Length,
        count: 3,
      },
    ],
  })
  const shelf = surfaceOf(job, 'built:a:s')
  // 3 x (2 x 4 x 1 + 4 x 1/16 + 2 x 1 x 1/16) = 3 x 8.375
  expect(toSquareFeet(shelf.netArea)).toBeCloseTo(25.125, 9)
  expect(toSquareFeet(shelf.equivalentArea)).toBeCloseTo(25.125 * 1.5, 9)
  expect(inchesOf(shelf.length)).toBe(144)
})
