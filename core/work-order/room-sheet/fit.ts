import { present } from '../../lists/lists.ts'
import type { LengthUnitSystem } from '../../units/length.ts'
import { volumeText } from '../material-words.ts'
import { once } from '../once.ts'
import { type Paper, printable } from '../paper-size.ts'
import { planSize } from '../plan-drawing.ts'
import { planPlace } from './plan-place.ts'
import {
  colorText,
  holdText,
  type LineDetail,
  passText,
  primerText,
  registerText,
  repairText,
  surfaceText,
  waitsText,
} from './sheet-text.ts'
import type { RoomSheet } from './sheet-types.ts'

/** What of a sheet is shown and how large. */
export interface SheetDetail {
  /** Greatest width and depth of the floor plan, mm on paper. */
  readonly planWidth: number
  readonly planDepth: number
  /** Walls with many findings, drawn. */
  readonly walls: boolean
  readonly lines: LineDetail
  readonly waitNames: boolean
  /** Causes and notes of findings, notes of the rooms, reasons of holds. */
  readonly notes: boolean
  /** How the brush goes round, and what is only advised. */
  readonly advice: boolean
}

interface SheetLayout {
  readonly pages: 1 | 2
  readonly detail: SheetDetail
  /** In words, what there was no room for. */
  readonly leftOut: readonly string[]
}

/** Columns of the sheet's tables, mm; what is left of the width goes to the words. */
export const columns = {
  box: 7,
  number: 6,
  repairAmount: 25,
  hours: 11,
  waits: 40,
  color: { finish: 53, code: 18, primer: 40, coats: 9, gallons: 15 },
  hold: { number: 8, clearedBy: 31, date: 18 },
  register: { box: 8, lies: 22 },
} as const
/** Between columns. */
export const gap = 4

/** Points; a line of text is 1.17 times as high. */
export const textSize = { body: 7.6, small: 7, line: 1.17 } as const
const millimetresPerPoint = 25.4 / 72
/**
 * Width of a letter by the height of the type, in the widest of the faces the style asks for at one height of small letters; and a line
 * loses a twelfth where a word does not fit.
 */
const letterWidth = 0.46
const wordLoss = 12 / 11

/** Heights in mm of what does not depend on the room. */
export const heights = {
  head: 13.4,
  secondHead: 8,
  /** Kept free at the foot of a page, for what the estimate missed. */
  spare: 1.5,
  tableHead: 8,
  cellPadding: 0.9,
  listItem: 0.4,
  heading: 5.2,
  hours: 16.5,
  signs: 15,
  leastNotes: 6,
} as const

/** Lines that a text takes in a column of a width (mm), with type of a size (points). */
export function lineCountOf(text: string, width: number, points: number): number {
  const letters = width / (points * millimetresPerPoint * letterWidth * wordLoss)
  return text === '' ? 0 : Math.ceil(text.length / letters)
}

function textHeight(lines: number, points: number): number {
  return lines * points * millimetresPerPoint * textSize.line
}

function rowHeight(cells: readonly (readonly [string, number])[]): number {
  const most = Math.max(1, ...cells.map(([text, width]) => lineCountOf(text, width - 1.5, textSize.body)))
  return textHeight(most, textSize.body) + heights.cellPadding
}

function sum(values: readonly number[]): number {
  return values.reduce((total, each) => total + each, 0)
}

/** From all to the least that still lets a room be painted from it. */
const { width: planWidth, depth: leastDepth } = planPlace
const details: readonly SheetDetail[] = [
  { planWidth: 90, planDepth: 80, walls: true, lines: 'full', waitNames: true, notes: true, advice: true },
  { planWidth: 80, planDepth: 64, walls: true, lines: 'full', waitNames: false, notes: true, advice: true },
  { planWidth, planDepth: 50, walls: true, lines: 'full', waitNames: false, notes: true, advice: true },
  { planWidth, planDepth: 50, walls: true, lines: 'short', waitNames: true, notes: true, advice: true },
  { planWidth, planDepth: 50, walls: true, lines: 'short', waitNames: false, notes: true, advice: true },
  { planWidth, planDepth: 46, walls: false, lines: 'short', waitNames: false, notes: true, advice: true },
  { planWidth, planDepth: 46, walls: false, lines: 'key', waitNames: false, notes: true, advice: true },
  { planWidth, planDepth: 44, walls: false, lines: 'key', waitNames: false, notes: true, advice: false },
  { planWidth, planDepth: 44, walls: false, lines: 'name', waitNames: false, notes: true, advice: true },
  { planWidth, planDepth: 44, walls: false, lines: 'name', waitNames: false, notes: true, advice: false },
  {
    planWidth,
    planDepth: leastDepth,
    walls: false,
    lines: 'name',
    waitNames: false,
    notes: false,
    advice: false,
  },
]

