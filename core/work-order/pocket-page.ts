import type { WorkOrder } from './document-types.ts'
import { type DocumentPart, workOrderHtml } from './html.ts'
import type { PaperChoice } from './paper-choice.ts'

/** What goes onto a phone; nothing for the client, so that no price is on it. */
export const pocketParts = ['cover', 'weeks', 'today', 'rooms', 'shopping'] as const satisfies DocumentPart[]
type PocketPart = (typeof pocketParts)[number]

/**
 * The chosen papers as one file for a phone: the same tables and drawings with boxes to tick. It loads nothing and sends nothing; its
 * policy forbids both. Ticks are kept by the phone's browser alone, under `fileId`.
 */
export function pocketHtml(
  order: WorkOrder,
  parts: readonly PocketPart[],
  choice: PaperChoice,
  fileId: string,
): string {
  const printed = workOrderHtml(order, 'letter', parts, choice)
  const head = printed.slice(0, printed.indexOf('<body>'))
  const body = printed.slice(printed.indexOf('<body>') + '<body>'.length, printed.indexOf('</body>'))
  const sheets = withAnchors(withTicks(body))
  return `${head.replace('<meta charset="utf-8">', `<meta charset="utf-8">${policy}`).replace('</style>', `${pocketStyle}</style>`)}<body class="pocket">
<p class="kept" id="kept">Check marks stay on this phone only: nobody else sees them, and they go when its browser is cleared.</p>
${contents(sheets)}
${sheets}<script>${tickScript(fileId)}</script>
</body>
</html>
`
}

const policy = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:">`

/** Every printed box becomes one to tick, numbered as it stands. */
function withTicks(body: string): string {
  let number = 0
  return body.replaceAll('<span class="box"></span>', () => {
    number++
    return `<input class="box" type="checkbox" aria-label="done" name="tick-${number}">`
  })
}

function withAnchors(body: string): string {
  let number = 0
  return body.replaceAll('<section class="sheet', () => {
    number++
    return `<section id="page-${number}" class="sheet`
  })
}

/** A list of the pages by their headings; none for a single page. */
function contents(sheets: string): string {
  const found = [...sheets.matchAll(/<section id="(page-\d+)"[\s\S]*?<h[12][^>]*>([\s\S]*?)<\/h[12]>/g)]
  if (found.length < 2) return ''
  const entries = found.map(([, id = '', heading = '']) => {
    return `<li><a href="#${id}">${heading.replaceAll(/<[^>]*>/g, '')}</a></li>`
  })
  return `<nav aria-label="Pages"><ol>${entries.join('')}</ol></nav>`
}

/** A phone that keeps nothing (a private window, a mail program) says so instead of losing ticks in silence. */
function tickScript(fileId: string): string {
  const key = JSON.stringify(`coatwright-pocket-${fileId}`).replaceAll('<', '\\u003c')
  return `
(() => {
  const key = ${key}
  let kept = {}
  const cannot = () => { document.getElementById('kept').textContent = 'This browser keeps no check marks: they are gone when the page is closed.' }
  try { kept = JSON.parse(localStorage.getItem(key) || '{}') } catch { cannot() }
  for (const box of document.querySelectorAll('input[type=checkbox]')) {
    box.checked = kept[box.name] === true
    box.addEventListener('change', () => {
      kept[box.name] = box.checked
      try { localStorage.setItem(key, JSON.stringify(kept)) } catch { cannot() }
    })
  }
})()
`
}

/** Made for a narrow screen: larger type, one column, tables that shift sideways where they must. */
const pocketStyle = `
@media screen {
  html { padding: 0; }
  .pocket { font-size: 15px; }
  .pocket .sheet, .letter .pocket .sheet { width: auto; max-width: 46rem; padding: 14px; margin: 0 auto 14px; height: auto; min-height: 0; overflow-x: auto; }
  .pocket table, .pocket .source, .pocket .notes { font-size: 14px; }
  .pocket .drawn, .pocket .sign, .pocket .foot { display: block; }
  .pocket svg { max-width: 100%; height: auto; }
  .pocket ul.tools { columns: 1; font-size: 14px; }
  .pocket input.box { appearance: auto; width: 22px; height: 22px; margin: 2px 6px 2px 0; border: none; vertical-align: middle; }
  .pocket .kept { margin: 0; padding: 10px 14px; font-weight: 600; }
  .pocket nav { padding: 0 14px 10px; } .pocket nav li { margin: 6px 0; } .pocket nav a { color: inherit; }
}
`

/** `pocket-the-old-house-2027-03-29.html` is made of plain letters, so that mail programs keep it. */
export function pocketFileName(title: string, date: string): string {
  const words = title
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 40)
  return ['pocket', words, date]
    .filter((part) => part !== '')
    .join('-')
    .concat('.html')
}
