import { classBesideName } from '../../specification/trade-words.ts'
import { dateWords } from '../../time/date-words.ts'
import type { LengthUnitSystem } from '../../units/length.ts'
import type { ShoppingLine, ShoppingTotal, ShoppingTrip, WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import { volumeText } from '../material-words.ts'

/** What to buy, trip by trip; prices stay out of the crew's papers. */
export function shoppingPage(order: WorkOrder): Markup {
  const { shopping, unitSystem } = order
  return html`<section class="sheet shopping">
<header class="head"><h2>Shopping list</h2><p>${order.title}: ${shopping.trips.length} ${shopping.trips.length === 1 ? 'trip' : 'trips'}, ${shopping.daysBetweenTrips} days apart or more (shop assumption)</p></header>
${shopping.trips.map((trip) => tripTable(trip, unitSystem))}
${totals(shopping.totals, unitSystem)}
<p class="source">Check the labels for the use, the recoat times and the air and surface temperatures; cans of one color come from one batch and are boxed, which means poured together before use. What is left of a finish is labeled with its room and kept for touching up (“to keep”).</p>
</section>`
}

function tripTable(trip: ShoppingTrip, system: LengthUnitSystem): Markup {
  const until = trip.to === trip.from ? '' : ` to ${dateWords(trip.to, system)}`
  const cans = trip.lines.filter((line) => line.containerGallons !== null)
  const pieces = trip.lines.filter((line) => line.containerGallons === null)
  const title = `Trip ${trip.number}, before ${dateWords(trip.from, system)}: what is first needed ${dateWords(trip.from, system)}${until}`
  return html`${
    cans.length === 0
      ? html`<h3>${title}</h3>`
      : html`<table class="trip"><caption>${title}</caption>
<thead><tr><th scope="col">What</th><th scope="col">Containers</th><th scope="col">Color, code, sheen</th><th scope="col">Needed on</th></tr></thead>
<tbody>${byProduct(cans).map((lines) => canRow(lines, system))}</tbody></table>`
  }
${boxes(
  'Sundries',
  pieces.map(({ count, item }) => `${count} × ${item}`),
)}${boxes('Tools, from here on', trip.tools)}`
}

/** Containers of one mix stand on one line; they follow each other already. */
function byProduct(cans: readonly ShoppingLine[]): readonly (readonly [ShoppingLine, ...ShoppingLine[]])[] {
  const groups: [ShoppingLine, ...ShoppingLine[]][] = []
  for (const line of cans) {
    const last = groups.at(-1)
    if (last !== undefined && productKey(last[0]) === productKey(line)) last.push(line)
    else groups.push([line])
  }
  return groups
}

function productKey({ item, brand, colour, colourCode, sheen }: ShoppingLine): string {
  return JSON.stringify([item, brand, colour, colourCode, sheen])
}

function canRow(lines: readonly [ShoppingLine, ...ShoppingLine[]], system: LengthUnitSystem): Markup {
  const [line] = lines
  const under = [line.brand, classBesideName(line.productClass, line.item)]
    .filter((text) => text !== '')
    .join(', ')
  return html`<tr><td><span class="what">${line.item}</span>${under === '' ? null : html` <span class="source">${under}</span>`}</td>
<td>${lines.map(({ count, container }) => html`<span class="can"><span class="box"></span> ${count} × ${container}</span> `)}</td>
<td>${paintWords(line)}${line.advice === '' ? null : html` <span class="source">${line.advice}</span>`}</td>
<td class="tight">${line.neededOn === null ? '' : dateWords(line.neededOn, system)}</td></tr>`
}

/** Short things side by side, each with a box. */
function boxes(title: string, things: readonly string[]): Markup | null {
  if (things.length === 0) return null
  return html`<p class="tools"><span class="what">${title}:</span></p>
<ul class="tools">${things.map((thing) => html`<li><span class="box"></span> ${thing}</li>`)}</ul>`
}

function paintWords({
  colour,
  colourCode,
  sheen,
}: Pick<ShoppingLine, 'colour' | 'colourCode' | 'sheen'>): string {
  return [colour, colourCode, sheen].filter((text) => text !== '').join(', ')
}

function totals(lines: readonly ShoppingTotal[], system: LengthUnitSystem): Markup {
  return html`<table class="totals"><caption>Totals by product, all trips</caption>
<thead><tr><th scope="col">What</th><th scope="col">Color, code, sheen</th><th scope="col" class="n">Work takes</th><th scope="col" class="n">To keep</th><th scope="col" class="n">Bought</th><th scope="col">Containers</th></tr></thead>
<tbody>${lines.map((line) => totalRow(line, system))}</tbody></table>`
}

function totalRow(line: ShoppingTotal, system: LengthUnitSystem): Markup {
  const volume = (value: number) => volumeText(value, system)
  return html`<tr><td class="what">${line.item}</td><td>${paintWords(line)}</td><td class="n">${volume(line.neededGallons)}</td>
<td class="n">${volume(line.spareGallons)}</td><td class="n">${volume(line.boughtGallons)}</td><td>${line.containers.map(({ count, name }) => `${count} × ${name}`).join(', ')}</td></tr>`
}
