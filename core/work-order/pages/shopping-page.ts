import { dateWords } from '../date-words.ts'
import type { ShoppingLine, WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import { volumeText } from '../step-lines.ts'

/** What to buy, by container; prices stay out of the crew's papers. */
export function shoppingPage(order: WorkOrder): Markup {
  return html`<section class="sheet">
<header class="head"><h2>Shopping list</h2><p>${order.title}</p></header>
<table><caption>By the day it is first needed</caption>
<thead><tr><th>Got</th><th class="n">How many</th><th>Container</th><th>What</th><th>Color, sheen</th><th class="n">Work takes in all</th><th>Needed on</th></tr></thead>
<tbody>${order.shopping.map((line) => shoppingRow(order, line))}</tbody></table>
<p class="source">Check the labels for the use, the recoat times and the air and surface temperatures; cans of one color come from one batch and are boxed, which means poured together before use. What is left of a finish is labeled with its room and kept for touching up.</p>
</section>`
}

function shoppingRow(order: WorkOrder, line: ShoppingLine): Markup {
  const { unitSystem } = order
  const paint = [line.colour, line.colourCode, line.sheen].filter((text) => text !== '').join(', ')
  const saysClass = line.productClass === 'sundries' || line.productClass === line.item.toLowerCase()
  const under = [line.brand, saysClass ? '' : line.productClass].filter((text) => text !== '').join(', ')
  return html`<tr><td><span class="box"></span></td><td class="n">${line.count}</td><td>${line.container}</td>
<td><span class="what">${line.item}</span>${under === '' ? null : html`<br><span class="source">${under}</span>`}</td>
<td>${paint}${line.advice === '' ? null : html`<br><span class="source">${line.advice}</span>`}</td><td class="n">${line.neededGallons === null ? '' : volumeText(line.neededGallons, unitSystem)}</td>
<td>${line.neededOn === null ? '' : dateWords(line.neededOn, unitSystem)}</td></tr>`
}
