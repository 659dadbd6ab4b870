import { localDateSchema, localDateTimeSchema } from '../../../core/project/schema-parts.ts'
import { type Area, formatArea, squareFeet, squareMetres } from '../../../core/units/area.ts'
import { formatLength, type Length, type LengthUnitSystem } from '../../../core/units/length.ts'
import type { Cents } from '../../../core/units/money.ts'
import { roundToCents } from '../../../core/units/money.ts'
import { parseLength } from '../../../core/units/parse-length.ts'

/** What was typed, read; or the sentence that says what to type instead. */
export type Entry<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly sentence: string }

export type ReadEntry<Value> = (text: string) => Entry<Value>

function read<Value>(value: Value): Entry<Value> {
  return { ok: true, value }
}

function refuse(sentence: string): Entry<never> {
  return { ok: false, sentence }
}

export function wholeNumber(least: number, most: number): ReadEntry<number> {
  return (text) => {
    const value = Number(text.trim())
    if (text.trim() === '' || !Number.isInteger(value) || value < least || value > most) {
      return refuse(`Type a whole number from ${least} to ${most}.`)
    }
    return read(value)
  }
}

/** A number with a fraction; a comma is taken for a decimal point. */
export function decimalNumber(least: number, most: number): ReadEntry<number> {
  return (text) => {
    const value = Number(text.trim().replace(',', '.'))
    if (text.trim() === '' || !Number.isFinite(value) || value < least || value > most) {
      return refuse(`Type a number from ${least} to ${most}.`)
    }
    return read(value)
  }
}

/** An empty entry means that there is none. */
export function orNothing<Value>(inner: ReadEntry<Value>): ReadEntry<Value | null> {
  return (text) => (text.trim() === '' ? read(null) : inner(text))
}

export function words(longest: number, required = false): ReadEntry<string> {
  return (text) => {
    if (required && text.trim() === '') return refuse('Type a name; it stands on paper.')
    if (text.length > longest) return refuse(`Keep it under ${longest} letters.`)
    return read(text.trim())
  }
}

export function lengthEntry(system: LengthUnitSystem): ReadEntry<Length> {
  return (text) => {
    const parsed = parseLength(text, system)
    return parsed.ok ? read(parsed.length) : refuse(parsed.sentence)
  }
}

export function lengthText(length: number | null, system: LengthUnitSystem): string {
  return length === null ? '' : formatLength(length, system)
}

/** `12`, `12 sq ft`, `1.1 m²`; a bare number is in the job's own unit. */
export function areaEntry(system: LengthUnitSystem): ReadEntry<Area> {
  return (text) => {
    const found = /^(\d+(?:[.,]\d+)?)\s*(sq\.? ?ft|ft2|ft²|sq\.? ?m|m2|m²)?$/i.exec(text.trim())
    if (found === null) return refuse('Write an area like 12 sq ft or 1.1 m².')
    const value = Number((found[1] ?? '').replace(',', '.'))
    const metric = found[2] === undefined ? system === 'metric' : found[2].toLowerCase().includes('m')
    return read(metric ? squareMetres(value) : squareFeet(value))
  }
}

export function areaText(area: Area | null, system: LengthUnitSystem): string {
  return area === null ? '' : formatArea(area, system)
}

/** `45`, `45.50`, `$1,200`; whole cents. */
export function moneyEntry(text: string): Entry<Cents> {
  const value = Number(text.replace(/[$,\s]/g, ''))
  if (text.trim() === '' || !Number.isFinite(value) || value < 0) {
    return refuse('Write an amount like 45.50.')
  }
  if (value > 10_000_000) return refuse('Write an amount of at most 10,000,000.')
  return read(roundToCents(value * 100))
}

export function dateEntry(text: string): Entry<string> {
  return localDateSchema.safeParse(text).success
    ? read(text)
    : refuse('Choose a date, or write it like 2027-03-31.')
}

export function timeEntry(text: string): Entry<string> {
  return /^([01]\d|2[0-3]):[0-5]\d$/.test(text) ? read(text) : refuse('Write a time like 08:30.')
}

export function momentEntry(text: string): Entry<string> {
  return localDateTimeSchema.safeParse(text).success ? read(text) : refuse('Choose a date and a time.')
}
