import type { Brand } from './brand.ts'
import type { LengthUnitSystem } from './length.ts'
import { roughNumber } from './rough-number.ts'

/**
 * An area as a whole number of 1/10000 mm2. 1 sq in (645.16 mm2) is exactly 6,451,600 of them and 1 m2 is 1e10,
 * so that areas of any grouping sum exactly (whole doubles hold 900,000 m2). Every figure is rounded to this grain once.
 */
export type Area = Brand<number, 'Area'>

/** One square of length units, (1/8000 mm)2, is 1/6400 of the area grain. */
const squareUnitsPerAreaUnit = 6400
const areaUnitsPerSquareMillimetre = 10_000
/** 1 sq in = 645.16 mm2 exactly (16 CFR 500.19). */
const areaUnitsPerSquareInch = 6_451_600
const areaUnitsPerSquareFoot = 144 * areaUnitsPerSquareInch

export const zeroArea = areaFromUnits(0)

/** From a product of two lengths (or any sum of such products), rounded to the area grain. */
export function areaFromSquareUnits(squareUnits: number): Area {
  return areaFromUnits(squareUnits / squareUnitsPerAreaUnit)
}

/** Rounds to the nearest whole unit; the way a computed number of area units becomes an Area. */
export function areaFromUnits(units: number): Area {
  const whole = Math.round(units)
  return (whole === 0 ? 0 : whole) as Area
}

/**
 * @param width in 1/8000 mm
 * @param height in 1/8000 mm
 */
export function rectangleArea(width: number, height: number): Area {
  return areaFromSquareUnits(width * height)
}

/** Rounded to the grain, 1/10000 mm2. */
export function squareMetres(value: number): Area {
  return areaFromUnits(value * 1e6 * areaUnitsPerSquareMillimetre)
}

/** Rounded to the grain, 1/10000 mm2. */
export function squareFeet(value: number): Area {
  return areaFromUnits(value * areaUnitsPerSquareFoot)
}

export function toSquareMetres(area: number): number {
  return area / (1e6 * areaUnitsPerSquareMillimetre)
}

export function toSquareFeet(area: number): number {
  return area / areaUnitsPerSquareFoot
}

/** Sums exactly, for areas are whole numbers. */
export function sumAreas(areas: readonly Area[]): Area {
  return areaFromUnits(areas.reduce<number>((total, area) => total + area, 0))
}

/** For sums and arithmetic: `96.4 sq ft`, `2,287 sq ft`, `9 m²`. */
export function roughArea(area: number, system: LengthUnitSystem): string {
  return system === 'imperial'
    ? `${roughNumber(toSquareFeet(area))} sq ft`
    : `${roughNumber(toSquareMetres(area))} m²`
}

/** `123.4 sq ft` or `11.46 m²`. */
export function formatArea(area: number, system: LengthUnitSystem): string {
  return system === 'imperial'
    ? `${toSquareFeet(area).toFixed(1)} sq ft`
    : `${toSquareMetres(area).toFixed(2)} m²`
}
