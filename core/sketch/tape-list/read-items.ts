import type { OpeningKind } from '../../project/vocabulary.ts'
import type { Length, LengthUnitSystem } from '../../units/length.ts'
import { inches } from '../../units/length.ts'
import {
  countAt,
  doubts,
  type Found,
  type Reader,
  skip,
  sticky,
  stopped,
  type TapeItems,
} from './item-reader.ts'
import { readLess, readSlope, readThing } from './read-things.ts'
import { readTrim } from './read-trim.ts'
import { lengthAt, readWritten } from './tape-lengths.ts'
import type { TapeOpening, TapeSentence } from './tape-records.ts'
import { heightFault, openingFault, readSize, sizeAt } from './tape-size.ts'
import {
  ceilingWords,
  fillers,
  type OpeningSort,
  openingLetters,
  openingSorts,
  openingWords,
} from './tape-words.ts'

const nothing: TapeItems = {
  height: [],
  openings: [],
  less: [],
  slopes: [],
  lights: [],
  radiators: [],
  closets: [],
  closetRooms: [],
  trim: [],
  without: [],
  notes: [],
  parts: [],
  sentences: [],
}

/** Reads a tidied text from left to right. What no reader takes is unread, and said. */
export function readItems(text: string, system: LengthUnitSystem): TapeItems {
  let items = nothing
  let at = 0
  let unreadFrom = -1
  const endUnread = (to: number) => {
    if (unreadFrom >= 0) items = withUnread(items, text.slice(unreadFrom, to).trim())
    unreadFrom = -1
  }
  while (at < text.length) {
    const found = readers.reduce<Found | null>((first, read) => first ?? read(text, at, system), null)
    if (found !== null) {
      endUnread(at)
      items = withFound(items, found, text.slice(at, found.end).trim())
      at = found.end
    } else {
      if (unreadFrom < 0) unreadFrom = at
      at = wordEnd(text, at)
    }
    while (text[at] === ' ') at++
  }
  endUnread(text.length)
  return items
}

function wordEnd(text: string, at: number): number {
  const word = /[^\s,;()]+|./y
  word.lastIndex = at
  return at + (word.exec(text)?.[0].length ?? 1)
}

function withFound(items: TapeItems, { adds, role }: Found, text: string): TapeItems {
  return {
    height: [...items.height, ...(adds.height ?? [])],
    openings: [...items.openings, ...(adds.openings ?? [])],
    less: [...items.less, ...(adds.less ?? [])],
    slopes: [...items.slopes, ...(adds.slopes ?? [])],
    lights: [...items.lights, ...(adds.lights ?? [])],
    radiators: [...items.radiators, ...(adds.radiators ?? [])],
    closets: [...items.closets, ...(adds.closets ?? [])],
    closetRooms: [...items.closetRooms, ...(adds.closetRooms ?? [])],
    trim: [...items.trim, ...(adds.trim ?? [])],
    without: [...items.without, ...(adds.without ?? [])],
    notes: [...items.notes, ...(adds.notes ?? [])],
    sentences: [...items.sentences, ...(adds.sentences ?? [])],
    parts: [...items.parts, { role, text }],
  }
}

/** A word goes into the note of the room. A number that belongs to nothing stops the line: something beside it may have been misread. */
function withUnread(items: TapeItems, text: string): TapeItems {
  const isNumber = !/[a-z]{2}/i.test(text)
  const sentence: TapeSentence = isNumber
    ? {
        part: text,
        weight: 'stop',
        sentence: `“${text}” belongs to nothing. Write what it counts or measures.`,
      }
    : { part: text, weight: 'say', sentence: `“${text}” is not understood and goes into the room's note.` }
  return {
    ...items,
    notes: isNumber ? items.notes : [...items.notes, text],
    parts: [...items.parts, { role: 'unread', text }],
    sentences: [...items.sentences, sentence],
  }
}

