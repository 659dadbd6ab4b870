import { dateWordsWithYear } from '../../time/date-words.ts'
import { formatCents } from '../../units/money.ts'
import type { WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'

/** The client's estimate: no wages, rates or margins. */
export function estimatePage(order: WorkOrder): Markup {
  const { estimate, unitSystem } = order
  return html`<section class="sheet">
<header class="head"><h2>Estimate</h2><p>${order.title}</p></header>
<dl class="block">
<div><dt>For</dt><dd>${order.client || '–'}</dd></div>
<div><dt>Site</dt><dd>${order.site || '–'}</dd></div>
<div><dt>Planned</dt><dd>${dateWordsWithYear(order.startsOn, unitSystem)} to ${dateWordsWithYear(order.finishesOn, unitSystem)}</dd></div>
</dl>
<table><caption>Rooms</caption>
<thead><tr><th scope="col">Room</th><th scope="col">Work</th><th scope="col" class="n">Price</th></tr></thead>
<tbody>${estimate.rooms.map((room) => html`<tr><td class="what">${room.name}</td><td>${room.scope}</td><td class="n">${formatCents(room.cents)}</td></tr>`)}
<tr><td></td><td>Before tax</td><td class="n">${formatCents(estimate.beforeTax)}</td></tr>
<tr><td></td><td>Tax</td><td class="n">${formatCents(estimate.tax)}</td></tr>
<tr class="total"><td></td><td>Total</td><td class="n">${formatCents(estimate.total)}</td></tr></tbody></table>
${optional(order)}
${estimate.doubts.length === 0 ? null : html`<div class="stop"><h2>To be settled before this is sent</h2>${estimate.doubts.map((doubt) => html`<p>${doubt}</p>`)}</div>`}
<h3>Terms</h3><ul>${estimate.terms.map((term) => html`<li>${term}</li>`)}</ul>
<div class="sign"><div>Offered by, date</div><div>Accepted by, date</div></div>
</section>`
}

function optional({ estimate }: WorkOrder): Markup | null {
  if (estimate.optional.length === 0) return null
  return html`<table><caption>May be left out; the total is then less by</caption>
<tbody>${estimate.optional.map((item) => html`<tr><td class="tick"><span class="box"></span></td><td>${item.label}</td><td class="n">${formatCents(item.cents)}</td></tr>`)}</tbody></table>`
}
