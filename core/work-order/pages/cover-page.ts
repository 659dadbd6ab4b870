import { withoutDeferral } from '../../specification/cautions.ts'
import type { Notice } from '../../specification/types.ts'
import { dateWordsWithYear } from '../../time/date-words.ts'
import type { Cover, WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import { holdText } from '../room-sheet/sheet-text.ts'
import { hourWords } from '../room-sheet/sheet-words.ts'
import { viewingRule } from '../viewing-rule.ts'
import { daysPicture } from './days-picture.ts'
import { holdTable } from './hold-table.ts'

function inOneLine(text: string): string {
  return text.replaceAll('\n', ', ')
}

/** Who, where and when, the rooms and days as a picture, what holds the work up, and the cautions of the whole job. */
export function coverPage(order: WorkOrder): Markup {
  const { unitSystem, cover } = order
  const minutes = cover.rooms.reduce((total, room) => total + room.personMinutes, 0)
  return html`<section class="sheet cover">
<header class="head"><h1>Work order</h1><p>${order.title}</p></header>
<dl class="block">
<div><dt>Client</dt><dd>${order.client || '–'}</dd></div>
<div><dt>Site</dt><dd>${order.site || '–'}</dd></div>
${cover.phones === '' ? null : html`<div><dt>Phones</dt><dd>${inOneLine(cover.phones)}</dd></div>`}
${cover.access === '' ? null : html`<div><dt>How to get in</dt><dd>${inOneLine(cover.access)}</dd></div>`}
<div><dt>House built</dt><dd>${order.yearBuilt ?? 'not known'}</dd></div>
<div><dt>Starts</dt><dd>${dateWordsWithYear(order.startsOn, unitSystem)}</dd></div>
<div><dt>Finishes</dt><dd>${dateWordsWithYear(order.finishesOn, unitSystem)}</dd></div>
<div><dt>Person-hours in rooms</dt><dd>${hourWords(minutes)}</dd></div>
<div><dt>Crew</dt><dd>${cover.crew.join(', ') || '–'}</dd></div>
</dl>
${leftOut(cover)}
${daysPicture(order)}
${calls()}
${holds(cover)}
${toDecide(cover)}
${leadSafe(cover)}
${notices(cover)}
${cautions(cover)}
<section class="keep"><h2>Before a room is signed off</h2><p>${viewingRule.text}</p></section>
</section>`
}

/** The reason in full at the first hold of its kind, shorter at the others. */
function holds(cover: Cover): Markup | null {
  const rows = cover.holds.map((hold, index) => ({
    head: html`<b>${hold.roomNumber}</b> ${hold.roomName}`,
    text: holdText(hold, cover.holds.findIndex(({ short }) => short === hold.short) === index),
    cleared: hold.cleared,
  }))
  return holdTable(rows, 'Room')
}

/** Poison Help is the national line of the poison centers in the US: poisonhelp.hrsa.gov. */
function calls(): Markup {
  return html`<dl class="block calls">
<div><dt>Emergency</dt><dd>911 (US)</dd></div>
<div><dt>Poison Help (US) or the center of this place</dt><dd>1-800-222-1222</dd></div>
<div><dt>Nearest hospital, way there</dt><dd></dd></div>
<div><dt>Main breaker, gas and water are shut off at</dt><dd></dd></div>
<div><dt>Client by phone</dt><dd></dd></div>
</dl>`
}

function toDecide(cover: Cover): Markup | null {
  if (cover.toDecide.length === 0) return null
  return html`<div class="stop"><h2>To be decided before work goes on</h2>${noticeList(cover.toDecide)}</div>`
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

function leadSafe({ leadRules, rooms }: Cover): Markup | null {
  if (leadRules.length === 0) return null
  return html`<section><h2>Lead-safe work, in every room marked so</h2>
<ol class="rules">${leadRules.map(({ text, source }) => html`<li>${text} <span class="source">${source}</span></li>`)}</ol>
<p>State rules may be stricter and come first. ${rooms.length > 1 ? 'Each room is cleaned and verified by itself.' : ''}</p></section>`
}

function notices(cover: Cover): Markup | null {
  const others = cover.notices.filter((notice) => notice.kind !== 'leftOut')
  if (others.length === 0) return null
  return html`<section><h2>To know before starting</h2>${noticeList(others)}</section>`
}

function cautions(cover: Cover): Markup {
  return html`<section><h2>Cautions</h2>
<p>These are the usual cautions, not all that may apply. Local codes, product labels and licensed practice come first. Nothing on these pages says that a surface is free of lead or asbestos.</p>
<ul class="cautions two">${cover.cautions.map(({ text, rule }) => html`<li class="caution">${withoutDeferral(text)} <span class="source">${rule}</span></li>`)}</ul></section>`
}
