import { pageMargin } from './paper-size.ts'

/** Style of the week sheet, today and the family page, added to the style of all pages. */
export const planStyle = `
/* Said to readers of a tagged PDF, where the head says it to the eye. */
caption.unseen { font-size: 1px; line-height: 1px; margin: 0; color: transparent; }
tbody th { color: var(--ink); border-bottom: none; vertical-align: top; font-size: inherit; padding-top: 1mm; }
.week { table-layout: fixed; margin-bottom: 2mm; }
.week + .head { margin-top: 8mm; }
.week p { margin: 0; }
.week th:first-child { width: 15mm; }
.week th:last-child { width: 42mm; }
.week thead th:nth-last-child(4):nth-child(2) { width: 15mm; }
.week.roomy { font-size: 9pt; } .week.close { font-size: 8pt; } .week.closest { font-size: 7pt; }
.week .day > tr:first-child > * { border-top: 0.35mm solid var(--ink); }
.week .day { break-inside: avoid; }
.today p { margin: 0 0 1mm; }
.today > table { margin-bottom: 2mm; }
.today { border-bottom: 0.2mm dashed var(--hair); padding-bottom: 4mm; }
.trip { font-size: 8.5pt; } .trip td { padding-top: 0.5mm; padding-bottom: 0.5mm; }
.trip { table-layout: fixed; } .trip th:nth-child(1) { width: 9mm; } .trip th:nth-child(2) { width: 18mm; } .trip th:nth-child(3) { width: 24mm; }
.trip th:nth-child(4) { width: 66mm; } .trip th:last-child { width: 21mm; }
.trip .box, .tools .box { width: 3mm; height: 3mm; }
p.tools { font-size: 8pt; margin: 1mm 0 0; break-after: avoid; }
ul.tools { font-size: 8pt; list-style: none; padding: 0; columns: 3; column-gap: 4mm; }
ul.tools li { margin: 0 0 0.3mm; padding-left: 4.6mm; text-indent: -4.6mm; }
.totals { font-size: 8.5pt; } .totals td { padding-top: 0.5mm; padding-bottom: 0.5mm; }
${[9, 10, 11, 12, 13].map((size) => `.family.type-${size} { font-size: ${size}pt; }`).join(' ')}
.family table { margin-bottom: 2mm; } .family li { margin-bottom: 0.6mm; }
.family table { table-layout: fixed; } .family th:nth-child(1) { width: 20%; } .family th:nth-child(2) { width: 27%; } .family th:nth-child(4) { width: 27%; }
.family th { font-size: 0.9em; } .family tbody th { font-size: inherit; border-bottom: 0.15mm solid var(--hair); }
.family h2 { font-size: 22pt; } .family h3 { font-size: 14pt; }
.family .call { margin-top: 6mm; }
.blank { display: inline-block; width: 55mm; border-bottom: 0.25mm solid var(--ink); }
/* On the screen as wide as on paper, so that the sheets can be counted before they are printed. */
@media screen {
  .letter .sheet { width: 215.9mm; } .a4 .sheet { width: 210mm; }
  .letter .sheet, .a4 .sheet { max-width: none; padding: ${pageMargin.top}mm ${pageMargin.side}mm ${pageMargin.bottom}mm; overflow-x: visible; }
}
`
