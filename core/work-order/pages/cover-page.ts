import type { Notice } from '../../specification/types.ts'
import { formatMinutes } from '../../units/duration.ts'
import { dateWordsWithYear, momentWords } from '../date-words.ts'
import type { Cover, CoverRoom, WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import { holdList } from './hold-list.ts'

/** Who, where and when, the rooms in the order they are worked, what holds the work up, and the cautions of the whole job. */
export function coverPage(order: WorkOrder): Markup {
  const { unitSystem, cover } = order
  return html`<section class="sheet">
<header class="head"><h1>Work order</h1><p>${order.title}</p></header>
<dl class="block">
<div><dt>Client</dt><dd>${order.client || '–'}</dd></div>
<div><dt>Site</dt><dd>${order.site || '–'}</dd></div>
<div><dt>House built</dt><dd>${order.yearBuilt ?? 'not known'}</dd></div>
<div><dt>Starts</dt><dd>${dateWordsWithYear(order.startsOn, unitSystem)}</dd></div>
<div><dt>Finishes</dt><dd>${dateWordsWithYear(order.finishesOn, unitSystem)}</dd></div>
<div><dt>Crew</dt><dd>${cover.crew.join(', ') || '–'}</dd></div>
</dl>
${leftOut(cover)}
${holds(cover)}
${roomTable(order)}
${notices(cover)}
${cautions(cover)}
</section>`
}

function holds(cover: Cover): Markup | null {
  if (cover.holds.length + cover.toDecide.length === 0) return null
  const toDecide = cover.toDecide.length === 0 ? null : noticeList(cover.toDecide)
  return html`<div class="stop"><h2>Wait before work goes on here</h2>${holdList(cover.holds)}${toDecide}</div>`
}

/** What protects people and does not apply here, with the reason somebody wrote down. */
function leftOut(cover: Cover): Markup | null {
  const reasons = cover.notices.filter((notice) => notice.kind === 'leftOut')
  if (reasons.length === 0) return null
  return html`<div class="stop"><h2>Safety rules left out</h2>${noticeList(reasons)}</div>`
}

function noticeList(notices: readonly Notice[]): Markup {
  return html`<ul>${notices.map((notice) => html`<li>${notice.sentence}</li>`)}</ul>`
}

function roomTable(order: WorkOrder): Markup {
  const minutes = order.cover.rooms.reduce((total, room) => total + room.minutes, 0)
  return html`<table><caption>Rooms in the order of work</caption>
<thead><tr><th>Done</th><th>#</th><th>Room</th><th>Starts</th><th>Work ends</th><th>Free and dry to the touch</th><th class="n">Person-hours</th></tr></thead>
<tbody>${order.cover.rooms.map((room, index) => roomRow(order, room, index + 1))}
<tr class="sum"><td></td><td></td><td>All rooms</td><td></td><td></td><td></td><td class="n">${formatMinutes(minutes)}</td></tr></tbody>
</table>
<p class="source">Hours are for the steps of each room once; setting up, clearing away and alarms covered again each day come on top.</p>`
}

function roomRow(order: WorkOrder, room: CoverRoom, number: number): Markup {
  const when = (moment: string | null) =>
    moment === null ? 'not planned' : momentWords(moment, order.unitSystem)
  const promise =
    room.promisedBy === null
      ? null
      : html`<p class="wait">promised by ${momentWords(room.promisedBy, order.unitSystem)}${late(room) ? ': NOT met by this plan' : ''}</p>`
  return html`<tr><td><span class="box"></span></td><td>${number}</td><td><span class="what">${room.name}</span><br><span class="source">${room.storey}</span></td>
<td class="tight">${when(room.startsAt)}</td><td class="tight">${when(room.endsAt)}</td><td>${when(room.freeAt)}${promise}</td><td class="n">${formatMinutes(room.minutes)}</td></tr>`
}

function late(room: CoverRoom): boolean {
  return room.promisedBy !== null && room.freeAt !== null && room.freeAt > room.promisedBy
}

function notices(cover: Cover): Markup | null {
  const others = cover.notices.filter((notice) => notice.kind !== 'leftOut')
  if (others.length === 0) return null
  return html`<section><h3>To know before starting</h3>${noticeList(others)}</section>`
}

function cautions(cover: Cover): Markup {
  return html`<section><h3>Cautions</h3>
<p>These are the usual cautions, not all that may apply. Local codes, product labels and licensed practice come first. Nothing on these pages says that a surface is free of lead or asbestos.</p>
<ul class="cautions">${cover.cautions.map((caution) => html`<li class="caution">${caution.text}</li>`)}</ul></section>`
}
