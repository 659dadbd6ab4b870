import { z } from 'zod'
import type { Brand } from '../units/brand.ts'
import { type Length, lengthFromUnits, unitsPerMillimetre } from '../units/length.ts'
import type { Cents } from '../units/money.ts'
import { roundToCents } from '../units/money.ts'

/** A record as the core sees it: nothing in it can be changed in place. */
export type Frozen<T> = T extends string | number | boolean | null | undefined
  ? T
  : T extends readonly (infer Item)[]
    ? readonly Frozen<Item>[]
    : { readonly [Key in keyof T]: Frozen<T[Key]> }

/** No building has a wall longer than this; a larger number is a wrong unit. */
const largestMillimetres = 200_000

function lengthCodec(least: number) {
  return z.codec(z.number().min(least).max(largestMillimetres), z.custom<Length>(Number.isSafeInteger), {
    decode: (value) => lengthFromUnits(value * unitsPerMillimetre),
    encode: (length) => length / unitsPerMillimetre,
  })
}

/** Millimetres in the file, whole 1/8000 mm in the program; zero or more. */
export const lengthSchema = lengthCodec(0)
/** As `lengthSchema`, but more than nothing (at least 1/100 mm). */
export const positiveLengthSchema = lengthCodec(0.01)
/** A coordinate on the plan: millimetres, either sign. */
export const coordinateSchema = lengthCodec(-largestMillimetres)

export const centsSchema = z.codec(z.int().min(-1e12).max(1e12), z.custom<Cents>(Number.isSafeInteger), {
  decode: (value) => roundToCents(value),
  encode: (cents) => cents,
})

/** A price or a wage: nothing or more, and no more than ten million dollars. */
export const priceSchema = z.codec(z.int().min(0).max(1e9), z.custom<Cents>(Number.isSafeInteger), {
  decode: (value) => roundToCents(value),
  encode: (cents) => cents,
})

/**
 * Records are kept in plain objects by id. Plain numbers would be put first there, and the names every object has
 * (`constructor`) would be found without being there, so neither is an id.
 */
const idPattern =
  /^(?!\d+$)(?!(?:constructor|hasOwnProperty|isPrototypeOf|propertyIsEnumerable|toLocaleString|toString|valueOf)$)[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/

/**
 * An id as a file has it: 1 to 64 letters, digits, - or _. `Name` keeps the ids of one kind of record from those of another for
 * the compiler.
 */
export function idSchema<Name extends string>() {
  return z.codec(
    z
      .string()
      .max(64, { abort: true })
      .regex(
        idPattern,
        'an id is 1 to 64 letters, digits, - or _, and neither a plain number nor a word of the language',
      ),
    z.custom<Brand<string, Name>>((value) => typeof value === 'string'),
    { decode: (value) => value as Brand<string, Name>, encode: (id) => id },
  )
}

export const shortText = z.string().max(200)
export const longText = z.string().max(4000)
export const countSchema = z.int().min(0).max(10_000)
/**
 * February 30 has the right form and does not exist. As a pattern, so that the published schema says it too: months of 31 days, of 30,
 * February of 28, and February 29 in years that 4 divides and 100 does not, or 400 does.
 */
const dayOfCalendar =
  /^(?:\d{4}-(?:(?:0[13578]|1[02])-(?:0[1-9]|[12]\d|3[01])|(?:0[469]|11)-(?:0[1-9]|[12]\d|30)|02-(?:0[1-9]|1\d|2[0-8]))|(?:\d\d(?:0[48]|[2468][048]|[13579][26])|(?:[02468][048]|[13579][26])00)-02-29)/
/** The engine reads years below 100 as of the last century, and after 9999 dates no longer have ten characters. */
const yearOfPlans = /^(?:19[7-9]\d|2[01]\d\d)/
const yearsOfPlans = 'days of work lie in the years 1970 to 2199'
export const localDateSchema = z
  .string()
  .max(10, { abort: true })
  .regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, {
    error: 'a date is written 2027-03-31',
    abort: true,
  })
  .regex(dayOfCalendar, 'there is no such day in the calendar')
  .regex(yearOfPlans, yearsOfPlans)
export const localTimeSchema = z
  .string()
  .max(5, { abort: true })
  .regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/, 'a time of day is written 08:30')
export const localDateTimeSchema = z
  .string()
  .max(16, { abort: true })
  .regex(/^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d$/, {
    error: 'a moment on site is written 2027-03-31T08:30',
    abort: true,
  })
  .regex(dayOfCalendar, 'there is no such day in the calendar')
  .regex(yearOfPlans, yearsOfPlans)

/** SHA-256 of a picture's bytes (FIPS 180-4) in small hexadecimal digits: what it is known by in a book. */
export const pictureHashSchema = z
  .string()
  .max(64, { abort: true })
  .regex(/^[0-9a-f]{64}$/, 'a picture is known by 64 small hexadecimal digits')
