import type { LengthUnitSystem } from '../../units/length.ts'
import type { ColorRecord, WorkOrder } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'
import { volumeText } from '../material-words.ts'
import { finishText } from '../room-sheet/sheet-text.ts'

/** For the client, when the work is done: what is on every surface, and how to look after it. */
export function colorRecordPage({ title, colorRecord, unitSystem }: WorkOrder): Markup {
  return html`<section class="sheet record">
<header class="head"><h2>Color record</h2><p>${title}</p></header>
<dl class="block">
<div><dt>For</dt><dd>${colorRecord.client || '–'}</dd></div>
<div><dt>Site</dt><dd>${colorRecord.site || '–'}</dd></div>
<div><dt>Work finished on</dt><dd></dd></div>
<div><dt>Warranty until</dt><dd></dd></div>
</dl>
${paints(colorRecord, unitSystem)}
${surfaces(colorRecord)}
<section class="keep"><h3>Care and touching up</h3><ul>${colorRecord.care.map((text) => html`<li>${text}</li>`)}</ul>
<p class="source">Common practice; what the label of a can says comes first.</p></section>
${leadPapers(colorRecord)}
<div class="sign"><div>Handed over by, date</div><div>Received by, date</div></div>
</section>`
}

function paints({ paints: lines }: ColorRecord, system: LengthUnitSystem): Markup {
  return html`<table class="paints"><caption>Paints used, and what was kept</caption>
<thead><tr><th scope="col">Product</th><th scope="col">Color and sheen</th><th scope="col">Store’s code</th><th scope="col">Batch</th><th scope="col">Rooms</th><th scope="col">Keep</th><th scope="col">Kept, and where</th></tr></thead>
<tbody>${lines.map(
    (line) =>
      html`<tr><td>${line.brand === '' ? null : html`${line.brand} `}${line.product}</td><td><b>${[line.color, line.sheen].filter((word) => word !== '').join(', ')}</b></td><td class="toFill">${line.code}</td><td class="toFill"></td>
<td>${line.roomNames.join(', ')}</td><td>${volumeText(line.spareGallons, system)}</td><td class="toFill"></td></tr>`,
  )}</tbody></table>`
}

function surfaces({ rooms }: ColorRecord): Markup {
  return html`<table class="surfaces"><caption>What is on every surface</caption>
<thead><tr><th scope="col">Room</th><th scope="col">Surface</th><th scope="col">Product</th><th scope="col">Color and sheen</th><th scope="col">Primer</th><th scope="col" class="n">Coats</th></tr></thead>
${rooms.map(
  (room) =>
    html`<tbody class="together">${room.colors.map(
      (line, index) =>
        html`<tr><td>${index === 0 ? html`<b>${[room.name, ...room.alongside].join(', ')}</b>` : null}</td><td>${line.surface}</td><td>${line.product}</td><td>${finishText(line)}</td><td>${line.primer || '–'}</td><td class="n">${line.coats}</td></tr>`,
    )}${room.unpainted.length === 0 ? null : html`<tr><td></td><td>${room.unpainted.join(', ')}</td><td colspan="4">left as found</td></tr>`}</tbody>`,
)}</table>`
}

function leadPapers({ leadPapers: papers }: ColorRecord): Markup | null {
  if (papers.length === 0) return null
  return html`<section class="keep"><h3>Papers of lead-safe work (40 CFR 745)</h3>
<ul class="cautions">${papers.map((text) => html`<li><span class="box"></span> ${text}</li>`)}</ul></section>`
}
