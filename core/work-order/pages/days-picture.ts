import { dateWords } from '../../time/date-words.ts'
import { dateOfDay, dayOfDate, weekdayOf } from '../../time/local-date.ts'
import type { CoverRoom, WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import { type Phase, phases, phaseWords } from '../phases.ts'

/** Millimeters on paper. */
const nameWidth = 44
const pictureWidth = 188
/** Room for the stroke of the last block. */
const rightEdge = 0.3
const rowHeight = 5.6
const headHeight = 9
/** Of the date at a Monday. */
const dateWidth = 9
const block = { top: 0.8, height: 4 }

/** Rooms down, days across, the phases of each room by pattern; nothing is said by color. */
export function daysPicture(order: WorkOrder): Markup {
  const first = dayOfDate(order.startsOn)
  const days = dayOfDate(order.finishesOn) - first + 1
  const across = (pictureWidth - nameWidth - rightEdge) / days
  const left = (date: string) => nameWidth + (dayOfDate(date) - first) * across
  const { rooms } = order.cover
  const height = headHeight + rooms.length * rowHeight + 1
  return html`<figure class="days"><svg role="img" aria-label="Rooms and the days on which they are worked in" width="${pictureWidth}mm" height="${two(height)}mm" viewBox="0 0 ${pictureWidth} ${two(height)}">
${patterns}
${Array.from({ length: days }, (_, day) => dayColumn(order, first + day, nameWidth + day * across, across, height))}
${rooms.map((room, index) => roomRow(order, room, headHeight + index * rowHeight, left, across))}
</svg><figcaption>${phases.map(
    (phase) =>
      html`<span class="tight"><svg width="6mm" height="3.2mm" viewBox="0 0 6 3.2" aria-hidden="true"><rect x="0.2" y="0.2" width="5.6" height="2.8" ${fillOf(phase)} stroke="#23262b" stroke-width="0.25"/></svg> ${phaseWords[phase]}</span> `,
  )}<span class="tight">▼ promised back</span></figcaption></figure>`
}

/** Saturday and Sunday are ruled off; Mondays carry their date. */
function dayColumn(order: WorkOrder, day: number, x: number, across: number, height: number): Markup {
  const weekday = weekdayOf(day)
  const isFree = weekday === 0 || weekday === 6
  const words = () => dateWords(dateOfDay(day), order.unitSystem).slice(4)
  return html`${isFree ? html`<rect x="${two(x)}" y="${headHeight - 1}" width="${two(across)}" height="${two(height - headHeight)}" fill="#eee"/>` : null}${
    weekday === 1 || x === nameWidth
      ? html`<line x1="${two(x)}" y1="4.5" x2="${two(x)}" y2="${two(height - 1)}" stroke="#8a8a8a" stroke-width="0.15"/>${x + dateWidth > pictureWidth ? null : html`<text x="${two(x + 0.6)}" y="6" font-size="2.6">${words()}</text>`}`
      : null
  }`
}

function roomRow(
  order: WorkOrder,
  room: CoverRoom,
  y: number,
  left: (date: string) => number,
  across: number,
): Markup {
  const name = `${room.number}  ${room.name}`
  const { promisedBy } = room
  const isPromised =
    promisedBy !== null &&
    promisedBy.slice(0, 10) <= order.finishesOn &&
    promisedBy.slice(0, 10) >= order.startsOn
  return html`<line x1="0" y1="${two(y + rowHeight)}" x2="${pictureWidth}" y2="${two(y + rowHeight)}" stroke="#8a8a8a" stroke-width="0.15"/>
<text x="0" y="${two(y + 3.9)}" font-size="3">${name}</text>
${room.phases.flatMap(({ phase, days }) =>
  days.map((day, index) => {
    const share = shareOf(room, day, phase)
    return index > 0 && days[index - 1] === day
      ? null
      : html`<rect x="${two(left(day) + across * share.from)}" y="${two(y + block.top)}" width="${two(across * share.width)}" height="${block.height}" ${fillOf(phase)} stroke="#23262b" stroke-width="0.25"/>`
  }),
)}
${isPromised ? html`<text x="${two(left(promisedBy.slice(0, 10)) + across / 2)}" y="${two(y + 3.9)}" text-anchor="middle" font-size="3">▼</text>` : null}`
}

/** Two phases on one day share it. */
function shareOf(
  room: CoverRoom,
  day: string,
  phase: Phase,
): { readonly from: number; readonly width: number } {
  const here = [...new Set(room.phases.filter(({ days }) => days.includes(day)).map((each) => each.phase))]
  return { from: here.indexOf(phase) / here.length, width: 1 / here.length }
}

const patterns: Markup = html`<defs>
<pattern id="prepare" width="1.4" height="1.4" patternUnits="userSpaceOnUse"><rect width="1.4" height="1.4" fill="#fff"/><path d="M0 1.4 L1.4 0" stroke="#23262b" stroke-width="0.25"/></pattern>
<pattern id="prime" width="1.2" height="1.2" patternUnits="userSpaceOnUse"><rect width="1.2" height="1.2" fill="#fff"/><circle cx="0.6" cy="0.6" r="0.25" fill="#23262b"/></pattern>
<pattern id="ceiling" width="1.2" height="1.2" patternUnits="userSpaceOnUse"><rect width="1.2" height="1.2" fill="#fff"/><path d="M0 0.6 H1.2" stroke="#23262b" stroke-width="0.25"/></pattern>
<pattern id="woodwork" width="1.4" height="1.4" patternUnits="userSpaceOnUse"><rect width="1.4" height="1.4" fill="#ddd"/><path d="M0 0 L1.4 1.4 M0 1.4 L1.4 0" stroke="#23262b" stroke-width="0.2"/></pattern>
</defs>`

const fills: Readonly<Record<Phase, string>> = {
  prepare: 'url(#prepare)',
  prime: 'url(#prime)',
  ceiling: 'url(#ceiling)',
  woodwork: 'url(#woodwork)',
  walls: '#555',
  putBack: '#fff',
}

function fillOf(phase: Phase): Markup {
  return html`fill="${fills[phase]}"`
}

function two(value: number): number {
  return Number(value.toFixed(2))
}
