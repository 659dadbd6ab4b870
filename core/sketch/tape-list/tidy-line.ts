import { present } from '../../lists/lists.ts'
import type { LengthUnitSystem } from '../../units/length.ts'
import { fractionSigns } from '../../units/parse-length.ts'

/** One way of writing marks, fractions, signs and blanks, without the bullet or number of a list. Letters stay as they are. */
export function tidyLine(text: string, system: LengthUnitSystem): string {
  const plain = text
    .replace(/^\s*(?:[-*•]\s+|\d{1,2}[.)]\s+(?=[a-z]))/i, '')
    .replace(/[′’‘`´]/g, "'")
    .replace(/[″”“]/g, '"')
    .replace(/[×✕✖]/g, 'x')
    .replace(/[–—−‐‑]/g, '-')
    .replace(/(\d?)([½¼¾⅛⅜⅝⅞])/g, (_, digit: string, sign: string) =>
      digit === '' ? present(fractionSigns[sign]) : `${digit} ${fractionSigns[sign]}`,
    )
    .replace(/[\s ]+/g, ' ')
    .trim()
  return withoutSideLetters(withDecimalPoints(plain, system))
}

/**
 * A comma inside a number is a decimal comma in a metric job, and anywhere before a metric unit. With three digits behind it, or with a word
 * right behind, it can be read two ways and stays.
 */
function withDecimalPoints(text: string, system: LengthUnitSystem): string {
  const pattern =
    system === 'metric'
      ? /(?<![\d,])(\d+),(\d{1,2}|\d{4,})(?!\d|,\d)(?=\s*(?:mm|cm|m)x|\s*(?:mm|cm|m|x|\*|by|ceilings?|ceil|clgs?|high|height|ht|h)(?![a-z])|\s*x\s*\d|\s*[,;]|\s*$)/gi
      : /(?<![\d,])(\d+),(\d{1,2})(?=(?:\s*(?:x|by|\*)\s*\d+(?:[.,]\d{1,2})?)*\s*(?:mm|cm|m)(?!(?!x)[a-z]))/gi
  return text.replace(pattern, '$1.$2')
}

/** `12w x 10l x 8h` is 12 x 10 x 8: letters of sides between lengths. */
function withoutSideLetters(text: string): string {
  const between = /(?<=[\d'"])\s?[wldh](?=\s*(?:x|by)\s*[\d.])/gi
  if (!between.test(text)) return text
  return text
    .replace(between, '')
    .replace(/(?<=(?:x|by)\s*[\d.'"/-]+(?:\s[\d/]+"?)?)\s?[wldh](?![a-z])/gi, '')
}
