import { html, type Markup } from '../html-template.ts'

interface HoldRow {
  /** Its number, or its room. */
  readonly head: Markup
  readonly text: string
  /** When and by whom; null while it is open. */
  readonly cleared: string | null
}

/** What has to be cleared first, each with its places to be signed; what was cleared says when and by whom. */
export function holdTable(rows: readonly HoldRow[], first = 'Hold'): Markup | null {
  if (rows.length === 0) return null
  return html`<table class="holds"><caption>Wait until this is cleared</caption>
<thead><tr><th scope="col">${first}</th><th scope="col">What</th><th scope="col">Cleared by</th><th scope="col">Date</th></tr></thead>
<tbody>${rows.map(({ head, text, cleared }) =>
    cleared === null
      ? html`<tr><td>${head}</td><td>${text}</td><td class="toFill"></td><td class="toFill"></td></tr>`
      : html`<tr><td>${head}</td><td>${text}</td><td colspan="2"><strong>Cleared: ${cleared}.</strong></td></tr>`,
  )}</tbody></table>`
}
