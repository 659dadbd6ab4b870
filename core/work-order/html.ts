import type { WorkOrder } from './document-types.ts'
import type { Markup } from './html-template.ts'
import { once } from './once.ts'
import { colorRecordPage } from './pages/color-record-page.ts'
import { colorSchemesPage } from './pages/color-schemes-page.ts'
import { coverPage } from './pages/cover-page.ts'
import { documentClosing, documentOpening } from './pages/document-frame.ts'
import { familySheet } from './pages/family-sheet.ts'
import { houseColorsPage } from './pages/house-colors-page.ts'
import { houseWeeksPage } from './pages/house-weeks-page.ts'
import { photoPages } from './pages/photo-page.ts'
import { proposalPage } from './pages/proposal-page.ts'
import { roomPage } from './pages/room-page.ts'
import { shoppingPage } from './pages/shopping-page.ts'
import { todayPage } from './pages/today-page.ts'
import { wallColorsPage } from './pages/wall-colors-page.ts'
import { weeksByPage } from './pages/week-fit.ts'
import { weekPage } from './pages/week-page.ts'
import { chosenDay, chosenRooms, chosenWeeks, type PaperChoice, wholeJob } from './paper-choice.ts'
import type { Paper } from './paper-size.ts'
import { noStamp, type PaperStamp, stampStyle } from './paper-stamp.ts'
import { withPictures } from './pictured.ts'
import { planStyle } from './plan-style.ts'
import { printStyle, type RunningHead } from './print-style.ts'

export const documentParts = [
  'cover',
  'weeks',
  'today',
  'rooms',
  'shopping',
  'family',
  'houseColors',
  'colorSchemes',
  'proposal',
  'colorRecord',
] as const
export type DocumentPart = (typeof documentParts)[number]

/** What the crew gets; the client's proposal is a paper of its own. */
export const crewParts: readonly DocumentPart[] = ['cover', 'weeks', 'rooms', 'shopping']

interface Sheet {
  /** Text at the head of each of its pages; empty for none. */
  readonly head: string
  readonly page: (pageName: string) => Markup
}

/** A document whose pages are made one by one, when they are looked at. */
export interface PagedDocument {
  /** Before and behind the pages, style included. */
  readonly opening: string
  readonly pages: readonly (() => string)[]
  readonly closing: string
}

/** The chosen parts of the documents as sheets of paper, each under the stamp. */
export function pagedDocument(
  order: WorkOrder,
  paper: Paper,
  parts: readonly DocumentPart[] = crewParts,
  choice: PaperChoice = wholeJob,
  stamp: PaperStamp = noStamp,
): PagedDocument {
  const sheets = documentParts
    .filter((part) => parts.includes(part))
    .flatMap((part) => sheetsOf(order, paper, part, choice, stamp))
  const named = sheets.map((sheet, index) => ({ sheet, pageName: `sheet-${index + 1}` }))
  const heads: readonly RunningHead[] = named.map(({ sheet, pageName }) => ({ pageName, text: sheet.head }))
  const style = printStyle(paper, order.title, heads) + planStyle + stampStyle(stamp, order.unitSystem)
  return {
    opening: documentOpening(paper, titleOf(order, parts), style),
    pages: named.map(({ sheet, pageName }) => once(() => sheet.page(pageName).markup)),
    closing: documentClosing,
  }
}

/** The document with its pictures put in as its pages are made. */
export function picturedDocument(
  document: PagedDocument,
  addressOf: (hash: string) => string | null,
): PagedDocument {
  return { ...document, pages: document.pages.map((page) => once(() => withPictures(page(), addressOf))) }
}

/** The whole text of a paged document. */
export function wholeDocument({ opening, pages, closing }: PagedDocument): string {
  return opening + pages.map((page) => page()).join('') + closing
}

/** One whole HTML document that needs nothing else: shown, printed and written as a file alike. */
export function workOrderHtml(
  order: WorkOrder,
  paper: Paper,
  parts: readonly DocumentPart[] = crewParts,
  choice: PaperChoice = wholeJob,
  stamp: PaperStamp = noStamp,
): string {
  return wholeDocument(pagedDocument(order, paper, parts, choice, stamp))
}

function titleOf(order: WorkOrder, parts: readonly DocumentPart[]): string {
  const kind = parts.length === 1 && parts[0] === 'proposal' ? 'Proposal' : 'Work order'
  return `${kind}: ${order.title}`
}

function sheetsOf(
  order: WorkOrder,
  paper: Paper,
  part: DocumentPart,
  choice: PaperChoice,
  stamp: PaperStamp,
): readonly Sheet[] {
  const { unitSystem } = order
  switch (part) {
    case 'cover':
      return [{ head: '', page: () => coverPage(order) }]
    case 'rooms':
      return chosenRooms(order.rooms, choice).flatMap((room) => [
        { head: room.name, page: (pageName) => roomPage(room, paper, unitSystem, pageName) },
        ...photoPages(room).map((page) => ({ head: room.name, page })),
      ])
    case 'weeks':
      return weeksByPage(chosenWeeks(order.weeks, choice)).map((weeks) => ({
        head: weeks[0]?.person ?? '',
        page: (pageName) => weekPage(order, weeks, pageName),
      }))
    case 'today': {
      const day = chosenDay(order.days, choice)
      return day === undefined ? [] : [{ head: '', page: () => todayPage(order, day) }]
    }
    case 'shopping':
      return [{ head: '', page: () => shoppingPage(order) }]
    case 'family':
      return [
        { head: '', page: () => familySheet(order) },
        { head: '', page: () => houseWeeksPage(order) },
      ]
    case 'houseColors':
      return [
        { head: '', page: () => houseColorsPage(order) },
        { head: '', page: () => wallColorsPage(order) },
      ]
    case 'colorSchemes':
      return [{ head: '', page: () => colorSchemesPage(order) }]
    case 'proposal':
      return [{ head: '', page: () => proposalPage(order, stamp) }]
    case 'colorRecord':
      return [{ head: '', page: () => colorRecordPage(order) }]
  }
}
