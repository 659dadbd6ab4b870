import { present } from '../../lists/lists.ts'
import { formatLength, type Length, type LengthUnitSystem } from '../../units/length.ts'
import { roomUseOf } from '../room-kinds.ts'
import type { TapeItems } from './item-reader.ts'
import { readItems } from './read-items.ts'
import { lengthAt } from './tape-lengths.ts'
import type { TapeLine, TapePart, TapeRoom, TapeSentence, TapeStorey } from './tape-records.ts'
import { firstSize, readSize, sizeFault, type WrittenSize } from './tape-size.ts'
import { tidyLine } from './tidy-line.ts'

/** Reads one room a line. Headings give storeys and heights to the lines below them. */
export function readTapeList(text: string, system: LengthUnitSystem): readonly TapeLine[] {
  return text.split(/\r\n|\r|\n/).map((line, index) => readTapeLine(line, index + 1, system))
}

/**
 * Reads one room of a tape list; every part of the line is either understood or said not to be.
 *
 * @param number from 1, as the line is named
 */
export function readTapeLine(text: string, number: number, system: LengthUnitSystem): TapeLine {
  const tidy = tidyLine(text, system)
  const line: TapeLine = { ...emptyLine, number, text }
  if (tidy === '') return line
  const size = firstSize(tidy)
  if (size === null) return withoutSize(line, tidy, system)
  return withSize(line, tidy, size, system)
}

const emptyLine: TapeLine = {
  number: 0,
  text: '',
  storey: null,
  ceilings: null,
  room: null,
  sentences: [],
  parts: [],
}

function stop(part: string, sentence: string): TapeSentence {
  return { part, sentence, weight: 'stop' }
}

/** A heading, or a room whose size is missing or not understood. */
function withoutSize(line: TapeLine, tidy: string, system: LengthUnitSystem): TapeLine {
  const storey = storeyOf(tidy)
  if (storey !== null) return { ...line, storey, parts: [{ role: 'storey', text: tidy }] }
  if (/^(?:all )?(?:ceilings?|clgs?|height)(?![a-z])/i.test(tidy)) {
    const items = readItems(tidy.replace(/^all /i, ''), system)
    const [height, ...more] = items.height
    if (height !== undefined && more.length === 0 && items.parts.length === 1) {
      return {
        ...line,
        ceilings: height,
        parts: [{ role: 'height', text: tidy }],
        sentences: items.sentences,
      }
    }
  }
  const example = system === 'imperial' ? '12-6 x 10' : '3.80 x 3.10'
  const sentence = `No size is understood. Write two sides, like ${example}.`
  return { ...line, parts: [{ role: 'unread', text: tidy }], sentences: [stop(tidy, sentence)] }
}

const ordinals: Readonly<Record<string, number>> = {
  ground: 0,
  main: 0,
  first: 0,
  '1st': 0,
  lower: -1,
  second: 1,
  '2nd': 1,
  upper: 1,
  third: 2,
  '3rd': 2,
  top: 2,
}
const wholeNames: Readonly<Record<string, number>> = {
  downstairs: 0,
  upstairs: 1,
  basement: -1,
  cellar: -1,
  attic: 2,
}

function storeyOf(text: string): TapeStorey | null {
  const name = text.replace(/[\s:.-]+$/, '')
  const [, ordinal] = /^([a-z\d]+) (?:floor|flr|fl|storey|story|level)$/i.exec(name) ?? []
  const level = ordinal === undefined ? wholeNames[name.toLowerCase()] : ordinals[ordinal.toLowerCase()]
  return level === undefined ? null : { name: name.charAt(0).toUpperCase() + name.slice(1), level }
}

