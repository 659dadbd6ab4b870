import { cssString } from './html-template.ts'

export type Paper = 'letter' | 'a4'

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
  return `${pageRules(paper, title, heads)}\n${inkRules}\n${screenRules}`
}

function pageRules(paper: Paper, title: string, heads: readonly RunningHead[]): string {
  const running = heads.map(
    (head) => `@page ${head.pageName} { @top-right { content: ${cssString(head.text)}; ${small} } }
.${head.pageName} { page: ${head.pageName}; }`,
  )
  return `@page { size: ${paper === 'letter' ? 'letter' : 'A4'} portrait; margin: 15mm 13mm 16mm;
  @top-left { content: ${cssString(title)}; ${small} }
  @bottom-left { content: "Local codes, product labels and licensed practice come first."; ${small} }
  @bottom-right { content: "Page " counter(page) " of " counter(pages); ${small} } }
${running.join('\n')}`
}

const small = `font: 7.5pt "Source Sans 3", "Segoe UI", "Helvetica Neue", "Liberation Sans", Arial, sans-serif; color: #444; white-space: nowrap;`

const inkRules = `
:root { --ink: #1b1d21; --soft: #4a4d52; --hair: #8a8a8a; }
* { box-sizing: border-box; }
html { color: var(--ink); background: #fff; }
body { margin: 0; font: 9pt/1.32 "Source Sans 3", "Segoe UI", "Helvetica Neue", "Liberation Sans", Arial, sans-serif; font-variant-numeric: tabular-nums lining-nums; overflow-wrap: break-word; }
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
.net th, .net td { font-size: 7pt; padding-right: 1mm; overflow-wrap: anywhere; }
.sum td { border-top: 0.35mm solid var(--ink); font-weight: 600; }
.steps th:nth-child(3) { width: 27%; }
.steps th:nth-child(4) { width: 31%; }
.steps th:nth-child(5) { width: 19%; }
.step { break-inside: avoid; }
.step td { border-bottom: none; padding-bottom: 0.3mm; }
.step tr:first-child td { border-top: 0.15mm solid var(--hair); }
.step tr:last-child td { padding-bottom: 1mm; }
.box { display: inline-block; width: 3.6mm; height: 3.6mm; border: 0.3mm solid var(--ink); vertical-align: -0.5mm; }
.what { font-weight: 600; }
.notes { font-size: 8pt; color: var(--soft); padding-top: 0; }
.notes > span { margin-right: 2.2mm; }
p.wait { font-size: 8pt; margin: 0.5mm 0 0; }
.wait { color: var(--ink); }
.wait::before { content: "\\25F7\\00A0"; }
.why::before { content: "Why: "; font-weight: 600; }
.risk::before, .caution::before { content: "\\25B2\\00A0"; }
.drawn { display: grid; grid-template-columns: auto minmax(0, 1fr); gap: 5mm; align-items: start; break-inside: avoid; }
.plan { max-width: 100%; display: block; }
.plan text { font-family: "Source Sans 3", "Segoe UI", "Helvetica Neue", "Liberation Sans", Arial, sans-serif; fill: var(--ink); }
figure { margin: 0; } figcaption { font-size: 7.6pt; color: var(--soft); max-width: 92mm; }
.drawn > div > h3:first-child, .drawn > div > table:first-child caption { margin-top: 0; }
.stop { border: 0.5mm solid var(--ink); padding: 1.5mm 2.5mm; margin: 2mm 0; break-inside: avoid; }
.stop p:last-child { margin: 0; } .stop h2 { font-size: 11.5pt; margin-bottom: 1mm; }
ol, ul { margin: 0; padding-left: 4.5mm; } li { margin: 0 0 0.8mm; break-inside: avoid; }
.cautions { list-style: none; padding: 0; } .cautions .box { margin-right: 1.5mm; } .source { color: var(--soft); font-size: 8pt; }
.sign { display: grid; grid-template-columns: 1fr 1fr; gap: 7mm 8mm; margin-top: 9mm; break-inside: avoid; }
.sign div { border-top: 0.25mm solid var(--ink); padding-top: 0.8mm; font-size: 8pt; color: var(--soft); }
.keep { break-inside: avoid; break-before: avoid; }
.total td { font-size: 11pt; font-weight: 600; border-bottom: none; }
`

const screenRules = `
@media screen {
  html { background: #ebe4d4; padding: 10mm 4mm; }
  .sheet { background: #fff; max-width: 200mm; margin: 0 auto 8mm; padding: 14mm 13mm; border: 0.2mm solid #cdc3ae; overflow-x: auto; }
}
`
