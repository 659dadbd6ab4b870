import { dateWordsWithYear, timeOfDayWords } from '../../time/date-words.ts'
import { addDays } from '../../time/local-date.ts'
import { formatCents, signedCents } from '../../units/money.ts'
import type { WorkOrder } from '../document-types.ts'
import { stretchWords } from '../family-page.ts'
import { html, type Markup } from '../html-template.ts'
import type { PaperStamp } from '../paper-stamp.ts'
import type { Proposal, ProposalFloor, ProposalOption, ProposalRoom } from '../proposal/proposal-types.ts'
import { viewingRule } from '../viewing-rule.ts'
import { letterhead } from './letterhead.ts'

/** The offer to the client. Before it is given out it has no date, and says to the owner what is to be settled first. */
export function proposalPage(order: WorkOrder, stamp: PaperStamp): Markup {
  const { proposal } = order
  return html`<section class="sheet offer">
${letterhead(proposal.business)}
<header class="head"><h2>Proposal</h2><p>${order.title}</p></header>
${facts(order, stamp)}
${stamp.kind === 'issued' ? null : doubts(proposal)}
${scope(order)}
${options(proposal)}
<div class="offer-two">
${texts('Days', daysLines(order))}
${payments(proposal)}
${texts('Colors', colorLines(order))}
${texts('Who moves and covers what', proposal.whoMoves)}
${texts('Not included', proposal.notIncluded)}
${texts('When something hidden is found', proposal.hidden)}
${texts('Warranty', proposal.warranty)}
${texts('Terms', [...proposal.terms, viewingRule.text])}
</div>
${lead(proposal)}
${signatures(proposal)}
</section>`
}

function facts(order: WorkOrder, stamp: PaperStamp): Markup {
  const { proposal, unitSystem, client } = order
  const given = stamp.kind === 'issued' ? stamp.at.slice(0, 10) : null
  const numbered = stamp.kind === 'issued' ? stamp.proposal : null
  const number = numbered?.number ?? proposal.number
  const date = given === null ? 'when it is given out' : dateWordsWithYear(given, unitSystem)
  const until =
    given === null
      ? `${proposal.validDays} days from then`
      : dateWordsWithYear(addDays(given, proposal.validDays), unitSystem)
  return html`<dl class="block">
<div><dt>Number</dt><dd>${number ?? 'when it is given out'}${number === null ? null : `, version ${numbered?.version ?? proposal.version}`}</dd></div>
<div><dt>Date</dt><dd>${date}</dd></div>
<div><dt>Valid until</dt><dd>${until}</dd></div>
<div><dt>For</dt><dd>${client || '–'}</dd></div>
<div><dt>House</dt><dd>${proposal.site.join(', ') || '–'}</dd></div>
</dl>`
}

function doubts({ doubts }: Proposal): Markup | null {
  if (doubts.length === 0) return null
  return html`<div class="stop"><h3>To be settled before this is sent</h3>${doubts.map((doubt) => html`<p>${doubt}</p>`)}</div>`
}

function scope(order: WorkOrder): Markup {
  const { proposal } = order
  const isByRoom = proposal.prices === 'byRoom'
  const hasSubtotals = isByRoom && proposal.floors.length > 1
  const span = isByRoom ? null : html` colspan="2"`
  const sum = (label: string, cents: number, kind: string) =>
    html`<tr class="${kind}"><td></td><td>${label}</td><td class="n">${formatCents(cents)}</td></tr>`
  return html`<table class="offer-rooms"><caption>What is done</caption>
<thead><tr><th scope="col">Room</th><th scope="col"${span}>Work and measured amounts</th>${isByRoom ? html`<th scope="col" class="n">Price</th>` : null}</tr></thead>
${proposal.floors.map(
  (
    floor,
  ) => html`<tbody>${proposal.floors.length > 1 ? html`<tr><th scope="rowgroup" colspan="3">${floor.name}</th></tr>` : null}
${floor.rooms.map((room) => roomRow(order, room, isByRoom))}
${hasSubtotals ? sum(subtotalWords(floor), floor.cents, 'sum') : null}</tbody>`,
)}
<tbody class="keep">${sum('Price before tax', proposal.beforeTax, 'sum')}
${sum('Tax', proposal.tax, '')}
${sum('Price with tax', proposal.total, 'total')}</tbody></table>`
}

