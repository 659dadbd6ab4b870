import { feet, formatLength, type Length, type LengthUnitSystem } from '../../units/length.ts'
import { countAt, type Reader, skip, sticky, stopped } from './item-reader.ts'
import { lengthAt, readWritten, type WrittenLength } from './tape-lengths.ts'
import type { TapeSentence } from './tape-records.ts'
import { heightFault, readSize, sizeAt, sizeFault } from './tape-size.ts'
import { thingWords } from './tape-words.ts'

/** `low 5 high 8`, `5 low 8 high`, `slopes 5 to 8`: a ceiling that slopes one way. */
export const readSlope: Reader = (text, at, system) => {
  const found = lowAndHigh(text, at) ?? fromTo(text, at)
  if (found === null) return null
  const shown = text.slice(at, found.end).trim()
  const heights: Length[] = []
  for (const { text: part, written } of found.heights) {
    const read = readWritten(part, written, system, null)
    if (!read.ok) return stopped(found.end, shown, read.sentence, 'height')
    heights.push(read.length)
  }
  const [low, high] = [...heights].sort((a, b) => a - b)
  if (low === undefined || high === undefined) return null
  const fault = slopeFault(low, high, system) ?? (found.isOrdered && heights[0] !== low ? highBelow : null)
  if (fault !== null) return stopped(found.end, shown, fault, 'height')
  return { end: found.end, role: 'height', adds: { slopes: [{ low, high }] } }
}

const highBelow = 'The low side is higher than the high side.'

interface TwoHeights {
  readonly end: number
  readonly heights: readonly { readonly text: string; readonly written: WrittenLength }[]
  /** The first is said to be the low one. */
  readonly isOrdered: boolean
}

const lowWord = /(?:sloped?s?|sloping|shed)?[ ,:]*low(?: side)?[ :=]*/iy
const highWord = /[ ,]*(?:and |to )?high(?: side)?[ :=]*/iy

function lowAndHigh(text: string, at: number): TwoHeights | null {
  const before = lengthAt(text, at)
  const low = skip(text, before?.end ?? at, / ?low(?: side)?(?![a-z])[ ,]*(?:and |to )?/iy)
  if (before !== null && low > before.end) {
    const high = lengthAt(text, low)
    const end = high === null ? low : skip(text, high.end, / ?high(?: side)?(?![a-z])/iy)
    if (high === null || end === high.end) return null
    return pair(text, [at, before], [low, high], end)
  }
  const from = skip(text, at, lowWord)
  const first = from === at ? null : lengthAt(text, from)
  const to = first === null ? from : skip(text, first.end, highWord)
  const second = first === null || to === first.end ? null : lengthAt(text, to)
  return first === null || second === null ? null : pair(text, [from, first], [to, second], second.end)
}

function pair(
  text: string,
  [lowAt, low]: readonly [number, WrittenLength],
  [highAt, high]: readonly [number, WrittenLength],
  end: number,
): TwoHeights {
  return {
    end,
    isOrdered: true,
    heights: [
      { text: text.slice(lowAt, low.end), written: low },
      { text: text.slice(highAt, high.end), written: high },
    ],
  }
}

function fromTo(text: string, at: number): TwoHeights | null {
  const from = skip(text, at, /slop(?:es?|ed|ing)(?: ceiling)?[ :]+(?:from )?/iy)
  const first = from === at ? null : lengthAt(text, from)
  const to = first === null ? from : skip(text, first.end, / to /iy)
  const second = first === null || to === first.end ? null : lengthAt(text, to)
  if (first === null || second === null) return null
  return { ...pair(text, [from, first], [to, second], second.end), isOrdered: false }
}

/** A low side under 1 ft (our own choice) is a slip; the high side is a height like any other. */
function slopeFault(low: Length, high: Length, system: LengthUnitSystem): string | null {
  if (low === high) return 'Both sides of the slope are the same height; write one height.'
  if (low < feet(1)) return `A low side of ${formatLength(low, system)} is taken for a slip.`
  return heightFault(high, system)
}

/** `less 4 x 5`: a corner of the rectangle that does not belong to the room, so that it is L-shaped. */
export const readLess: Reader = (text, at, system) => {
  const from = skip(text, at, /(?:less|minus)(?: a corner(?: of)?)?[ :]+/iy)
  const size = from === at ? null : sizeAt(text, from)
  if (size === null) {
    const side = from === at ? null : lengthAt(text, from)
    if (side === null) return null
    const part = text.slice(at, side.end)
    return stopped(side.end, part, `“${part}” has one side; write two, like less 4 x 5.`, 'size')
  }
  const part = text.slice(at, size.to)
  const read = readSize(size.dimensions, system)
  if (!read.ok) return stopped(size.to, part, read.sentence, 'size')
  const [width, depth] = read.lengths
  if (width === undefined || depth === undefined || read.lengths.length > 2) {
    return stopped(size.to, part, `“${part}” has more than two sides.`, 'size')
  }
  const sentences = read.doubts.map((sentence): TapeSentence => ({ part, sentence, weight: 'say' }))
  return { end: size.to, role: 'size', adds: { less: [{ width, depth }], sentences } }
}

/** Behind a thing that is not counted nothing else may stand: a light blue wall has no light. */
const noMore = / ?(?:[,;.)]|$)/y

/** Lights and radiators, and closets, which are doors of the room that has them. */
export const readThing: Reader = (text, at, system) => {
  const { count, end: from, isSaid } = countAt(text, at)
  for (const [thing, pattern] of thingWords) {
    const found = sticky(pattern, text, from)
    const end = from + (found?.[0].length ?? 0)
    if (found === null) continue
    const closets = thing === 'closets' ? readClosetSize(text, at, end, count, system) : null
    if (closets !== null) return closets
    // A size is behind it: the word that begins what stands behind a size is the name of the room.
    const isName = thing === 'closets' && at === 0
    if (!isSaid && (isName || !sticky(noMore, text, end))) continue
    const part = text.slice(at, end)
    const sentence = `“${part}”: a door is set for each; one that is painted inside has its size behind it, like closet 2-6 x 6.`
    const sentences: readonly TapeSentence[] =
      thing === 'closets' && count > 0 ? [{ part, sentence, weight: 'say' }] : []
    return { end, role: 'thing', adds: { [thing]: [count], sentences } }
  }
  return null
}

/** `closet 2-6 x 6`: a closet that is painted inside, as a room of its own; so many of them. */
function readClosetSize(text: string, at: number, wordEnd: number, count: number, system: LengthUnitSystem) {
  const from = skip(text, wordEnd, /[ :=]+(?:of )?/iy)
  const size = from === wordEnd ? null : sizeAt(text, from)
  if (size === null) return null
  const part = text.slice(at, size.to)
  const read = readSize(size.dimensions, system)
  if (!read.ok) return stopped(size.to, part, read.sentence, 'size')
  const [width, depth, height = null] = read.lengths
  const fault = sizeFault(read.lengths, system)
  if (fault !== null || width === undefined || depth === undefined) {
    return stopped(size.to, part, fault ?? `“${part}” has one side; write two, like closet 2-6 x 6.`, 'size')
  }
  const sentences = read.doubts.map((sentence): TapeSentence => ({ part, sentence, weight: 'say' }))
  const closetRooms = Array.from({ length: count }, () => ({ width, depth, height }))
  return { end: size.to, role: 'thing' as const, adds: { closets: [count], closetRooms, sentences } }
}