function withSize(line: TapeLine, tidy: string, size: WrittenSize, system: LengthUnitSystem): TapeLine {
  const named = nameAndSize(tidy, size)
  const behind = tidy.slice(size.to)
  const isCut = /^(?!\.(?:\s|$))[^\s,;()]/.test(behind)
  const read = readSize(named.dimensions, system)
  const { name, rest } = named.name === '' ? nameBehind(behind) : { name: named.name, rest: behind }
  const items = readItems(rest.trim(), system)
  const sizeText = tidy.slice(size.from + named.taken, size.to).trim()
  const faults = [
    ...(read.ok ? [] : [stop(sizeText, read.sentence)]),
    ...(isCut
      ? [
          stop(
            sizeText,
            `“${sizeText}” is followed by “${behind.split(' ')[0]}” without a space; its end is not clear.`,
          ),
        ]
      : []),
    ...nameFaults(name),
    ...trimDoubts(sizeText, rest),
    ...(read.ok ? sizeSentences(read.lengths, read.doubts, sizeText, items, system) : []),
  ]
  const sentences = [...named.sentences, ...faults, ...items.sentences]
  const parts: TapePart[] = [
    ...(name === '' ? [] : [{ role: 'name' as const, text: name }]),
    { role: 'size', text: sizeText },
    ...items.parts,
  ]
  const isStopped = !read.ok || sentences.some((each) => each.weight === 'stop')
  const room = isStopped ? null : roomOf(name, read.lengths, items)
  return { ...line, room, sentences, parts }
}

/** The name before a size, and what of the size belongs to it: `Bedroom 2 10 x 12` is Bedroom 2, and says so. */
function nameAndSize(tidy: string, size: WrittenSize) {
  const before = tidy.slice(0, size.from).trim()
  const [first, ...others] = size.dimensions
  const feetApart = first?.written.feetApart ?? null
  const name = trimName(before)
  const none: readonly TapeSentence[] = []
  const plain = { name, dimensions: size.dimensions, taken: 0, sentences: none }
  if (first === undefined || feetApart === null || before === '' || /[,;:]$/.test(before)) return plain
  const isNumberOfName = /^\d\s/.test(first.text) && Number(feetApart.feet) < 5 && !/^0/.test(feetApart.rest)
  const other = isNumberOfName ? lengthAt(feetApart.rest, 0) : null
  if (other === null || other.end < feetApart.rest.length) {
    if (first.text.includes('-') || !mayNumber(before, feetApart.feet)) return plain
    const sentence = `“${first.text}” is taken as ${feetApart.feet} feet and inches; if ${feetApart.feet} belongs to the name, put a comma behind it.`
    return { ...plain, sentences: [{ part: first.text, sentence, weight: 'say' as const }] }
  }
  const longName = trimName(`${before} ${feetApart.feet}`)
  const sentence = `“${longName}” is taken as the name; feet and inches are written ${feetApart.feet}-${feetApart.rest}.`
  return {
    name: longName,
    dimensions: [{ text: feetApart.rest, written: other }, ...others],
    taken: first.text.length - feetApart.rest.length,
    sentences: [{ part: first.text, sentence, weight: 'say' as const }],
  }
}

