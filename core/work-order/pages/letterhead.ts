import type { Business } from '../../project/business-record.ts'
import { html, type Markup } from '../html-template.ts'
import { namedPicture } from '../pictured.ts'

/** Who the shop is, at the head of every paper for the client, with its logo where it has one. */
export function letterhead({ name, logo, address, phone, mail, license, insurance }: Business): Markup {
  const reach = [address.replaceAll('\n', ', '), phone, mail].filter((part) => part !== '')
  const papers = [license, insurance].filter((part) => part !== '')
  const lines = html`<strong>${name || 'Name of the shop'}</strong>
${reach.length === 0 ? null : html`<span>${reach.join(' · ')}</span>`}
${papers.length === 0 ? null : html`<span>${papers.join(' · ')}</span>`}`
  return logo === null
    ? html`<div class="letterhead">${lines}</div>`
    : html`<div class="letterhead has-logo"><div>${lines}</div>${namedPicture(logo, html`Logo of ${name || 'the shop'}`)}</div>`
}
