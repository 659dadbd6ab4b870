import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { sumAreas, toSquareFeet, toSquareMetres } from '../../core/units/area.ts'
import { feet, inches, metres, millimetres, toMillimetres } from '../../core/units/length.ts'
import { litresPerGallon } from '../../core/units/volume.ts'
import { opening, rectangle, sketch } from '../quantities/sketched.ts'

/** Printed and computed answers from outside, as collected with their sources in the project's reference on the trade. */
function wallsAndCeiling(job: Job, policy: 'netArea' | 'grossArea' = 'netArea') {
  const sum = (surfaceClass: string) =>
    sumAreas(
      takeOff(job)
        .surfaces.filter((surface) => surface.surfaceClass === surfaceClass)
        .map((surface) => surface[policy]),
    )
  return { walls: sum('walls'), ceiling: sum('ceiling') }
}

const squareYards = (area: number) => toSquareFeet(area) / 9

test('16 CFR 500.19 (printed): 1 mil is 25.4 um, 1 sq ft 0.09290304 m2, 1 gal 3.78541 L, 1 L 0.264172 gal', () => {
  expect(toMillimetres(inches(1)) / 1000).toBe(0.0254)
  expect(toSquareMetres(sumAreas([...rectangleFoot()]))).toBeCloseTo(0.09290304, 12)
  expect(litresPerGallon).toBeCloseTo(3.78541, 5)
  expect(1 / litresPerGallon).toBeCloseTo(0.264172, 6)
})

function rectangleFoot() {
  const job = sketch({ rooms: [rectangle('a', feet(1), feet(1))] })
  return takeOff(job)
    .surfaces.filter((surface) => surface.surfaceClass === 'ceiling')
    .map((surface) => surface.netArea)
}

test('Hutton, Mensuration, painters’ work 1 (question printed; answer from memory, and computed): 65 ft 6 in around, 12 ft 4 in high is 89.7593 sq yd', () => {
  // Any room 65 1/2 ft around: 20 ft x 12 3/4 ft.
  const job = sketch({
    rooms: [rectangle('a', feet(20), feet(12, 9), { ceiling: { kind: 'flat', height: feet(12, 4) } })],
  })
  expect(squareYards(wallsAndCeiling(job).walls)).toBeCloseTo(89.7593, 4)
  expect(toSquareFeet(wallsAndCeiling(job).walls)).toBeCloseTo(807.8333, 4)
})

test('Hutton 2 (73 printed, fraction computed): 20 x 14 1/2 ft room less fireplace and two windows is 73.0741 sq yd', () => {
  const job = sketch({
    rooms: [rectangle('a', feet(20), feet(14, 6), { ceiling: { kind: 'flat', height: feet(10, 4) } })],
    openings: [
      opening('fire', 'a-0', feet(8), feet(4), feet(4, 4), { kind: 'fireplace' }),
      opening('w1', 'a-1', feet(1), feet(3, 2), feet(6), { sill: feet(3) }),
      opening('w2', 'a-1', feet(8), feet(3, 2), feet(6), { sill: feet(3) }),
    ],
  })
  expect(toSquareFeet(wallsAndCeiling(job).walls)).toBeCloseTo(657.6667, 4)
  expect(squareYards(wallsAndCeiling(job).walls)).toBeCloseTo(73.0741, 4)
})

test('Hutton 3 (printed in money): walls not deducted, door, shutters and reveals with head and sill are 1150.375 sq ft, 766.92d at 6d a yard', () => {
  const window = { sill: feet(0, 6), jambDepth: feet(1, 3), jambOf: 'wall' } as const
  const job = sketch({
    rooms: [rectangle('a', feet(24, 6), feet(16, 3), { ceiling: { kind: 'flat', height: feet(12, 9) } })],
    openings: [
      opening('fire', 'a-0', feet(8), feet(5), feet(5, 6), { kind: 'fireplace' }),
      opening('door', 'a-3', feet(2), feet(3, 6), feet(7), {
        kind: 'door',
        slab: {
          kind: 'flush',
          thickness: inches(1),
          leaves: 1,
          paintNear: true,
          paintFar: false,
          edgesShow: 'far',
        },
      }),
      opening('w1', 'a-1', feet(1), feet(3, 6), feet(8, 6), window),
      opening('w2', 'a-1', feet(9), feet(3, 6), feet(8, 6), window),
    ],
  })
  const { surfaces } = takeOff(job)
  const area = (holds: (key: string) => boolean) =>
    sumAreas(surfaces.filter((surface) => holds(surface.key)).map((surface) => surface.netArea))
  const walls = sumAreas(
    surfaces.filter((surface) => surface.surface.kind === 'wall').map((surface) => surface.grossArea),
  )
  const fireplace = feet(5) * feet(5, 6)
  const door = area((key) => key.endsWith(':slab'))
  const reveals = area((key) => key.endsWith(':jamb'))
  const shutters = 2 * 7.75 * 3.5
  // 2 x (24.5 + 16.25) x 12.75 - 5 x 5.5 = 1011.625; 7 x 3.5 = 24.5; reveals 2 x (2 x 8.5 + 2 x 3.5) x 1.25 = 60
  expect(toSquareFeet(walls) - fireplace / (feet(1) * feet(1))).toBeCloseTo(1011.625, 9)
  expect(toSquareFeet(door)).toBeCloseTo(24.5, 9)
  expect(toSquareFeet(reveals)).toBeCloseTo(42.5 + 17.5, 9)
  const all = 1011.625 + toSquareFeet(door) + shutters + toSquareFeet(reveals)
  expect(all).toBeCloseTo(1150.375, 9)
  expect((all / 9) * 6).toBeCloseTo(766.92, 2)
})

