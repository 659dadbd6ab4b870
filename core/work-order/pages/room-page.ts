import { dateWords, momentWords } from '../../time/date-words.ts'
import type { LengthUnitSystem } from '../../units/length.ts'
import { html, type Markup } from '../html-template.ts'
import { volumeText } from '../material-words.ts'
import type { Paper } from '../paper-size.ts'
import { planDrawing, planSize } from '../plan-drawing.ts'
import { fitSheet, mindItems, type SheetDetail } from '../room-sheet/fit.ts'
import {
  finishText,
  holdText,
  passText,
  primerText,
  registerText,
  repairText,
  surfaceText,
  waitsText,
} from '../room-sheet/sheet-text.ts'
import type { ColorLine, PassEntry, RepairLine, RoomSheet } from '../room-sheet/sheet-types.ts'
import { hourWords } from '../room-sheet/sheet-words.ts'
import { holdTable } from './hold-table.ts'
import { wallDrawing } from './wall-drawing.ts'

/** One page of a room set, or two where it is too much for one. */
export function roomPage(room: RoomSheet, paper: Paper, system: LengthUnitSystem, pageName: string): Markup {
  const { pages, detail, leftOut } = fitSheet(room, paper, system)
  const front = html`${head(room, system)}${holds(room, detail)}${drawn(room, detail)}${walls(room, detail)}${colors(room, system)}`
  if (pages === 1) {
    return html`<section class="sheet leaf ${pageName}">${front}${passes(room, detail)}${notes(leftOut)}
<div class="foot"><div>${mind(room, detail)}${hours()}</div><div>${register(room)}${signs()}</div></div></section>`
  }
  return html`<section class="sheet leaf ${pageName}">${front}
<div class="foot"><div>${mind(room, detail)}</div><div>${register(room)}</div></div></section>
<section class="sheet leaf ${pageName}"><header class="head room-head"><p>${room.number} ${room.name}, second page</p></header>
${passes(room, detail)}${notes(leftOut)}<div class="foot"><div>${hours()}</div><div>${signs()}</div></div></section>`
}

function head(room: RoomSheet, system: LengthUnitSystem): Markup {
  const day = (date: string | null) => (date === null ? 'not planned' : dateWords(date, system))
  const back = room.promisedBy === null ? '–' : momentWords(room.promisedBy, system)
  const place = [room.storey, ...room.alongside.map((name) => `with ${name}`)].filter((word) => word !== '')
  return html`<header class="head room-head"><h2><span class="number">${room.number}</span> ${room.name}</h2><p>${place.join(', ')}</p>${
    room.leadSafe ? html`<p class="badge">Lead-safe work: rules on the cover</p>` : null
  }</header>
<dl class="block facts">
<div><dt>Person-hours</dt><dd>${hourWords(room.personMinutes)}</dd></div>
<div><dt>Earliest day</dt><dd>${day(room.firstDay)}</dd></div>
<div><dt>Latest day</dt><dd>${day(room.lastDay)}</dd></div>
<div><dt>Promised back</dt><dd>${back}</dd></div>
<div><dt>Lead</dt><dd>${room.lead ?? '–'}</dd></div>
${room.ceilingHeight === '' ? null : html`<div><dt>Up to</dt><dd>${room.ceilingHeight}</dd></div>`}
</dl>`
}

/** The whole reason stands on the cover where there is no room for it here. */
function holds(room: RoomSheet, { notes }: SheetDetail): Markup | null {
  return holdTable(
    room.holds.map((hold, index) => ({
      head: html`${index + 1}`,
      text: holdText(hold, notes),
      cleared: hold.cleared,
    })),
  )
}

function drawn(room: RoomSheet, detail: SheetDetail): Markup {
  const { scale, width } = planSize(room.plans, detail.planWidth, detail.planDepth)
  return html`<div class="drawn"><figure style="width:${width.toFixed(1)}mm"><div class="plans">${room.plans.map((plan) => planDrawing(plan, scale))}</div></figure>
${repairs(room, detail)}</div>
<p class="openings">${room.openings.map(({ letter, words }) => html`<span class="tight"><b>${letter}</b> ${words}</span> `)}${room.plans.map(({ name, isTurned }) => (isTurned ? html`<span class="tight">(${name} is drawn turned a quarter turn to the left.)</span> ` : null))}</p>`
}

function repairs(room: RoomSheet, { notes }: SheetDetail): Markup {
  if (room.repairs.length === 0) return html`<p>Nothing was found in this room.</p>`
  return html`<table class="repairs"><caption>Repairs</caption>
<thead><tr><th scope="col">Done</th><th scope="col">#</th><th scope="col">Where and what</th><th scope="col">How much</th><th scope="col">How</th></tr></thead>
<tbody>${room.repairs.map((line) => repairRow(line, notes))}</tbody></table>`
}