const readFiller: Reader = (text, at) => {
  const found = sticky(fillers, text, at)
  return found && { end: at + found[0].length, role: 'filler', adds: {} }
}

/** In brackets, or behind `note:` or two hyphens: words for the room's note as they are. */
const readNote: Reader = (text, at) => {
  const found = sticky(/\(([^()]*)\)|(?:note:|--)\s*(.*)$/iy, text, at)
  const note = (found?.[1] ?? found?.[2] ?? '').trim()
  return found && { end: at + found[0].length, role: 'note', adds: { notes: note === '' ? [] : [note] } }
}

const readHeight: Reader = (text, at, system) => {
  const before = lengthAt(text, at)
  const word = sticky(ceilingWords, text, skip(text, before?.end ?? at, /[\s-]*/y))
  if (word === null) return null
  const wordAt = word.index + word[0].length
  const after = before === null ? lengthAt(text, skip(text, wordAt, /\s*[:=]?\s*(?:at |of )?/y)) : null
  const written = before ?? after
  if (written === null) return null
  const end = before === null ? written.end : skip(text, wordAt, /\s*(?:ceilings?|clgs?|ceil)(?![a-z])/iy)
  const shown = text.slice(before === null ? skip(text, wordAt, /\s*[:=]?\s*(?:at |of )?/y) : at, written.end)
  const read = readWritten(shown, written, system, null)
  if (!read.ok) return stopped(end, text.slice(at, end), read.sentence, 'height')
  const fault = heightFault(read.length, system)
  if (fault !== null) return stopped(end, text.slice(at, end), fault, 'height')
  return { end, role: 'height', adds: { height: [read.length], sentences: doubts(shown, read.doubt) } }
}

/** A number with a blank behind it counts the size that comes next: `2 4x6 windows`. */
function beginsWithSize(text: string, at: number): boolean {
  const first = sizeAt(text, at)?.dimensions[0]
  return first !== undefined && (first.written.feetApart === null || first.text.includes('-'))
}

const readOpening: Reader = (text, at, system) => {
  const counted = beginsWithSize(text, at) ? { count: 1, end: at, isSaid: false } : countAt(text, at)
  const sized = sizeBefore(text, counted.end, system)
  const sorts: OpeningSort[] = []
  let here = sized?.end ?? counted.end
  for (let sort = sortAt(text, here); sort !== null; sort = sortAt(text, here)) {
    sorts.push(sort.sort)
    here = sort.end
  }
  const word = openingAt(text, here, counted.isSaid && sorts.length === 0)
  if (word === null || sorts.some((sort) => !sort.kinds.includes(word.kind))) return null
  const later = counted.isSaid ? null : countBehind(text, word.end)
  const behind = sized === null ? sizeBehind(text, later?.end ?? word.end, system) : null
  const size = sized ?? behind
  const end = behind?.end ?? later?.end ?? word.end
  const sentences = [...(size?.sentences ?? []), ...eitherOf(text, behind)]
  const opening: TapeOpening = {
    kind: word.kind,
    count: later?.count ?? counted.count,
    width: size?.lengths[0] ?? null,
    height: size?.lengths[1] ?? null,
    slab: sorts.find((sort) => sort.slab)?.slab ?? null,
    parts: sorts.find((sort) => sort.parts)?.parts ?? 1,
    isFixed: sorts.some((sort) => sort.isFixed),
    isOutside: sorts.some((sort) => sort.isOutside),
  }
  return { end, role: 'opening', adds: { openings: [opening], sentences } }
}

/** A size between two openings with nothing to part them may belong to either. */
function eitherOf(text: string, size: OpeningSize | null): readonly TapeSentence[] {
  if (size === null || !/^ ?[a-z]/i.test(text.slice(size.end))) return []
  const here = skip(text, size.end, / ?/y)
  if (sortAt(text, here) === null && openingAt(text, here, false) === null) return []
  const sentence = `“${size.part}” may belong to what stands before it or behind it. Put a comma between.`
  return [{ part: size.part, sentence, weight: 'stop' }]
}

