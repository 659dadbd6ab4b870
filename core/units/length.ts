import type { Brand } from './brand.ts'
import { roughNumber } from './rough-number.ts'

/**
 * A length as a whole number of 1/8000 mm. 1 mm is 8000 and 1/64 in is exactly 3175 (25.4 x 8000 / 64),
 * so that feet-inch and metric entries are both exact and equality needs no tolerance.
 */
export type Length = Brand<number, 'Length'>

export type LengthUnitSystem = 'imperial' | 'metric'

export const unitsPerMillimetre = 8000
/** 1 in = 25.4 mm exactly (16 CFR 500.19). */
export const unitsPerInch = 203_200
export const unitsPerFoot = 12 * unitsPerInch
export const unitsPer64thInch = 3175

/** Rounds to the nearest whole unit; the only way a computed number becomes a Length. */
export function lengthFromUnits(units: number): Length {
  const whole = Math.round(units)
  return (whole === 0 ? 0 : whole) as Length
}

export const zeroLength = lengthFromUnits(0)

/** Rounded to the grain, 1/8000 mm. */
export function millimetres(value: number): Length {
  return lengthFromUnits(value * unitsPerMillimetre)
}

/** Rounded to the grain, 1/8000 mm. */
export function metres(value: number): Length {
  return lengthFromUnits(value * 1000 * unitsPerMillimetre)
}

/** Exact for whole 1/64 in. */
export function inches(value: number): Length {
  return lengthFromUnits(value * unitsPerInch)
}

/** Exact for whole 1/64 in. */
export function feet(wholeFeet: number, plusInches = 0): Length {
  return lengthFromUnits(wholeFeet * unitsPerFoot + plusInches * unitsPerInch)
}

export function toMillimetres(length: number): number {
  return length / unitsPerMillimetre
}

export function toMetres(length: number): number {
  return length / (1000 * unitsPerMillimetre)
}

export function toFeet(length: number): number {
  return length / unitsPerFoot
}

/** Sums exactly, for lengths are whole numbers. */
export function sumLengths(lengths: readonly Length[]): Length {
  return lengthFromUnits(lengths.reduce<number>((total, length) => total + length, 0))
}

/** Shows a length the trade's way: `12' 6 1/2"` to the nearest 1/16 in, or metres to the millimetre `3.810 m`. */
export function formatLength(length: number, system: LengthUnitSystem): string {
  return system === 'imperial' ? formatFeetInches(length) : `${toMetres(length).toFixed(3)} m`
}

/** For sums and arithmetic, where nobody reads sixteenths: `41.3 ft`, `11,817 ft`, `12.6 m`. */
export function roughLength(length: number, system: LengthUnitSystem): string {
  return system === 'imperial' ? `${roughNumber(toFeet(length))} ft` : `${roughNumber(toMetres(length))} m`
}

/** `12' 6 1/2"`, `0' 3"`, `-1' 0"`; fractions reduced, nearest 1/`denominator` in. */
export function formatFeetInches(length: number, denominator = 16): string {
  const sign = length < 0 ? '-' : ''
  const parts = Math.round((Math.abs(length) / unitsPerInch) * denominator)
  const wholeFeet = Math.floor(parts / (12 * denominator))
  const rest = parts - wholeFeet * 12 * denominator
  const wholeInches = Math.floor(rest / denominator)
  const fraction = formatFraction(rest - wholeInches * denominator, denominator)
  return `${sign}${wholeFeet}' ${wholeInches}${fraction === '' ? '' : ` ${fraction}`}"`
}

/** A small length in inches only, as for a casing or a muntin: `4 1/2"`; metric in millimetres: `114 mm`. */
export function formatSmallLength(length: number, system: LengthUnitSystem): string {
  if (system === 'metric') return `${trimZeros(toMillimetres(length).toFixed(1))} mm`
  const parts = Math.round((Math.abs(length) / unitsPerInch) * 16)
  const whole = Math.floor(parts / 16)
  const fraction = formatFraction(parts % 16, 16)
  const shown = whole === 0 && fraction !== '' ? fraction : `${whole}${fraction === '' ? '' : ` ${fraction}`}`
  return `${length < 0 ? '-' : ''}${shown}"`
}

function trimZeros(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text
}

function formatFraction(numerator: number, denominator: number): string {
  if (numerator === 0) return ''
  let [top, bottom] = [numerator, denominator]
  while (top % 2 === 0) {
    top /= 2
    bottom /= 2
  }
  return `${top}/${bottom}`
}
