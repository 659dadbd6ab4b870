import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addDays, dayOfDate } from '../../core/time/local-date.ts'
import {
  areaFromSquareUnits,
  formatArea,
  rectangleArea,
  squareFeet,
  squareMetres,
  sumAreas,
  toSquareFeet,
  toSquareMetres,
} from '../../core/units/area.ts'
import { formatMinutes } from '../../core/units/duration.ts'
import {
  feet,
  formatFeetInches,
  formatLength,
  formatSmallLength,
  inches,
  metres,
  millimetres,
  toFeet,
  unitsPer64thInch,
} from '../../core/units/length.ts'
import { formatCents, roundToCents } from '../../core/units/money.ts'
import { formatVolume, litresPerGallon, squareFeetMilsPerGallon } from '../../core/units/volume.ts'

test('a 64th of an inch and a millimetre are both whole units', () => {
  expect(inches(1 / 64)).toBe(unitsPer64thInch)
  expect(unitsPer64thInch * 64).toBe(25.4 * 8000)
  expect(millimetres(25.4)).toBe(inches(1))
  expect(metres(0.3048)).toBe(feet(1))
})

test('lengths are shown in feet, inches and reduced fractions', () => {
  expect(formatFeetInches(feet(12, 6.5))).toBe(`12' 6 1/2"`)
  expect(formatFeetInches(feet(0, 3))).toBe(`0' 3"`)
  expect(formatFeetInches(feet(-1))).toBe(`-1' 0"`)
  expect(formatFeetInches(feet(7, 11.99))).toBe(`8' 0"`)
  expect(formatFeetInches(inches(1 / 64), 64)).toBe(`0' 0 1/64"`)
  expect(formatLength(metres(3.81), 'metric')).toBe('3.810 m')
  expect(formatSmallLength(inches(4.5), 'imperial')).toBe('4 1/2"')
  expect(formatSmallLength(inches(0.625), 'imperial')).toBe('5/8"')
  expect(formatSmallLength(inches(0), 'imperial')).toBe('0"')
  expect(formatSmallLength(millimetres(114), 'metric')).toBe('114 mm')
})

test('an area in square feet is exact, and so is its sum', () => {
  expect(rectangleArea(feet(12), feet(8))).toBe(squareFeet(12 * 8))
  expect(rectangleArea(metres(3), metres(4))).toBe(squareMetres(3 * 4))
  expect(toSquareFeet(squareFeet(96))).toBe(96)
  expect(toSquareMetres(squareMetres(1))).toBe(1)
  expect(sumAreas([squareFeet(96), squareFeet(-21), squareFeet(0.5)])).toBe(squareFeet(96 - 21 + 0.5))
  expect(formatArea(squareFeet(123.44), 'imperial')).toBe('123.4 sq ft')
  expect(formatArea(squareMetres(11.464), 'metric')).toBe('11.46 m²')
  expect(Object.is(areaFromSquareUnits(-0.1), 0)).toBe(true)
})

test('the sum of areas does not depend on how they are grouped', () => {
  const areas = fc.array(fc.integer({ min: 0, max: 1e9 }).map(areaFromSquareUnits), { maxLength: 30 })
  fc.assert(
    fc.property(areas, areas, (some, others) => {
      expect(sumAreas([...some, ...others])).toBe(sumAreas(some) + sumAreas(others))
    }),
  )
})

test('feet and inches give the length they were made of', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 600 }),
      fc.integer({ min: 0, max: 11 }),
      (wholeFeet, plusInches) => {
        expect(toFeet(feet(wholeFeet, plusInches))).toBeCloseTo(wholeFeet + plusInches / 12, 9)
        expect(formatFeetInches(feet(wholeFeet, plusInches))).toBe(`${wholeFeet}' ${plusInches}"`)
      },
    ),
  )
})

test('money, minutes and volumes are shown plainly', () => {
  expect(formatCents(123_450)).toBe('$1,234.50')
  expect(formatCents(-5)).toBe('-$0.05')
  expect(formatCents(100_000_000)).toBe('$1,000,000.00')
  expect(Object.is(roundToCents(-0.2), 0)).toBe(true)
  expect(formatMinutes(45)).toBe('45 min')
  expect(formatMinutes(120)).toBe('2 h')
  expect(formatMinutes(200)).toBe('3 h 20 min')
  expect(formatVolume(1.25, 'imperial')).toBe('1.25 gal')
  expect(formatVolume(1.25, 'metric')).toBe('4.7 L')
})

test('minutes at the edges: nothing, next to nothing, and what rounds up to an hour', () => {
  expect(formatMinutes(0)).toBe('0 min')
  expect(formatMinutes(0.4)).toBe('1 min')
  expect(formatMinutes(0.5)).toBe('1 min')
  expect(formatMinutes(59.4)).toBe('59 min')
  expect(formatMinutes(59.6)).toBe('1 h')
  expect(formatMinutes(61)).toBe('1 h 1 min')
})

test('money and lengths at the edges: nothing, below a dollar or an inch, below nothing', () => {
  expect([0, 7, 99, 100, 99_999].map((cents) => formatCents(cents))).toEqual([
    '$0.00',
    '$0.07',
    '$0.99',
    '$1.00',
    '$999.99',
  ])
  expect(formatCents(150, '€')).toBe('€1.50')
  expect(formatFeetInches(feet(0))).toBe(`0' 0"`)
  expect(formatFeetInches(inches(-0.5))).toBe(`-0' 0 1/2"`)
  expect(formatSmallLength(inches(-4.5), 'imperial')).toBe('-4 1/2"')
  expect(formatSmallLength(inches(15 / 16), 'imperial')).toBe('15/16"')
  expect(formatSmallLength(inches(1), 'imperial')).toBe('1"')
  expect(formatSmallLength(millimetres(100), 'metric')).toBe('100 mm')
  expect(formatSmallLength(millimetres(4.5), 'metric')).toBe('4.5 mm')
})

test('days are counted over the end of a year and a leap day', () => {
  expect(addDays('2027-12-31', 1)).toBe('2028-01-01')
  expect(addDays('2028-03-01', -1)).toBe('2028-02-29')
  expect(addDays('2027-03-01', -1)).toBe('2027-02-28')
  expect(dayOfDate('1970-01-02')).toBe(1)
})

test('a gallon is 231 cubic inches, in litres and as a film', () => {
  expect(litresPerGallon).toBeCloseTo((231 * 2.54 ** 3) / 1000, 9)
  // 231 cu in spread 1/1000 in thick is 231,000 sq in.
  expect(squareFeetMilsPerGallon).toBeCloseTo(231_000 / 144, 9)
})