function metricRoom(
  width: number,
  depth: number,
  height: number,
  holes: readonly (readonly [number, number])[],
) {
  return sketch({
    unitSystem: 'metric',
    rooms: [
      rectangle('a', metres(width), metres(depth), { ceiling: { kind: 'flat', height: metres(height) } }),
    ],
    openings: holes.map(([wide, high], index) =>
      opening(
        `o${index}`,
        `a-${index % 4}`,
        metres(0.2 + Math.floor(index / 4) * 2),
        metres(wide),
        metres(high),
      ),
    ),
  })
}

test('shaalaa.com 110309 (printed): 5 x 4.5 x 3.6 m less a door and two windows is 63.3 m2 of wall and 22.5 m2 of ceiling', () => {
  const { walls, ceiling } = wallsAndCeiling(
    metricRoom(5, 4.5, 3.6, [
      [1.5, 2.4],
      [1, 0.75],
      [1, 0.75],
    ]),
  )
  expect(toSquareMetres(walls)).toBe(63.3)
  expect(toSquareMetres(ceiling)).toBe(22.5)
})

test('esaral.com and bissoy.com (printed): 12.5 x 9 x 7 m with two doors and four windows is 289 m2, 301 m2 before them', () => {
  const job = metricRoom(12.5, 9, 7, [
    [1.2, 2.5],
    [1.2, 2.5],
    [1, 1.5],
    [1, 1.5],
    [1, 1.5],
    [1, 1.5],
  ])
  expect(toSquareMetres(wallsAndCeiling(job).walls)).toBe(289)
  expect(toSquareMetres(wallsAndCeiling(job, 'grossArea').walls)).toBe(301)
})

test('lidolearning.com (printed): 6 x 5 x 3.5 m, two doors, three windows, walls and ceiling are 96.3 m2', () => {
  const { walls, ceiling } = wallsAndCeiling(
    metricRoom(6, 5, 3.5, [
      [1.1, 2],
      [1.1, 2],
      [1.5, 1.4],
      [1.5, 1.4],
      [1.5, 1.4],
    ]),
  )
  expect(toSquareMetres(sumAreas([walls, ceiling]))).toBe(96.3)
})

test('sciencesparkle.com (printed): 6 x 5 x 3 m less a door and three windows is 56.85 m2', () => {
  const { walls } = wallsAndCeiling(
    metricRoom(6, 5, 3, [
      [1.5, 2.5],
      [1.2, 1.5],
      [1.2, 1.5],
      [1.2, 1.5],
    ]),
  )
  expect(toSquareMetres(walls)).toBe(56.85)
})

test('esaral.com and byjus.com (printed): 14 x 10 x 6.5 m less two doors and four windows is 300 m2', () => {
  const { walls } = wallsAndCeiling(
    metricRoom(14, 10, 6.5, [
      [1.2, 2.5],
      [1.2, 2.5],
      [1, 1.5],
      [1, 1.5],
      [1, 1.5],
      [1, 1.5],
    ]),
  )
  expect(toSquareMetres(walls)).toBe(300)
})

test('Mensuration, p. 188 (printed): a ceiling 59 ft 9 in x 24 ft 6 in is 162.6528 sq yd', () => {
  const job = sketch({ rooms: [rectangle('a', feet(59, 9), feet(24, 6))] })
  expect(squareYards(wallsAndCeiling(job).ceiling)).toBeCloseTo(162.6528, 4)
})

test('Mensuration, p. 188 (printed 176.87, exact 176.875): a partition 141 ft 6 in around and 11 ft 3 in high', () => {
  const job = sketch({
    rooms: [rectangle('a', feet(40), feet(30, 9), { ceiling: { kind: 'flat', height: feet(11, 3) } })],
  })
  expect(squareYards(wallsAndCeiling(job).walls)).toBe(176.875)
})

test('16 CFR 500.19 (printed): a wall entered as 1 in is 25.4 mm, to the last digit', () => {
  expect(inches(1)).toBe(millimetres(25.4))
  expect(feet(1)).toBe(millimetres(304.8))
})
