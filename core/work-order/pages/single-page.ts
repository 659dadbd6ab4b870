import type { Job } from '../../project/job.ts'
import { html, type Markup } from '../html-template.ts'
import { printStyle } from '../print-style.ts'
import { documentClosing, documentOpening } from './document-frame.ts'

/** A document of its own around one body, in the style of the papers with money. */
export function singlePage(
  { header: { title, paper } }: Pick<Job, 'header'>,
  name: string,
  body: Markup,
): string {
  const opening = documentOpening(paper, `${name}: ${title}`, printStyle(paper, title, []))
  const sheet = html`<section class="sheet offer">
${body}
</section>`
  return `${opening}${sheet.markup}${documentClosing}`
}