/** Blocks of a sheet from the top down. */
type Block = 'head' | 'holds' | 'drawn' | 'walls' | 'colors' | 'passes' | 'notes' | 'foot'
const front: readonly Block[] = ['head', 'holds', 'drawn', 'walls', 'colors']

/** The most that fits one page; two pages only where the least does not fit one. */
export function fitSheet(sheet: RoomSheet, paper: Paper, system: LengthUnitSystem): SheetLayout {
  const { width, height: printed } = printable(paper)
  const height = printed - heights.spare
  const blocksOf = (detail: SheetDetail) => once(() => blockHeights(sheet, detail, width, system))
  const sized = details.map((detail) => ({ detail, blocks: blocksOf(detail) }))
  const one = sized.find(({ blocks }) => sum(Object.values(blocks())) <= height)
  if (one !== undefined) return { pages: 1, detail: one.detail, leftOut: leftOutOf(sheet, one.detail) }
  const detail = twoPages(sized, height)
  return { pages: 2, detail, leftOut: leftOutOf(sheet, detail) }
}

type BlockHeights = Readonly<Record<Block, number>>
type Sized = { readonly detail: SheetDetail; readonly blocks: () => BlockHeights }

/** The foot of the first page has neither hours nor signatures. */
function frontHeight(blocks: BlockHeights): number {
  const above = sum(front.map((block) => blocks[block]))
  return above + blocks.foot - Math.min(heights.hours, heights.signs)
}

/** Each page takes the most that fits it: the front with what to mind and what was taken off, the second with the passes. */
function twoPages(sized: readonly Sized[], height: number): SheetDetail {
  const least = present(details.at(-1))
  const first = sized.find(({ blocks }) => frontHeight(blocks()) <= height)
  const second = sized.find(({ blocks }) => {
    const { passes, notes } = blocks()
    return heights.secondHead + passes + notes + heights.signs <= height
  })
  const { lines, waitNames } = second?.detail ?? least
  return { ...(first?.detail ?? least), lines, waitNames }
}

/** Of every block, with the least room for notes; millimeters, estimated from letters. */
function blockHeights(
  sheet: RoomSheet,
  detail: SheetDetail,
  width: number,
  system: LengthUnitSystem,
): BlockHeights {
  return {
    head: heights.head,
    holds: holdsHeight(sheet, detail, width),
    drawn: drawnHeight(sheet, detail, width),
    walls: detail.walls && sheet.walls.length > 0 ? wallsHeight : 0,
    colors: colorsHeight(sheet, width, system),
    passes: passesHeight(sheet, detail, width),
    notes: notesHeight(sheet, detail, width),
    foot: footHeight(sheet, detail, width),
  }
}

/** What was left out is said at the head of the notes. */
function notesHeight(sheet: RoomSheet, detail: SheetDetail, width: number): number {
  const words = leftOutOf(sheet, detail).join('; ')
  return heights.leastNotes + textHeight(lineCountOf(words, width - 40, textSize.small), textSize.small)
}

function leftOutOf(sheet: RoomSheet, detail: SheetDetail): readonly string[] {
  const lines = sheet.passes.flatMap((pass) => pass.lines)
  const hasNotes = sheet.repairs.some(({ note }) => note !== '') || sheet.notes.length > 0
  const shownLines = sheet.passes.flatMap((pass) => passText(pass, detail.lines).split('; ')).length
  const advised = sheet.handling.length + sheet.notices.filter(({ stops }) => !stops).length
  return [
    ...(detail.lines === 'full' || lines.length === 0 ? [] : ['amounts in the passes']),
    ...(detail.lines !== 'key' && detail.lines !== 'name'
      ? []
      : [`${Math.max(0, lines.length - shownLines)} lines of dusting, vacuuming, masking and the like`]),
    ...(detail.walls || sheet.walls.length === 0 ? [] : ['drawings of walls with findings']),
    ...(detail.notes || !hasNotes ? [] : ['notes on findings']),
    ...(detail.advice || advised === 0 ? [] : [`${advised} ${advised === 1 ? 'piece' : 'pieces'} of advice`]),
  ]
}

