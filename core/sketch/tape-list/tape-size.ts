import { present } from '../../lists/lists.ts'
import { feet, formatLength, type Length, type LengthUnitSystem, metres } from '../../units/length.ts'
import { lengthAt, readWritten, type WrittenLength } from './tape-lengths.ts'

type Dimensions = readonly { readonly text: string; readonly written: WrittenLength }[]

/** Lengths with `x` or `by` between them, where they stand in a line. */
export interface WrittenSize {
  readonly from: number
  readonly to: number
  readonly dimensions: Dimensions
}

const between = /\s*(?:x(?![a-wyz])|\*|by(?![a-z]))\s*/iy

/** Lengths in a row from this place on; null where there are not two of them. */
export function sizeAt(text: string, from: number): WrittenSize | null {
  const dimensions: { text: string; written: WrittenLength }[] = []
  let at = from
  let to = from
  for (;;) {
    const written = lengthAt(text, at)
    if (written === null) break
    dimensions.push({ text: text.slice(at, written.end), written })
    to = written.end
    between.lastIndex = to
    const separator = between.exec(text)
    if (separator === null) break
    at = to + separator[0].length
  }
  return dimensions.length < 2 ? null : { from, to, dimensions }
}

/** The first size of a line. A number that is part of a word, a fraction or another number does not begin one. */
export function firstSize(text: string): WrittenSize | null {
  for (let at = 0; at < text.length; at++) {
    if (!/[\d.]/.test(present(text[at])) || /[\w.'"/#-]/.test(text[at - 1] ?? ' ')) continue
    if (/\d[,:]$/.test(text.slice(0, at))) continue
    const size = sizeAt(text, at)
    if (size !== null) return size
  }
  return null
}

type ReadSize =
  | { readonly ok: true; readonly lengths: readonly Length[]; readonly doubts: readonly string[] }
  | { readonly ok: false; readonly sentence: string }

/** The lengths of a size in order, or a sentence about the first that is none. */
export function readSize(dimensions: Dimensions, system: LengthUnitSystem): ReadSize {
  const carried = dimensions.at(-1)?.written.unit ?? null
  const lengths: Length[] = []
  const doubts: string[] = []
  for (const { text, written } of dimensions) {
    const read = readWritten(text, written, system, carried)
    if (!read.ok) return read
    lengths.push(read.length)
    if (read.doubt !== null) doubts.push(read.doubt)
  }
  return { ok: true, lengths, doubts }
}

/** Sides and heights beyond these (our own choice) are a slip of the pen sooner than a room. */
const sides = { least: feet(1.5), most: feet(100), noun: 'side' }
const heights = { least: feet(4), most: feet(30), noun: 'height' }

/** In words why this is no room, or null. */
export function sizeFault(lengths: readonly Length[], system: LengthUnitSystem): string | null {
  if (lengths.length > 3) return 'A size is two sides, or two sides and a height; more lengths stand here.'
  for (const [index, length] of lengths.entries()) {
    const fault = lengthFault(length, index < 2 ? sides : heights, system)
    if (fault !== null) return fault
  }
  return null
}

/** Why a height cannot be right, as a sentence; null where it can. */
export function heightFault(height: Length, system: LengthUnitSystem): string | null {
  return lengthFault(height, heights, system)
}

function lengthFault(length: Length, { least, most, noun }: typeof sides, system: LengthUnitSystem) {
  if (length >= least && length <= most) return null
  const example = system === 'imperial' ? 'inches are written 96 in' : 'centimeters are written 240 cm'
  return `A ${noun} of ${formatLength(length, system)} is taken for a slip; ${example}.`
}

/** A door or window of this size is likelier a slip: 6 in to 20 ft, our own choice. */
export function openingFault(lengths: readonly Length[], system: LengthUnitSystem): string | null {
  const wrong = lengths.find((length) => length < feet(0.5) || length > metres(6.1))
  return wrong === undefined ? null : `An opening of ${formatLength(wrong, system)} is taken for a slip.`
}
