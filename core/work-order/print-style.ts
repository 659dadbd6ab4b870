import { cssString } from './html-template.ts'
import { type Paper, pageMargin, printable } from './paper-size.ts'
import { columns, gap, heights, textSize } from './room-sheet/fit.ts'

/** Running heads and feet need a page name each; names are made by the program, texts go through `cssString`. */
export interface RunningHead {
  readonly pageName: string
  readonly text: string
}

/**
 * The style of all pages: ink on white, hairlines, nothing that needs colour. Heads of tables repeat, rows stay whole,
 * each room starts a page. Page numbers stand in the page margin; an old printing engine leaves them out and nothing else.
 */
export function printStyle(paper: Paper, title: string, heads: readonly RunningHead[]): string {
  return `${pageRules(paper, title, heads)}\n${inkRules}\n${roomRules(paper)}\n${screenRules}`
}

function pageRules(paper: Paper, title: string, heads: readonly RunningHead[]): string {
  const running = heads.map(
    (head) => `@page ${head.pageName} { @top-right { content: ${cssString(head.text)}; ${small} } }
.${head.pageName} { page: ${head.pageName}; }`,
  )
  return `@page { size: ${paper === 'letter' ? 'letter' : 'A4'} portrait; margin: ${pageMargin.top}mm ${pageMargin.side}mm ${pageMargin.bottom}mm;
  @top-left { content: ${cssString(title)}; ${small} }
  @bottom-left { content: "Local codes, product labels and licensed practice come first."; ${small} }
  @bottom-right { content: ${pageOfPages}; ${small} } }
${running.join('\n')}`
}

/** `Page 2 of 5`, as a page's margin says it. */
export const pageOfPages = '"Page " counter(page) " of " counter(pages)'

const small = `font: 7.5pt "Source Sans 3", "Segoe UI", "Helvetica Neue", "Liberation Sans", Arial, "DejaVu Sans Condensed", sans-serif; color: #444; white-space: nowrap;`

const inkRules = `
:root { --ink: #1b1d21; --soft: #4a4d52; --hair: #8a8a8a; }
* { box-sizing: border-box; }
html { color: var(--ink); background: #fff; font-size-adjust: 0.5; }
body { margin: 0; font: 9pt/1.32 "Source Sans 3", "Segoe UI", "Helvetica Neue", "Liberation Sans", Arial, "DejaVu Sans Condensed", sans-serif; font-variant-numeric: tabular-nums lining-nums; overflow-wrap: break-word; }
h1, h2, h3 { font-family: Georgia, "Liberation Serif", serif; font-weight: 600; margin: 0; break-after: avoid; line-height: 1.15; }
h1 { font-size: 21pt; } h2 { font-size: 16pt; } h3 { font-size: 10.5pt; margin: 4mm 0 1.2mm; }
p { margin: 0 0 1.2mm; orphans: 3; widows: 3; }
.sheet { break-before: page; }
.sheet:first-of-type { break-before: auto; }
.head { border-bottom: 0.6mm solid var(--ink); padding-bottom: 1.5mm; margin-bottom: 2.5mm; }
.head p { margin: 0.6mm 0 0; color: var(--soft); }
.block, .stop { width: calc(100% - 0.5mm); }
.block { display: flex; flex-wrap: wrap; margin: 2mm 0 3mm; border-top: 0.2mm solid var(--hair); border-left: 0.2mm solid var(--hair); break-inside: avoid; }
.block div { flex: 1 1 28mm; padding: 0.8mm 1.6mm 1mm; border-right: 0.2mm solid var(--hair); border-bottom: 0.2mm solid var(--hair); }
.block dt, .label { font-size: 7.4pt; color: var(--soft); }
.block dd { margin: 0; font-weight: 600; }
table { width: 100%; border-collapse: collapse; margin: 0; }
caption { text-align: left; font: 600 10.5pt/1.2 Georgia, "Liberation Serif", serif; margin: 4mm 0 1.2mm; break-after: avoid; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; vertical-align: bottom; font-size: 7.6pt; font-weight: 600; color: var(--soft); border-bottom: 0.35mm solid var(--ink); padding: 0.6mm 1.4mm 0.6mm 0; }
td { vertical-align: top; border-bottom: 0.15mm solid var(--hair); padding: 1mm 1.4mm 1mm 0; }

.n { text-align: right; white-space: nowrap; padding-left: 2mm; padding-right: 2.6mm; }
.tick { width: 10mm; }
.tight { white-space: nowrap; }
th:last-child, td:last-child { padding-right: 0; }
.sum td { border-top: 0.35mm solid var(--ink); font-weight: 600; }
.box { display: inline-block; width: 3.6mm; height: 3.6mm; border: 0.3mm solid var(--ink); vertical-align: -0.5mm; }
.what { font-weight: 600; }
.notes { font-size: 8pt; color: var(--soft); padding-top: 0; }
.notes > span { margin-right: 2.2mm; }
p.wait { font-size: 8pt; margin: 0.5mm 0 0; }
.wait { color: var(--ink); }
.wait::before { content: "\\25F7\\00A0"; }
.caution::before { content: "\\25B2\\00A0"; } .stops { font-weight: 600; } .stops::before { content: "Wait: "; }
.drawn { display: grid; grid-template-columns: auto minmax(0, 1fr); gap: 5mm; align-items: start; break-inside: avoid; }
.plan { max-width: 100%; display: block; }
.plan text { font-family: "Source Sans 3", "Segoe UI", "Helvetica Neue", "Liberation Sans", Arial, "DejaVu Sans Condensed", sans-serif; fill: var(--ink); }
figure { margin: 0; } figcaption { font-size: 7.6pt; color: var(--soft); max-width: 92mm; }
.drawn > div > h3:first-child, .drawn > div > table:first-child caption { margin-top: 0; }
.stop { border: 0.5mm solid var(--ink); padding: 1.5mm 2.5mm; margin: 2mm 0; break-inside: avoid; }
.stop p:last-child { margin: 0; } .stop h2 { font-size: 11.5pt; margin-bottom: 1mm; }
ol, ul { margin: 0; padding-left: 4.5mm; } li { margin: 0 0 0.8mm; break-inside: avoid; }
.cautions { list-style: none; padding: 0; } .cautions .box { margin-right: 1.5mm; } .source { color: var(--soft); font-size: 8pt; }
.sign { display: grid; grid-template-columns: 1fr 1fr; gap: 7mm 8mm; margin-top: 9mm; break-inside: avoid; }
.sign div { border-top: 0.25mm solid var(--ink); padding-top: 0.8mm; font-size: 8pt; color: var(--soft); }
.keep { break-inside: avoid; break-before: avoid; }
.photos { display: grid; grid-template-columns: repeat(3, 1fr); gap: 4mm; }
.photo { break-inside: avoid; } .photo img { display: block; width: 100%; height: 43mm; object-fit: contain; object-position: left bottom; font-size: 7.6pt; color: var(--soft); } .photo figcaption { margin-top: 0.8mm; max-height: 10mm; overflow: hidden; }
.total td { font-size: 11pt; font-weight: 600; border-bottom: none; }
`

