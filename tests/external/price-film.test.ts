import { expect, test } from 'vitest'
import { practicalSpread, theoreticalSpread, wetFilm } from '../../core/price/spread.ts'
import { litresPerGallon, squareFeetMilsPerGallon } from '../../core/units/volume.ts'

const squareFeetPerSquareMetre = 1 / 0.09290304
const perLitre = (squareFeetPerGallon: number) =>
  squareFeetPerGallon / squareFeetPerSquareMetre / litresPerGallon

test('one gallon (231 cu in, 16 CFR 500.19) spread a mil thick covers 1604.1667 sq ft; the trade prints 1604', () => {
  expect(squareFeetMilsPerGallon).toBeCloseTo(231 / 144 / 0.001, 9)
  expect(Math.abs(squareFeetMilsPerGallon - 1604.1667)).toBeLessThan(1e-4)
})

test('printed: 35 percent solids at 2 mil dry, 281 sq ft per gal', () => {
  expect(Math.abs(theoreticalSpread(35, 2) - 281)).toBeLessThanOrEqual(0.5)
})

test('printed with the constant 1604: 65 percent at 5 mil, 208.52 sq ft per gal; 208.54 with the exact one', () => {
  expect(theoreticalSpread(65, 5)).toBeCloseTo(208.54, 2)
  expect((theoreticalSpread(65, 5) * 1604) / squareFeetMilsPerGallon).toBeCloseTo(208.52, 2)
})

test.each([
  // Coatings guides (scribd 343849341, 290710110).
  [65, 125, 5.2],
  [45, 150, 3.0],
  [40, 75, 5.3],
])('printed: %d percent at %d micrometres, %d square metres per litre', (solids, micrometres, printed) => {
  expect(Math.abs(perLitre(theoreticalSpread(solids, micrometres / 25.4)) - printed)).toBeLessThanOrEqual(
    0.05,
  )
})

test('printed (MIL-HDBK-1110 s. 2.1.5): 8 mil wet of 35 percent solids leave 2.8 mil dry', () => {
  expect(wetFilm({ dryFilmMils: 2.8, volumeSolidsPercent: 35 })).toBeCloseTo(8, 12)
})

test('printed: 45.45 percent covers 7.57 m2 per L at 60 micrometres, 5.30 after 30 percent loss', () => {
  const solids = 45.45
  const dryFilmMils = 60 / 25.4
  expect(Math.abs(perLitre(theoreticalSpread(solids, dryFilmMils)) - 7.57)).toBeLessThanOrEqual(0.01)
  const practical = practicalSpread({ volumeSolidsPercent: solids, dryFilmMils, lossPercent: 30 })
  expect(Math.abs(perLitre(practical) - 5.3)).toBeLessThanOrEqual(0.01)
})
