import { type Length, type LengthUnitSystem, toFeet } from '../../units/length.ts'
import { parseLength } from '../../units/parse-length.ts'

/**
 * One length as it stands in a line: where it ends, and what it says in a form that `parseLength` reads. `bare` is set where it is a number
 * without a unit.
 */
export interface WrittenLength {
  readonly end: number
  readonly text: string
  readonly bare: number | null
  readonly unit: 'ft' | 'in' | 'm' | 'cm' | 'mm' | null
  /** Feet and inches with a hyphen or a blank between them, which a number of the name could be part of. */
  readonly feetApart: { readonly feet: string; readonly rest: string } | null
  readonly fault: string | null
}

const number = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`
const inch = String.raw`(?:\d+(?:\.\d+)?(?:(?:\s+|-)\d+\/\d+)?|\d+\/\d+|\.\d+)`
/** No word goes on here; an `x` before the next length is none. */
const wordEnd = String.raw`(?!(?!x\s*[\d.])[a-z])`
const inchMark = String.raw`(?:"|''|(?:inch(?:es)?|in)${wordEnd}\.?)`
const footMark = String.raw`(?:'(?!')|(?:feet|foot|ft|f)${wordEnd}\.?)`
const apart = String.raw`(\d+(?:\.\d+)?(?:(?:\s+|-)\d+\/\d+)?)(?:\s*(${inchMark}))?`
/** No more of a number may follow. */
const end = String.raw`(?![\d/:]|\.\d|\s*'(?!'))`

const forms = {
  metric: new RegExp(String.raw`(${number})\s*(mm|cm|m)(?!\d)${wordEnd}`, 'iy'),
  feet: new RegExp(String.raw`(${number})\s*${footMark}`, 'iy'),
  inchesAfterFeet: new RegExp(String.raw`\s*-?\s*(${inch})(?:\s*(${inchMark}))?${end}`, 'iy'),
  inches: new RegExp(String.raw`(${inch})\s*${inchMark}`, 'iy'),
  mixed: new RegExp(String.raw`(\d+(?:\s+|-)\d+\/\d+)${end}`, 'iy'),
  dashed: new RegExp(String.raw`(\d+)-${apart}${end}`, 'iy'),
  spaced: new RegExp(String.raw`(\d+)\s+${apart}${end}`, 'iy'),
  bare: new RegExp(`(${number})${end}`, 'iy'),
} as const

function match(form: keyof typeof forms, text: string, at: number): RegExpExecArray | null {
  const pattern = forms[form]
  pattern.lastIndex = at
  return pattern.exec(text)
}

const plain = { bare: null, feetApart: null, fault: null } as const

/** The length that begins at this place of a tidied line, the longest way of reading it first; null where none does. */
export function lengthAt(text: string, at: number): WrittenLength | null {
  return (
    metricAt(text, at) ??
    feetAt(text, at) ??
    inchesAt(text, at) ??
    apartAt(text, at, 'dashed') ??
    mixedAt(text, at) ??
    apartAt(text, at, 'spaced') ??
    bareAt(text, at)
  )
}

function metricAt(text: string, at: number): WrittenLength | null {
  const found = match('metric', text, at)
  if (found === null) return null
  return { ...plain, end: at + found[0].length, text: found[0], unit: found[2]?.toLowerCase() as 'm' }
}

function feetAt(text: string, at: number): WrittenLength | null {
  const feet = match('feet', text, at)
  if (feet === null) return null
  const after = at + feet[0].length
  const whole = { ...plain, end: after, text: `${feet[1]} ft`, unit: 'ft' as const }
  const rest = match('inchesAfterFeet', text, after)
  if (rest === null || (rest[2] === undefined && countsNext(text, after + rest[0].length))) return whole
  return { ...whole, end: after + rest[0].length, ...withInches(feet[1] ?? '', rest[1] ?? '') }
}

function inchesAt(text: string, at: number): WrittenLength | null {
  const found = match('inches', text, at)
  return found && { ...plain, end: at + found[0].length, text: `${found[1]} in`, unit: 'in' }
}

function mixedAt(text: string, at: number): WrittenLength | null {
  const found = match('mixed', text, at)
  return found && { ...plain, end: at + found[0].length, text: `${found[1]} ft`, unit: 'ft' }
}

/** `12-6`, `12 6 1/2"`: feet and inches that only a hyphen or a blank keeps apart. */
function apartAt(text: string, at: number, form: 'dashed' | 'spaced'): WrittenLength | null {
  const found = match(form, text, at)
  if (found === null) return null
  const [whole, feet = '', rest = ''] = found
  const after = at + whole.length
  if (form === 'spaced' && countsNext(text, after)) return null
  if (form === 'spaced' && leadingNumber(rest) >= 12) return null
  return {
    ...plain,
    end: after,
    unit: 'ft',
    ...withInches(feet, rest),
    feetApart: { feet, rest: text.slice(at + whole.indexOf(rest, feet.length), after) },
  }
}

function bareAt(text: string, at: number): WrittenLength | null {
  const found = match('bare', text, at)
  return found && { ...plain, end: at + found[0].length, text: found[0], unit: null, bare: Number(found[1]) }
}

function withInches(feet: string, rest: string): Pick<WrittenLength, 'text' | 'fault'> {
  const inches = leadingNumber(rest)
  const fault = inches < 12 ? null : `has ${rest} inches beside the feet; a foot has 12`
  return { text: `${feet}' ${rest}"`, fault: feet.includes('.') ? partOfFeet : fault }
}

const partOfFeet = 'has a part of a foot and inches beside it'

function leadingNumber(text: string): number {
  return text.includes('/') && !/[\s-]/.test(text) ? 0 : Number.parseFloat(text)
}

/** A number before a word counts it: `9' 3 win` is nine feet and three windows. `x`, `by` and the end of the part do not count. */
function countsNext(text: string, at: number): boolean {
  return /^\s*(?!x(?![a-z])|(?:by|with|and|plus|has)(?![a-z])|w\/)[a-z]/i.test(text.slice(at))
}

type ReadLength =
  | { readonly ok: true; readonly length: Length; readonly doubt: string | null }
  | { readonly ok: false; readonly sentence: string }

/**
 * What a written length is. A number without a unit takes the unit written behind the last length of its row where that can be meant, else
 * feet, or metres, or in a metric job centimetres and millimetres by its size.
 */
export function readWritten(
  text: string,
  written: WrittenLength,
  system: LengthUnitSystem,
  carried: WrittenLength['unit'],
): ReadLength {
  const shown = text.trim()
  if (written.fault !== null) return { ok: false, sentence: `“${shown}” ${written.fault}.` }
  const unit = written.bare === null ? null : unitOfBare(written.bare, system, carried)
  const isImperial = written.unit === 'ft' && written.feetApart !== null
  if (isImperial && system === 'metric') {
    return { ok: false, sentence: `“${shown}” is not a metric length; write feet with marks, like 12' 6".` }
  }
  const read = parseLength(unit === null ? written.text : `${written.text} ${unit}`, system)
  if (!read.ok) return { ok: false, sentence: `“${shown}” is not understood as a length.` }
  return {
    ok: true,
    length: read.length,
    doubt: doubtOf(shown, written, read.length, carried === null ? unit : null),
  }
}

function unitOfBare(
  bare: number,
  system: LengthUnitSystem,
  carried: WrittenLength['unit'],
): 'ft' | 'in' | 'm' | 'cm' | 'mm' {
  if (carried === 'in' && bare >= 24) return 'in'
  if (carried === 'mm' && bare >= 500) return 'mm'
  if (carried === 'cm' && bare >= 50) return 'cm'
  if (carried === 'm' && bare < 50) return 'm'
  if (system === 'imperial' || carried === 'ft') return 'ft'
  return bare < 50 ? 'm' : bare < 1000 ? 'cm' : 'mm'
}

/** Said, not asked: the picture shows the length that was taken. */
function doubtOf(
  shown: string,
  written: WrittenLength,
  length: Length,
  unit: ReturnType<typeof unitOfBare> | null,
): string | null {
  const isFeet = unit === 'ft' || (written.unit === 'ft' && /^\d*\.\d+ ft$/.test(written.text))
  if (isFeet && !Number.isInteger(toFeet(length) * 4)) {
    return `“${shown}” is taken as a part of a foot; feet and inches are written 12-6 or 12' 6".`
  }
  if (/^\d+-\d+\/\d+$/.test(shown)) {
    const [feet, part] = shown.split('-')
    return `“${shown}” is taken as ${feet} ${part} feet; ${feet} feet and ${part} inch is written ${feet}-0 ${part}.`
  }
  if (unit === 'cm' && written.bare !== null) return `“${shown}” is taken as centimeters.`
  if (unit === 'mm' && written.bare !== null) return `“${shown}” is taken as millimeters.`
  return null
}
