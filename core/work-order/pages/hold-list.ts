import type { HoldLine } from '../hold-words.ts'
import { html, type Markup } from '../html-template.ts'

/** What has to be cleared first, each with its line to be signed; what was cleared says when and by whom. */
export function holdList(holds: readonly HoldLine[]): Markup | null {
  if (holds.length === 0) return null
  return html`<ul class="holds">${holds.map(
    (hold) =>
      html`<li class="keep">${hold.alarm === null ? null : html`<strong>${hold.alarm}</strong> `}${hold.reason}
<p>Who sees to it: ${hold.who}. Expected: ${hold.expected}. ${clearedLine(hold)}</p></li>`,
  )}</ul>`
}

function clearedLine({ cleared }: HoldLine): Markup {
  return cleared === null
    ? html`<span class="tight">Cleared by ______________________ on ______________</span>`
    : html`<strong>Cleared: ${cleared}.</strong>`
}