/** Sheets of rooms: a page of fixed height whose notes take what is left. */
function roomRules(paper: Paper): string {
  const { height } = printable(paper)
  return `
.leaf { height: ${height - 0.5}mm; display: flex; flex-direction: column; font-size: ${textSize.body}pt; line-height: ${textSize.line}; }
.leaf caption, .leaf h3 { font-size: 8.6pt; line-height: 1.15; margin: 1.2mm 0 0.2mm; padding: 0; }
.leaf th { font-size: 6.8pt; padding: 0.2mm 1.2mm 0.2mm 0; line-height: 1.1; white-space: nowrap; }
.leaf td { padding: 0.35mm 1.5mm 0.4mm 0; }
.leaf .box { width: 2.8mm; height: 2.8mm; vertical-align: -0.5mm; }
.room-head { display: flex; align-items: baseline; gap: 4mm; padding-bottom: 0.6mm; margin-bottom: 0.9mm; }
.room-head h2 { font-size: 15pt; } .room-head p { flex: 1; margin: 0; }
.number { display: inline-block; min-width: 8mm; padding: 0 1.2mm; text-align: center; border: 0.5mm solid var(--ink); }
.badge { flex: none !important; border: 0.4mm solid var(--ink); padding: 0.2mm 1.6mm; font-weight: 600; color: var(--ink) !important; }
.facts { margin: 0 0 0.5mm; flex-wrap: nowrap; } .facts div { padding: 0.3mm 1.2mm 0.4mm; flex: 1 1 auto; white-space: nowrap; } .facts dt, .facts dd { display: inline; } .facts dt { margin-right: 1.2mm; } .facts dd { font-size: 8.2pt; }
.leaf .drawn { display: flex; gap: 4mm; align-items: flex-start; } .leaf .drawn figure { flex: none; } .leaf .drawn table { flex: 1; }
.plans { display: flex; gap: 3mm; align-items: flex-start; } .leaf figcaption { font-size: ${textSize.small}pt; max-width: none; }
.openings { font-size: ${textSize.small}pt; margin: 0.4mm 0 0; } .openings span { margin-right: 1.6mm; }
.walls { display: flex; gap: 4mm; margin-top: 1.5mm; } 
.ring { display: inline-block; min-width: 3.4mm; padding: 0 0.5mm; text-align: center; border: 0.25mm solid var(--ink); border-radius: 2mm; font-size: 6.8pt; font-weight: 600; line-height: 3mm; }
.code { display: block; height: 3.4mm; line-height: 2.9mm; border: 0.25mm solid var(--ink); padding: 0 0.6mm; font-size: 6.8pt; }
.leaf table { table-layout: fixed; } .leaf .drawn table { width: auto; }
.repairs th:nth-child(1), .passes th:nth-child(1) { width: ${columns.box}mm; }
.repairs th:nth-child(2), .passes th:nth-child(2) { width: ${columns.number}mm; }
.repairs th:nth-child(4) { width: ${columns.repairAmount}mm; }
.colors th:nth-child(2) { width: ${columns.color.finish}mm; } .colors th:nth-child(3) { width: ${columns.color.code}mm; } .colors th:nth-child(4) { width: ${columns.color.primer}mm; }
.colors th:nth-child(5) { width: ${columns.color.coats}mm; } .colors th:nth-child(6) { width: ${columns.color.gallons}mm; } .leaf .n { padding-left: 0; }
.passes th:nth-child(4) { width: ${columns.hours}mm; } .passes th:nth-child(5) { width: ${columns.waits}mm; }
.holds th:nth-child(3) { width: ${columns.hold.clearedBy}mm; } .holds th:nth-child(4) { width: ${columns.hold.date}mm; } .leaf .holds th:nth-child(1) { width: ${columns.hold.number}mm; } .holds { table-layout: fixed; } .holds th:nth-child(1) { width: 26mm; }
.toFill { border-left: 0.15mm solid var(--hair); padding-left: 1mm; }
.leaf li { margin-bottom: ${heights.listItem}mm; }
.register th:nth-child(2), .register th:nth-child(4) { width: ${columns.register.box}mm; } .register th:nth-child(3) { width: ${columns.register.lies}mm; }
.fill { flex: 1 1 auto; min-height: ${heights.leastNotes}mm; border: 0.2mm solid var(--hair); margin-top: 1.5mm; padding: 0.4mm 1.4mm; width: calc(100% - 0.5mm); }
.leaf > .source { margin: 1mm 0 0; }
.foot { display: grid; grid-template-columns: 54fr 46fr; gap: ${gap}mm; } .foot > div { display: flex; flex-direction: column; } .foot .hours, .foot .signs { margin-top: auto; } .hours td, .hours th { border: 0.15mm solid var(--hair); height: 4.6mm; padding: 0 1mm; } .hours th:first-child { width: 27mm; }
.signs .source { font-size: 6.4pt; line-height: 1.15; margin: 1.4mm 0 0; } .signs .line { border-top: 0.25mm solid var(--ink); margin-top: 5mm; font-size: 6.8pt; color: var(--soft); }
.days svg { display: block; } .days text { font-family: "Source Sans 3", "Segoe UI", "Helvetica Neue", "Liberation Sans", Arial, "DejaVu Sans Condensed", sans-serif; fill: var(--ink); } .days figcaption { max-width: none; } .days figcaption svg { display: inline-block; vertical-align: -0.5mm; }
.calls dd { min-height: 5mm; } .cover { font-size: 8.2pt; line-height: 1.25; } .cover .holds td { padding: 0.5mm 1.4mm 0.5mm 0; } .cover caption, .cover h2 { font-size: 10.5pt; margin: 2.5mm 0 0.6mm; } .cover li { margin-bottom: 0.5mm; } .cover .source { font-size: 6.8pt; }
.record { font-size: 8.2pt; line-height: 1.2; } .record table { table-layout: fixed; } .record td { padding: 0.5mm 1.4mm 0.5mm 0; }
.paints th:nth-child(2) { width: 36mm; } .paints th:nth-child(3), .paints th:nth-child(4) { width: 20mm; } .paints th:nth-child(5) { width: 48mm; } .paints th:nth-child(6) { width: 14mm; } .surfaces th:nth-child(1) { width: 30mm; } .surfaces th:nth-child(6) { width: 10mm; }
.offer { font-size: 9pt; } .offer .head h2 { font-size: 21pt; } .offer .stop h3 { margin-top: 0; } .letterhead { display: flex; flex-direction: column; align-items: flex-end; text-align: right; margin-bottom: -9mm; min-height: 9mm; font-size: 8.2pt; } .letterhead.has-logo { flex-direction: row; justify-content: flex-end; align-items: center; gap: 4mm; min-height: 16mm; margin-bottom: 1mm; } .has-logo div { display: flex; flex-direction: column; align-items: flex-end; } .has-logo img { max-width: 60mm; max-height: 16mm; } .letterhead strong { font: 600 13pt/1.2 Georgia, "Liberation Serif", serif; }
.offer-rooms td p { margin: 0 0 0.6mm; } .offer-rooms td:first-child { width: 38mm; } .offer-rooms th[scope=rowgroup] { font: 600 10pt/1.2 Georgia, "Liberation Serif", serif; color: var(--ink); padding-top: 2.5mm; } .days-out { font-size: 7.8pt; color: var(--soft); }
.offer-two { columns: 2; column-gap: 8mm; margin-top: 3mm; } .accept { margin-top: 4mm; }
.two { columns: 2; column-gap: 6mm; } .rules { columns: 2; column-gap: 8mm; font-size: 8pt; }
.together { break-inside: avoid; }
`
}

const screenRules = `
@media screen {
  html { background: #ebe4d4; padding: 10mm 4mm; }
  .sheet { background: #fff; max-width: 200mm; margin: 0 auto 8mm; padding: 14mm 13mm; border: 0.2mm solid #cdc3ae; overflow-x: auto; }
}
`