/** Walls stand in one row. */
const wallsHeight = 34

function holdsHeight({ holds }: RoomSheet, { notes }: SheetDetail, width: number): number {
  if (holds.length === 0) return 0
  const { number, clearedBy, date } = columns.hold
  const rows = holds.map((hold) => rowHeight([[holdText(hold, notes), width - number - clearedBy - date]]))
  return heights.tableHead + sum(rows)
}

/** Under the plan and the repairs, as wide as the page. */
function captionText({ openings, plans }: RoomSheet): string {
  const turned = plans.filter(({ isTurned }) => isTurned)
  return [
    ...openings.map(({ letter, words }) => `${letter} ${words}`),
    ...turned.map(({ name }) => `(${name} is drawn turned a quarter turn to the left.)`),
  ].join('   ')
}

function drawnHeight(sheet: RoomSheet, detail: SheetDetail, width: number): number {
  const plan = planSize(sheet.plans, detail.planWidth, detail.planDepth)
  const caption = textHeight(lineCountOf(captionText(sheet), width, textSize.small), textSize.small)
  return 1.5 + caption + Math.max(plan.height, repairsHeight(sheet, detail, width - plan.width - gap))
}

function repairsHeight({ repairs }: RoomSheet, { notes }: SheetDetail, width: number): number {
  const words = (width - columns.box - columns.number - columns.repairAmount) / 2
  const rows = repairs.map((line) =>
    rowHeight([
      [`${line.where} ${repairText(line, notes)}`, words],
      [line.amount, columns.repairAmount],
      [line.how, words],
    ]),
  )
  return heights.tableHead + sum(rows)
}

function colorsHeight({ colors, unpainted }: RoomSheet, width: number, system: LengthUnitSystem): number {
  const { finish, code, primer, coats, gallons } = columns.color
  const words = width - finish - code - primer - coats - gallons
  const rows = colors.map((line) =>
    rowHeight([
      [surfaceText(line), words],
      [colorText(line), finish],
      [primerText(line, system), primer],
      [volumeText(line.gallons, system), gallons],
    ]),
  )
  const left = unpainted.length === 0 ? 0 : textHeight(1, textSize.body) + 1
  return heights.tableHead + sum(rows) + left
}

function passesHeight({ passes }: RoomSheet, { lines, waitNames }: SheetDetail, width: number): number {
  const { box, number, hours, waits } = columns
  const words = width - box - number - hours - waits
  const rows = passes.map((pass) =>
    rowHeight([
      // Bold is wider than plain by a twelfth.
      [`${pass.name}${' '.repeat(Math.ceil(pass.name.length / 12))}. ${passText(pass, lines)}`, words],
      [`${waitsText(pass.waits, waitNames)}${pass.holds.map((hold) => ` hold ${hold}`).join('')}`, waits],
    ]),
  )
  return heights.tableHead + sum(rows)
}

/** Two columns: what to mind and the hours worked; what was taken off and who looks the room over. */
function footHeight(sheet: RoomSheet, detail: SheetDetail, width: number): number {
  const [left, right] = footWidths(width)
  const items = mindItems(sheet, detail).map(
    (text) => textHeight(lineCountOf(`xx ${text}`, left, textSize.body), textSize.body) + heights.listItem,
  )
  const { box, lies } = columns.register
  const off = sheet.register.map((line) => rowHeight([[registerText(line), right - 2 * box - lies]]))
  return Math.max(
    (items.length === 0 ? 0 : heights.heading + sum(items)) + heights.hours,
    (off.length === 0 ? 0 : heights.tableHead + sum(off)) + heights.signs,
  )
}

/** The left column is wider: sentences there, short lines here. */
function footWidths(width: number): readonly [number, number] {
  const left = (width - gap) * 0.54
  return [left, width - gap - left]
}

/** What to mind in this room: cautions first, then what else is to be known, then how a hand goes. */
export function mindItems(sheet: RoomSheet, { notes, advice }: SheetDetail): readonly string[] {
  return [
    ...sheet.cautions.map(({ text }) => text),
    ...sheet.notices.filter(({ stops }) => stops || advice).map(({ sentence }) => sentence),
    ...(notes ? sheet.notes : []),
    ...(advice ? sheet.handling : []),
  ]
}