function subtotalWords({ name }: ProposalFloor): string {
  return `${name}, together`
}

function roomRow({ unitSystem }: WorkOrder, room: ProposalRoom, isByRoom: boolean): Markup {
  const days = room.stretches.map((stretch) => stretchWords(stretch, unitSystem)).join(', ')
  const work = room.scope.map((line) => html`<p>${line}</p>`)
  return html`<tr><td><span class="what">${room.name}</span>${days === '' ? null : html`<br><span class="days-out">out of use about ${days}</span>`}</td>
${isByRoom ? html`<td>${work}</td><td class="n">${formatCents(room.cents)}</td>` : html`<td colspan="2">${work}</td>`}</tr>`
}

function options({ options }: Proposal): Markup | null {
  if (options.length === 0) return null
  return html`<table class="together"><caption>Options: check what you want</caption>
<thead><tr><th scope="col" class="tick"></th><th scope="col">What is added or done otherwise</th><th scope="col" class="n">To the price, with tax</th></tr></thead>
<tbody>${options.map(optionRow)}</tbody></table>${options.length < 2 ? null : html`<p class="source">Each is priced alone. Several together can come to a little more or less, because they share work and paint; you get that figure before you sign.</p>`}`
}

function optionRow({ name, note, oneOf, cents }: ProposalOption): Markup {
  const alternative = oneOf === '' ? null : html` <span class="source">only one of “${oneOf}”</span>`
  return html`<tr><td class="tick"><span class="box"></span></td><td>${name}${alternative}${note === '' ? null : html`<br>${note}`}</td><td class="n">${signedCents(cents)}</td></tr>`
}

function texts(title: string, lines: readonly string[]): Markup | null {
  if (lines.length === 0) return null
  return html`<section class="together"><h3>${title}</h3>${lines.map((line) => html`<p>${line}</p>`)}</section>`
}

function daysLines({ proposal, startsOn, finishesOn, unitSystem }: WorkOrder): readonly string[] {
  const { days, siteHours } = proposal
  return [
    `We expect ${days} ${days === 1 ? 'day' : 'days'} of work, from ${dateWordsWithYear(startsOn, unitSystem)} to ${dateWordsWithYear(finishesOn, unitSystem)}. Paint that dries slowly can move a room by a day.`,
    `We work between ${timeOfDayWords(siteHours.from, unitSystem)} and ${timeOfDayWords(siteHours.to, unitSystem)} and leave the site swept each evening.`,
  ]
}

function colorLines({ proposal, unitSystem }: WorkOrder): readonly string[] {
  const { colorsNeededOn, colorsOpen } = proposal
  return [
    `All colors are needed by ${dateWordsWithYear(colorsNeededOn, unitSystem)}.`,
    ...(colorsOpen.length === 0 ? [] : [`Still to be chosen: ${colorsOpen.join('; ')}.`]),
  ]
}

function payments({ payments, options }: Proposal): Markup | null {
  if (payments.length === 0) return null
  return html`<section class="together"><table><caption>Payment</caption><tbody>${payments.map(
    ({ name, percent, cents }) =>
      html`<tr><td>${name}</td><td class="n">${percent}%</td><td class="n">${formatCents(cents)}</td></tr>`,
  )}</tbody></table>${options.length === 0 ? null : html`<p>With options checked, the same shares of the price with them.</p>`}</section>`
}

function lead({ lead }: Proposal): Markup | null {
  if (lead === null) return null
  return html`<section class="stop"><h3>Lead in old paint</h3>${lead.lines.map(
    ({ text, source }) => html`<p>${text} <span class="source">${source}</span></p>`,
  )}
<p>This proposal says nothing about whether lead or asbestos is present; where the law asks for testing or for certified work, that comes first.</p></section>`
}

function signatures({ business, lead, options }: Proposal): Markup {
  const receipt = lead?.isCovered
    ? html`<div>Pamphlet “Renovate Right” received: owner, date</div><div>An adult who lives there, where it is not the owner, date</div>`
    : null
  return html`<div class="keep"><p class="accept">By accepting this proposal, the client orders the work at the price above${options.length === 0 ? '' : ', with the options checked'}.</p>
<div class="sign"><div>Offered by ${business.name || 'the shop'}, date</div><div>Accepted by, date</div>${receipt}</div></div>`
}
