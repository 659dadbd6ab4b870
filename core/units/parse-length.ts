import {
  feet,
  inches,
  type Length,
  type LengthUnitSystem,
  lengthFromUnits,
  metres,
  millimetres,
} from './length.ts'

type ParsedLength =
  | { readonly ok: true; readonly length: Length }
  | { readonly ok: false; readonly sentence: string }

const help = `Write a length like 12' 6 1/2", 12-6, 150 in, 3.81 m or 3810 mm.`
const number = String.raw`\d+(?:\.\d+)?|\.\d+`
const mixed = String.raw`(?:\d+(?:\s+|-)\d+/\d+|\d+/\d+|${number})`
const feetInches = new RegExp(
  String.raw`^(?:(${mixed})\s*(?:'|ft\.?|feet|foot|f))?\s*-?\s*(?:(${mixed})\s*(?:"|''|in\.?|inch|inches)?)?$`,
)
const inchesOnly = new RegExp(String.raw`^(${mixed})\s*(?:"|''|in\.?|inch|inches)$`)
const metric = new RegExp(String.raw`^(${number})\s*(mm|cm|m)$`)
const bare = new RegExp(`^(${mixed})$`)
/** Feet and inches that only a hyphen or a blank keeps apart. */
const apart = /^(\d+)(\s*-\s*|\s+)(\d{1,2}(?:\.\d+)?(?:(?:\s+|-)\d+\/\d+)?)\s*(?:"|''|in\.?|inch|inches)?$/

/** Fractions that are one character, as they are typed with several. */
export const fractionSigns: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

/** As in the records: no building has a wall longer than 200 m. A fraction over nothing ends here too. */
const longest = metres(200)

type BareUnit = 'ft' | 'in' | 'm' | 'mm'

const fromBareUnit: Record<BareUnit, (value: number) => Length> = {
  ft: feet,
  in: inches,
  m: metres,
  mm: millimetres,
}

/**
 * Reads what a person types for a length. A bare number is feet in an imperial job and metres in a metric one,
 * or in `bareUnit` where the field says so (a casing is typed in inches).
 * Accepts `12' 6 1/2"`, `12'6`, `12f6`, `150 in`, `6 1/2"`, `3.81 m`, `381 cm`, `3810 mm`; in an imperial job `12-6` and `12-6 1/2`, and where a bare number is feet
 * `12 6` too. These are the writings of the list of rooms.
 * Negative, empty and unreadable text answer with a sentence that says what to write.
 */
export function parseLength(
  text: string,
  system: LengthUnitSystem,
  bareUnit: BareUnit = system === 'imperial' ? 'ft' : 'm',
): ParsedLength {
  const clean = text
    .trim()
    .toLowerCase()
    .replaceAll('′', "'")
    .replaceAll('’', "'")
    .replaceAll('″', '"')
    .replaceAll('”', '"')
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${fractionSigns[sign]}`)
    .trim()
  if (/\d,\d{3}(?!\d)/.test(clean)) {
    return refuse(
      `"${text.trim()}" can be read two ways: the comma may stand for thousands or for a decimal point.`,
    )
  }
  return readClean(clean.replaceAll(',', '.'), text, bareUnit)
}

function readClean(clean: string, text: string, bareUnit: BareUnit): ParsedLength {
  if (clean === '') return refuse('Type a length.')
  if (clean.startsWith('-')) return refuse(`"${text.trim()}" is below zero. Type it without the minus.`)
  return (
    readMetric(clean) ??
    readInches(clean) ??
    readBare(clean, bareUnit) ??
    readFeetInches(clean) ??
    readApart(clean, text, bareUnit) ??
    refuse(`"${text.trim()}" is not a length.`)
  )
}

function refuse(sentence: string): ParsedLength {
  return { ok: false, sentence: `${sentence} ${help}` }
}

function accept(length: Length): ParsedLength {
  if (!(length <= longest)) return refuse('That is longer than any house.')
  return { ok: true, length }
}

function readMetric(text: string): ParsedLength | undefined {
  const match = metric.exec(text)
  if (!match) return undefined
  const value = Number(match[1])
  if (match[2] === 'mm') return accept(millimetres(value))
  return accept(match[2] === 'cm' ? millimetres(value * 10) : metres(value))
}

function readInches(text: string): ParsedLength | undefined {
  const match = inchesOnly.exec(text)
  return match ? accept(inches(readMixed(match[1]))) : undefined
}

function readBare(text: string, unit: BareUnit): ParsedLength | undefined {
  const match = bare.exec(text)
  return match ? accept(fromBareUnit[unit](readMixed(match[1]))) : undefined
}

function readFeetInches(text: string): ParsedLength | undefined {
  const match = feetInches.exec(text)
  if (!match || match[1] === undefined) return undefined
  return accept(lengthFromUnits(feet(readMixed(match[1])) + inches(readMixed(match[2] ?? '0'))))
}

function readApart(clean: string, text: string, bareUnit: BareUnit): ParsedLength | undefined {
  const [match, feetText, between = '', inchText] = apart.exec(clean) ?? []
  const isKnown = bareUnit === 'ft' || (bareUnit === 'in' && between.includes('-'))
  if (match === undefined || !isKnown) return undefined
  const over = readMixed(inchText)
  if (over >= 12) return refuse(`"${text.trim()}" has ${inchText} inches beside the feet; a foot has 12.`)
  return accept(lengthFromUnits(feet(Number(feetText)) + inches(over)))
}

function readMixed(text: string | undefined): number {
  const parts = (text ?? '0').split(/\s+|-/)
  return parts.reduce((total, part) => total + readFraction(part), 0)
}

function readFraction(text: string): number {
  const [top, bottom] = text.split('/')
  return bottom === undefined ? Number(top) : Number(top) / Number(bottom)
}
