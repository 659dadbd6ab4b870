import type { Business } from '../../project/business-record.ts'
import { html, type Markup } from '../html-template.ts'

/** Who the shop is, at the head of every paper for the client. */
export function letterhead({ name, address, phone, mail, license, insurance }: Business): Markup {
  const reach = [address.replaceAll('\n', ', '), phone, mail].filter((part) => part !== '')
  const papers = [license, insurance].filter((part) => part !== '')
  return html`<div class="letterhead"><strong>${name || 'Name of the shop'}</strong>
${reach.length === 0 ? null : html`<span>${reach.join(' · ')}</span>`}
${papers.length === 0 ? null : html`<span>${papers.join(' · ')}</span>`}</div>`
}
