import { type Agreement, agreedChanges } from '../agreement/agreement.ts'
import { askedBefore, invoiceName } from '../agreement/invoices.ts'
import { sumMoney, totalCents } from '../agreement/taxed-money.ts'
import type { DealingOf, Money } from '../project/agreement-records.ts'
import type { Job } from '../project/job.ts'
import { dateWordsWithYear } from '../time/date-words.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import { formatCents } from '../units/money.ts'
import { linesOf } from '../words/text.ts'
import { html, type Markup } from './html-template.ts'
import { letterhead } from './pages/letterhead.ts'
import { singlePage } from './pages/single-page.ts'

type Head = Pick<Job, 'header' | 'business'>

/** The page of a change order, to be signed: what is changed and why, what it costs, and what it moves. */
export function changeOrderHtml(job: Head, change: DealingOf<'changeOffered'>, agreement: Agreement): string {
  const { unitSystem } = job.header
  const before = agreement.agreed
  const title = `Change order ${change.number}`
  return singlePage(
    job,
    title,
    html`${headOf(job, title, [['Date', dateWordsWithYear(change.on, unitSystem)]])}
<h3>${change.title}</h3>
${change.why === '' ? null : html`<p>${change.why}</p>`}
<table><caption>What it costs</caption>${moneyHead()}
<tbody>${moneyRow('Agreed so far', before)}${moneyRow(`This change: ${change.title}`, change)}</tbody>
${moneyRow('Agreed with this change', sumMoney([before, change]), 'sum')}</table>
<h3>Time</h3>
<ul>${timeLines(change, unitSystem).map((line) => html`<li>${line}</li>`)}</ul>
<p class="accept">Work on this change begins when it is signed. If it is declined, the job goes on as it was agreed, and this page is kept.</p>
<div class="sign"><div>Offered by ${job.business.name || 'the shop'}, date</div><div>Agreed by, date</div></div>
<p class="accept"><span class="box"></span> Declined, because:</p>`,
  )
}

/** The page of an invoice: each line with its tax, what was asked for before, what is paid, and what is to be paid now. */
export function invoiceHtml(job: Head, invoice: DealingOf<'invoiced'>, before: Agreement): string {
  const { unitSystem } = job.header
  const title = invoiceName(invoice)
  const isCredit = invoice.credits !== null
  const asked = sumMoney(invoice.lines)
  const left = totalCents(before.toInvoice) - totalCents(asked)
  const now = before.dueCents + totalCents(asked)
  const facts: readonly (readonly [string, string])[] = [
    ['Date', dateWordsWithYear(invoice.on, unitSystem)],
    ...(isCredit
      ? []
      : [
          [
            'Due',
            invoice.dueOn === null ? 'on receipt' : dateWordsWithYear(invoice.dueOn, unitSystem),
          ] as const,
        ]),
  ]
  return singlePage(
    job,
    title,
    html`${headOf(job, title, facts)}
<table><caption>${invoice.title}</caption>${moneyHead()}
<tbody>${invoice.lines.map((line) => moneyRow(line.label, line, '', isCredit ? '' : beforeWords(before, line.changeId)))}</tbody>
${moneyRow(isCredit ? 'This credit' : 'This invoice', asked, 'sum')}</table>
<table><caption>Where the job stands</caption>${moneyHead()}
<tbody>${moneyRow('Agreed price', before.contract)}${agreedChanges(before.changes).map((change) =>
      moneyRow(`Change order ${change.number}: ${change.title}`, change),
    )}${moneyRow('Invoiced before', before.invoiced)}${moneyRow(isCredit ? 'This credit' : 'This invoice', asked)}</tbody>
</table>
<table><tbody>
<tr><td>Still to be invoiced after this</td><td class="n">${formatCents(left)}</td></tr>
<tr><td>Paid so far</td><td class="n">${formatCents(before.paidCents)}</td></tr>
<tr class="sum"><td>${now < 0 ? 'In your favor' : 'Due now, with what is open on earlier invoices'}</td><td class="n">${formatCents(Math.abs(now))}</td></tr></tbody></table>`,
  )
}

function beforeWords(
  before: Agreement,
  changeId: DealingOf<'invoiced'>['lines'][number]['changeId'],
): string {
  const asked = totalCents(askedBefore(before, changeId))
  return asked === 0 ? '' : `less ${formatCents(asked)} invoiced before`
}

function headOf(
  { header: { title, client, site, proposalNumber }, business }: Head,
  name: string,
  facts: readonly (readonly [string, string])[],
): Markup {
  const all = [
    ...facts,
    ...(proposalNumber === null ? [] : [['Proposal', String(proposalNumber)] as const]),
    ['For', client || '–'] as const,
    ['House', linesOf(site).join(', ') || '–'] as const,
  ]
  return html`${letterhead(business)}
<header class="head"><h2>${name}</h2><p>${title}</p></header>
<dl class="block">${all.map(([word, value]) => html`<div><dt>${word}</dt><dd>${value}</dd></div>`)}</dl>`
}

function moneyHead(): Markup {
  return html`<thead><tr><th scope="col"></th><th scope="col" class="n">Before tax</th><th scope="col" class="n">Tax</th><th scope="col" class="n">Amount</th></tr></thead>`
}

function moneyRow(label: string, money: Money, kind = '', note = ''): Markup {
  return html`<tr class="${kind}"><td>${label}${note === '' ? null : html` <span class="source">${note}</span>`}</td><td class="n">${formatCents(money.beforeTaxCents)}</td><td class="n">${formatCents(money.taxCents)}</td><td class="n">${formatCents(totalCents(money))}</td></tr>`
}

function timeLines(
  { minutes, finishesOn, moves }: DealingOf<'changeOffered'>,
  system: LengthUnitSystem,
): readonly string[] {
  const hours = Math.round((minutes.after - minutes.before) / 6) / 10
  const { before, after } = finishesOn
  const day =
    before === null || after === null
      ? []
      : before === after
        ? [`The last day of work stays ${dateWordsWithYear(before, system)}.`]
        : [
            `The last day of work becomes ${dateWordsWithYear(after, system)} instead of ${dateWordsWithYear(before, system)}.`,
          ]
  return [`${Math.abs(hours)} ${hours < 0 ? 'fewer' : 'more'} hours of work.`, ...day, ...moves]
}