/** Rooms are numbered up to nine, and those called only room, unit and the like beyond. */
function mayNumber(name: string, feet: string): boolean {
  return Number(feet) < 10 || /(?:^|\s)(?:rooms?|rm|unit|apt|suite|office|no\.?|#)$/i.test(name)
}

function trimName(text: string): string {
  return text.replace(/^[\s,;:.-]+|[\s,;:.=@-]+$/g, '').slice(0, 200)
}

/** A size that stands first has its name behind it, up to the next comma or to words that are none. */
function nameBehind(behind: string): { readonly name: string; readonly rest: string } {
  const lead = behind.length - behind.trimStart().length
  const [first] = readItems(behind.slice(lead).split(/[,;(]/)[0] ?? '', 'imperial').parts
  if (first?.role !== 'unread' || !/^[a-z]/i.test(first.text)) return { name: '', rest: behind }
  return { name: trimName(first.text), rest: behind.slice(lead + first.text.length) }
}

function nameFaults(name: string): readonly TapeSentence[] {
  if (name === '') return [stop('', 'The room has no name. Write it before the size.')]
  if (!/[a-z]/i.test(name)) return [stop(name, `“${name}” is not the name of a room.`)]
  const many = /^(?:\d+|two|three|four|five)\s+(?:[a-z]+\s+)?[a-z]+s$/i.test(name)
  if (many) return [stop(name, `“${name}” says several rooms. Write a line for each.`)]
  const item = readItems(name, 'imperial').parts.find(({ role }) => role === 'opening' || role === 'trim')
  if (item !== undefined && /\d/.test(item.text)) {
    return [stop(item.text, `“${item.text}” stands in the name. Write the size before it.`)]
  }
  const [length] = /\d+\s*['"/,:.]\s*\d*/.exec(name) ?? []
  if (length !== undefined)
    return [stop(length.trim(), `“${length.trim()}” before the size is not understood.`)]
  const [, last] = /(?<!#)(?<!rooms? |rm |unit |apt |suite |no\. ?|office )(?<!\d)(\d{2,})$/i.exec(name) ?? []
  if (last === undefined) return []
  return [{ part: last, weight: 'say', sentence: `“${last}” before the size is taken as part of the name.` }]
}

/** `10' 4" crown`: the inches may be the crown's. */
function trimDoubts(size: string, rest: string): readonly TapeSentence[] {
  const [, inches] = /['t]\s*-?\s*([\d /-]+")$/i.exec(size) ?? []
  const [next] = /^[ ]/.test(rest) ? readItems(rest.trim(), 'imperial').parts : []
  if (inches === undefined || next?.role !== 'trim') return []
  const sentence = `“${inches}” is taken with the size; put a comma before it if it belongs to “${next.text}”.`
  return [{ part: inches, sentence, weight: 'say' }]
}

function sizeSentences(
  lengths: readonly Length[],
  doubts: readonly string[],
  part: string,
  items: TapeItems,
  system: LengthUnitSystem,
): readonly TapeSentence[] {
  const fault = sizeFault(lengths, system)
  const heights = [...lengths.slice(2, 3), ...items.height]
  const [one, other] = heights
  return [
    ...doubts.map((sentence) => ({ part, sentence, weight: 'say' as const })),
    ...(fault === null ? [] : [stop(part, fault)]),
    ...(one !== undefined && other !== undefined && heights.some((height) => height !== one)
      ? [
          stop(
            part,
            `Two heights stand here: ${formatLength(one, system)} and ${formatLength(other, system)}.`,
          ),
        ]
      : []),
    ...shapeFaults(lengths, part, items).map((sentence) => stop(part, sentence)),
  ]
}

function shapeFaults(
  [width, depth, height]: readonly Length[],
  part: string,
  items: TapeItems,
): readonly string[] {
  const [less] = items.less
  const heights = items.slopes.length + items.height.length + (height === undefined ? 0 : 1)
  const isLarge =
    less !== undefined &&
    (less.width >= (width ?? 0) || less.depth >= (depth ?? 0) || less.width * less.depth === 0)
  return [
    ...(items.less.length > 1 ? ['A room can be less one corner; draw others on the sheet.'] : []),
    ...(isLarge ? [`The missing corner has to be smaller than “${part}” both ways.`] : []),
    ...(items.slopes.length > 0 && heights > 1
      ? ['A slope already gives the heights; leave the other height out.']
      : []),
  ]
}

function roomOf(name: string, lengths: readonly Length[], items: TapeItems): TapeRoom {
  const [width, depth, height] = lengths
  return {
    name: name.charAt(0).toUpperCase() + name.slice(1),
    use: roomUseOf(name),
    width: present(width),
    depth: present(depth),
    height: height ?? items.height[0] ?? null,
    less: items.less[0] ?? null,
    slope: items.slopes[0] ?? null,
    openings: items.openings.filter((opening) => opening.count > 0),
    isUsual: items.openings.length === 0,
    lights: items.lights.length === 0 ? null : total(items.lights),
    radiators: total(items.radiators),
    closets: total(items.closets),
    closetRooms: items.closetRooms,
    trim: items.trim,
    without: items.without,
    note: items.notes.join('; ').slice(0, 4000),
  }
}

function total(counts: readonly number[]): number {
  return counts.reduce((sum, count) => sum + count, 0)
}
