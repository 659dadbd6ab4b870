import { gravestFirst } from '../../specification/cautions.ts'
import type { PersonDay } from '../document-types.ts'
import { html, type Markup } from '../html-template.ts'

/** Cautions of lead and asbestos work, each once; they go with the work onto every sheet that lists it. */
export function dayCautions(people: readonly PersonDay[]): Markup | null {
  const cautions = gravestFirst(people.flatMap((each) => each.cautions))
  if (cautions.length === 0) return null
  return html`<div class="stop">${cautions.map((caution) => html`<p>${caution.text}</p>`)}</div>`
}
