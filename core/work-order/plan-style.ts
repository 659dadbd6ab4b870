import { densities, weekColumns } from './pages/week-fit.ts'
import { pageMargin } from './paper-size.ts'

function densityStyle({ name, points, line, padding }: (typeof densities)[number]): string {
  const edge = `${padding / 2 - 0.1}mm`
  return `.week.${name} { font-size: ${points}pt; line-height: ${line}; } .week.${name} tbody > tr > * { padding-top: ${edge}; padding-bottom: ${edge}; }`
}

/** Style of the week sheet, today and the family page, added to the style of all pages. */
export const planStyle = `
/* Said to readers of a tagged PDF, where the head says it to the eye. */
caption.unseen { font-size: 1px; line-height: 1px; margin: 0; color: transparent; }
tbody th { color: var(--ink); border-bottom: none; vertical-align: top; font-size: inherit; padding-top: 1mm; }
.week { table-layout: fixed; margin-bottom: 2mm; }
.week td { padding-right: 2mm; }
.week + .head { margin-top: 4mm; padding-bottom: 0.6mm; margin-bottom: 1mm; } .week + .head h2 { font-size: 12pt; display: inline; margin-right: 3mm; } .week + .head p { display: inline; }
.week p { margin: 0; }
.week th:first-child { width: ${weekColumns.day}mm; }
.week th:last-child { width: ${weekColumns.cans}mm; }
.week thead th:nth-last-child(4):nth-child(2) { width: ${weekColumns.who}mm; }
${densities.map(densityStyle).join(' ')} .week .box { width: 2.6mm; height: 2.6mm; }
.week .day > tr:first-child > * { border-top: 0.35mm solid var(--ink); }
.week .day { break-inside: avoid; }
.today p { margin: 0 0 1mm; }
.today > table { margin-bottom: 2mm; }
.today { border-bottom: 0.2mm dashed var(--hair); padding-bottom: 4mm; }
.shopping { font-size: 8pt; line-height: 1.2; } .shopping caption { margin: 2.6mm 0 0.4mm; font-size: 9.5pt; }
.trip td, .totals td { padding-top: 0.4mm; padding-bottom: 0.4mm; }
.trip { table-layout: fixed; } .trip th:nth-child(2) { width: 42mm; } .trip th:nth-child(3) { width: 62mm; } .trip th:last-child { width: 18mm; }
.trip .box, .tools .box { width: 2.8mm; height: 2.8mm; vertical-align: -0.4mm; } .trip .can { white-space: nowrap; margin-right: 2mm; }
p.tools { font-size: 8pt; margin: 0.6mm 0 0; break-after: avoid; }
ul.tools { font-size: 8pt; list-style: none; padding: 0; columns: 4; column-gap: 3mm; }
ul.tools li { margin: 0 0 0.3mm; padding-left: 4.6mm; text-indent: -4.6mm; }
${[9, 10, 11, 12, 13].map((size) => `.family.type-${size} { font-size: ${size}pt; }`).join(' ')}
.family table { margin-bottom: 2mm; } .family li { margin-bottom: 0.6mm; }
.family table { table-layout: fixed; } .family th:nth-child(1) { width: 20%; } .family th:nth-child(2) { width: 27%; } .family th:nth-child(4) { width: 27%; }
.family th { font-size: 0.9em; } .family tbody th { font-size: inherit; border-bottom: 0.15mm solid var(--hair); }
.family h2 { font-size: 22pt; } .family h3 { font-size: 14pt; }
.family .call { margin-top: 6mm; }
.house-weeks .weeks { display: flex; flex-wrap: wrap; gap: 2mm 4mm; }
.house-weeks figure { margin: 0; break-inside: avoid; } .house-weeks figcaption { font-weight: 600; font-size: 10pt; margin: 0 0 0.5mm; }
.house-weeks svg { display: block; } .house-weeks .key svg { display: inline; vertical-align: -0.8mm; } .house-weeks .key { font-size: 9pt; margin: 1mm 0 2mm; }
.house-colors svg { display: block; } .house-colors ul.colors { list-style: none; padding: 0; columns: 3; } .house-colors li svg { display: inline; vertical-align: -1mm; } .house-colors li { margin: 0 0 1mm; break-inside: avoid; }
.color-scheme, .color-room { break-inside: avoid; } .color-walls { display: flex; flex-wrap: wrap; gap: 1mm 2mm; } .color-walls figure { margin: 0; }
.blank { display: inline-block; width: 55mm; border-bottom: 0.25mm solid var(--ink); }
/* On the screen as wide as on paper, so that the sheets can be counted before they are printed. */
@media screen {
  .letter .sheet { width: 215.9mm; } .a4 .sheet { width: 210mm; }
  .letter .sheet, .a4 .sheet { max-width: none; padding: ${pageMargin.top}mm ${pageMargin.side}mm ${pageMargin.bottom}mm; overflow-x: visible; }
}
`