function sortAt(text: string, at: number): { readonly sort: OpeningSort; readonly end: number } | null {
  for (const [pattern, sort] of openingSorts) {
    const found = sticky(pattern, text, at)
    if (found) return { sort, end: skip(text, at + found[0].length, /[\s-]+/y) }
  }
  return null
}

function openingAt(
  text: string,
  at: number,
  isCounted: boolean,
): { readonly kind: OpeningKind; readonly end: number } | null {
  for (const [kind, pattern] of openingWords) {
    const found = sticky(pattern, text, at)
    if (found) return { kind, end: skip(text, at + found[0].length, /\.(?!\d)/y) }
  }
  const letter = isCounted ? sticky(/[wd](?![a-z/])/iy, text, at) : null
  const kind = letter && openingLetters[letter[0].toLowerCase()]
  return kind ? { kind, end: at + 1 } : null
}

/** `windows: 3`, `doors x2`: a count behind the word, where it does not count the next one. */
function countBehind(text: string, at: number): { readonly count: number; readonly end: number } | null {
  const found = sticky(/\s*(?:[:=]\s*|x\s?)(\d{1,2})(?![\d.'"/-])(?!\s*x)(?!\s*[a-z])/iy, text, at)
  return found && { count: Number(found[1]), end: at + found[0].length }
}

interface OpeningSize {
  readonly part: string
  readonly end: number
  readonly lengths: readonly Length[]
  readonly sentences: readonly TapeSentence[]
}

/** `2868 door`: the trade's four figures, feet and inches of width and height. */
function sizeBefore(text: string, at: number, system: LengthUnitSystem): OpeningSize | null {
  const four = sticky(/(\d)(1[01]|\d)(\d)(1[01]|\d)(?!\d)\s+(?=[a-z])/y, text, at)
  if (four) {
    const lengths = [feetAndInches(four[1], four[2]), feetAndInches(four[3], four[4])]
    return { part: four[0].trim(), end: at + four[0].length, lengths, sentences: [] }
  }
  const size = sizeBehind(text, at, system)
  return size && { ...size, end: skip(text, size.end, /\s+/y) }
}

function feetAndInches(feet = '', rest = ''): Length {
  return inches(Number(feet) * 12 + Number(rest))
}

/** A size of an opening. Numbers without a unit from 13 up are inches. */
function sizeBehind(text: string, at: number, system: LengthUnitSystem): OpeningSize | null {
  const from = skip(text, at, /\s*(?:@|at (?=\d)|of (?=\d))?\s*/y)
  const size = sizeAt(text, from)
  if (size === null) return null
  const part = text.slice(size.from, size.to)
  const areInches =
    system === 'imperial' &&
    size.dimensions.every(({ written }) => written.bare !== null && written.bare > 12)
  const dimensions = areInches
    ? size.dimensions.map((each) => ({
        ...each,
        written: { ...each.written, bare: null, unit: 'in' as const, text: `${each.written.text} in` },
      }))
    : size.dimensions
  const read = readSize(dimensions, system)
  const fault = !read.ok
    ? read.sentence
    : read.lengths.length > 2
      ? `“${part}” has more than a width and a height.`
      : openingFault(read.lengths, system)
  if (fault !== null || !read.ok) {
    return { part, end: size.to, lengths: [], sentences: [{ part, sentence: fault ?? '', weight: 'stop' }] }
  }
  const said = read.doubts.map((sentence): TapeSentence => ({ part, sentence, weight: 'say' }))
  return { part, end: size.to, lengths: read.lengths, sentences: said }
}

const readers: readonly Reader[] = [
  readNote,
  readFiller,
  readSlope,
  readLess,
  readThing,
  readHeight,
  readTrim,
  readOpening,
]