function repairRow(line: RepairLine, notes: boolean): Markup {
  return html`<tr><td><span class="box"></span></td><td>${line.number === null ? '' : html`<span class="ring">${line.number}</span>`}</td>
<td>${line.where === '' ? null : html`<b>${line.where}:</b> `}${repairText(line, notes)}</td><td>${line.amount}</td><td>${line.how || 'see above'}</td></tr>`
}

function walls(room: RoomSheet, detail: SheetDetail): Markup | null {
  if (!detail.walls || room.walls.length === 0) return null
  return html`<div class="walls">${room.walls.slice(0, 3).map(wallDrawing)}</div>`
}

function colors(room: RoomSheet, system: LengthUnitSystem): Markup | null {
  if (room.colors.length === 0) return null
  const unpainted =
    room.unpainted.length === 0
      ? null
      : html`<p class="source">Not painted: ${room.unpainted.join(', ')}.</p>`
  return html`<table class="colors"><caption>Colors</caption>
<thead><tr><th scope="col">Surface, how much</th><th scope="col">Color, sheen, product</th><th scope="col">Store’s code</th><th scope="col">Primer</th><th scope="col" class="n">Coats</th><th scope="col">In all</th></tr></thead>
<tbody>${room.colors.map((line) => colorRow(line, system))}</tbody></table>${unpainted}`
}

function colorRow(line: ColorLine, system: LengthUnitSystem): Markup {
  const finish = finishText(line)
  return html`<tr><td>${surfaceText(line)}</td><td>${
    finish === '' ? null : html`<b>${finish}</b>: `
  }${line.product}</td><td><span class="code">${line.code}</span></td>
<td>${primerText(line, system)}</td><td class="n">${line.coats}</td><td>${volumeText(line.gallons, system)}</td></tr>`
}

function passes(room: RoomSheet, detail: SheetDetail): Markup {
  return html`<table class="passes"><caption>Passes, in this order</caption>
<thead><tr><th scope="col">Done</th><th scope="col">#</th><th scope="col">Pass</th><th scope="col" class="n">Hours</th><th scope="col">Not before</th></tr></thead>
<tbody>${room.passes.map((pass) => passRow(pass, detail))}</tbody></table>`
}

function passRow(pass: PassEntry, { lines, waitNames }: SheetDetail): Markup {
  const text = passText(pass, lines)
  const holds = pass.holds.length === 0 ? null : html` <b class="tight">hold ${pass.holds.join(', ')}</b>`
  return html`<tr><td><span class="box"></span></td><td>${pass.number}</td><td><b>${pass.name}</b>${text === '' ? null : html`. ${text}`}</td>
<td class="n">${hourWords(pass.personMinutes)}</td><td>${waitsText(pass.waits, waitNames)}${holds}</td></tr>`
}

function mind(room: RoomSheet, detail: SheetDetail): Markup | null {
  const items = mindItems(room, detail)
  const stops = new Set(room.notices.filter((notice) => notice.stops).map(({ sentence }) => sentence))
  if (items.length === 0) return null
  return html`<h3>Mind</h3><ul class="cautions">${items.map(
    (text) => html`<li class="${stops.has(text) ? 'stops' : 'caution'}">${text}</li>`,
  )}</ul>`
}

function register(room: RoomSheet): Markup | null {
  if (room.register.length === 0) return null
  return html`<table class="register"><caption>Taken off or covered, and where it is kept</caption>
<thead><tr><th scope="col">What</th><th scope="col">Off</th><th scope="col">Kept at</th><th scope="col">Back</th></tr></thead>
<tbody>${room.register.map(
    (line) =>
      html`<tr><td>${registerText(line)}</td><td><span class="box"></span></td><td></td><td><span class="box"></span></td></tr>`,
  )}</tbody></table>`
}

/** Takes what is left of the page. */
function notes(leftOut: readonly string[]): Markup {
  const said = leftOut.length === 0 ? '' : `. Not on this page, for room to write: ${leftOut.join('; ')}`
  return html`<div class="fill"><span class="label">Notes${said}</span></div>`
}

/** A room has a lead and at most one more person. */
const people = [1, 2]
const daysOfHours = Array.from({ length: 10 }, (_, day) => day)

/** Hours as worked, to be filled in. */
function hours(): Markup {
  return html`<table class="hours"><caption class="unseen">Hours worked, by person and day</caption>
<thead><tr><th scope="col">Hours by person, day</th>${daysOfHours.map(() => html`<th scope="col"></th>`)}</tr></thead>
<tbody>${people.map(() => html`<tr><td></td>${daysOfHours.map(() => html`<td></td>`)}</tr>`)}</tbody></table>`
}

function signs(): Markup {
  return html`<div class="signs"><div class="line">Looked over by, date</div><div class="line">Accepted by, date</div></div>`
}
