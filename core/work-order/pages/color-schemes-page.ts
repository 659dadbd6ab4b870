import type { WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import { colorLegend, houseInColors } from './house-colors-page.ts'

/** For the client: the house in the colors as they are and in each scheme kept beside them, two to a page. */
export function colorSchemesPage({ title, colors }: WorkOrder): Markup {
  const all = [{ name: 'As chosen now', house: colors.house }, ...colors.schemes]
  return html`<section class="sheet house-colors">
<header class="head"><h2>Color schemes</h2><p>${title}</p></header>
${all.map(
  ({ name, house }) =>
    html`<div class="color-scheme"><h3>${name}</h3>${houseInColors(colors.halfPicture, house, `The house from above in the colors of “${name}”`)}${colorLegend(house.marks)}</div>`,
)}
</section>`
}
