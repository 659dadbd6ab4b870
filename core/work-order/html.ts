import { dateWords } from './date-words.ts'
import type { WorkOrder } from './document-types.ts'
import { asMarkup, html, type Markup } from './html-template.ts'
import { coverPage } from './pages/cover-page.ts'
import { dayPage } from './pages/day-page.ts'
import { estimatePage } from './pages/estimate-page.ts'
import { roomPage } from './pages/room-page.ts'
import { shoppingPage } from './pages/shopping-page.ts'
import { type Paper, printStyle, type RunningHead } from './print-style.ts'

export const documentParts = ['cover', 'rooms', 'daySheets', 'shopping', 'estimate'] as const
export type DocumentPart = (typeof documentParts)[number]

/** What the crew gets; the client's estimate is a paper of its own. */
export const crewParts: readonly DocumentPart[] = ['cover', 'rooms', 'daySheets', 'shopping']

interface Sheet {
  /** Text at the head of each of its pages; empty for none. */
  readonly head: string
  readonly page: (pageName: string) => Markup
}

/** One whole HTML document, style included, that needs nothing else: shown, printed and written as a file alike. */
export function workOrderHtml(
  order: WorkOrder,
  paper: Paper,
  parts: readonly DocumentPart[] = crewParts,
): string {
  const sheets = documentParts.filter((part) => parts.includes(part)).flatMap((part) => sheetsOf(order, part))
  const named = sheets.map((sheet, index) => ({ sheet, pageName: `sheet-${index + 1}` }))
  const heads: readonly RunningHead[] = named.map(({ sheet, pageName }) => ({ pageName, text: sheet.head }))
  const page = html`<!DOCTYPE html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${titleOf(order, parts)}</title>
<style>${asMarkup(printStyle(paper, order.title, heads))}</style></head>
<body>
${named.map(({ sheet, pageName }) => sheet.page(pageName))}
</body>
</html>
`
  return page.markup
}

function titleOf(order: WorkOrder, parts: readonly DocumentPart[]): string {
  const kind = parts.length === 1 && parts[0] === 'estimate' ? 'Estimate' : 'Work order'
  return `${kind}: ${order.title}`
}

function sheetsOf(order: WorkOrder, part: DocumentPart): readonly Sheet[] {
  const { unitSystem } = order
  switch (part) {
    case 'cover':
      return [{ head: '', page: () => coverPage(order) }]
    case 'rooms':
      return order.rooms.map((room) => ({
        head: room.name,
        page: (pageName) => roomPage(room, unitSystem, pageName),
      }))
    case 'daySheets':
      return order.daySheets.map((sheet) => ({
        head: `${sheet.name}, ${dateWords(sheet.date, unitSystem)}`,
        page: (pageName) => dayPage(sheet, unitSystem, pageName),
      }))
    case 'shopping':
      return [{ head: '', page: () => shoppingPage(order) }]
    case 'estimate':
      return [{ head: '', page: () => estimatePage(order) }]
  }
}
