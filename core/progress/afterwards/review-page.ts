import type { Job } from '../../project/job.ts'
import { dateWordsWithYear } from '../../time/date-words.ts'
import { formatMinutes } from '../../units/duration.ts'
import type { LengthUnitSystem } from '../../units/length.ts'
import { type Cents, formatCents } from '../../units/money.ts'
import { formatVolume } from '../../units/volume.ts'
import { html, type Markup } from '../../work-order/html-template.ts'
import { singlePage } from '../../work-order/pages/single-page.ts'
import { type ComparedHours, hourGroupings, hourGroupingWords } from './compared-hours.ts'
import type { ComparedMaterial } from './compared-material.ts'
import type { JobMoney } from './compared-money.ts'
import { hoursBasis, hoursSum, type JobReview } from './job-review.ts'
import type { OwnRate } from './own-jobs.ts'

/** A rate by its name on the screen, and what own jobs say of it. */
interface RateLine {
  readonly name: string
  readonly own: OwnRate
}

/** The page of a job looked at afterwards, for the shop: hours, money and material, counted against real. */
export function reviewHtml(
  job: Pick<Job, 'header'>,
  review: JobReview,
  rates: readonly RateLine[],
  on: string,
): string {
  const { header } = job
  return singlePage(
    job,
    'Planned against actual',
    html`<header class="head"><h2>Planned against actual</h2><p>${header.title}, ${dateWordsWithYear(on, header.unitSystem)}. For the shop, not for the client.</p></header>
${moneyTable(review.money)}
${hourGroupings.map((grouping) => hoursTable(hourGroupingWords[grouping], review.hours[grouping]))}
<p class="source">${hoursBasis(review)}</p>
${materialTable(review.material, header.unitSystem)}
${rateTable(rates)}`,
  )
}

function moneyTable({ lines, cost, overheadCents, priceCents, isAgreed, left }: JobMoney): Markup {
  const both = (cents: Cents) => [cents, cents] as const
  return html`<table><caption>Money, before tax</caption>
<thead><tr><th scope="col"></th><th scope="col" class="n">Planned</th><th scope="col" class="n">Actual</th><th scope="col" class="n">Over or under</th></tr></thead>
<tbody>${lines.map(({ label, plannedCents, realCents }) => moneyRow(label, plannedCents, realCents))}</tbody>
${moneyRow('Cost', cost.plannedCents, cost.realCents, 'sum')}
${moneyRow(isAgreed ? 'Agreed price, changes in it' : 'Price of the estimate, nothing is agreed', ...both(priceCents))}
${moneyRow('Overhead as priced', ...both(overheadCents))}
${moneyRow('Left: profit, and contingency not needed', left.plannedCents, left.realCents, 'sum')}</table>`
}

function moneyRow(label: string, planned: Cents, real: Cents | null, kind = ''): Markup {
  const difference = (real ?? planned) - planned
  return html`<tr class="${kind}"><td>${label}${real === null ? html` <span class="source">nothing written down: as planned</span>` : null}</td><td class="n">${formatCents(planned)}</td><td class="n">${real === null ? '–' : formatCents(real)}</td><td class="n">${difference === 0 ? '–' : signed(formatCents(Math.abs(difference)), difference)}</td></tr>`
}

function hoursTable(by: string, rows: readonly ComparedHours[]): Markup {
  const sum = hoursSum(rows)
  return html`<table><caption>Hours by ${by.toLowerCase()}</caption>
<thead><tr><th scope="col"></th><th scope="col" class="n">Planned</th><th scope="col" class="n">Actual</th><th scope="col" class="n">Over or under</th><th scope="col" class="n">Still to do</th></tr></thead>
<tbody>${rows.map((row) => hoursRow(row.label, row))}</tbody>
${hoursRow('Total', sum, 'sum')}</table>`
}

function hoursRow(label: string, row: Omit<ComparedHours, 'key' | 'label'>, kind = ''): Markup {
  const difference = row.worked - row.planned
  return html`<tr class="${kind}"><td>${label}</td><td class="n">${orDash(row.planned)}</td><td class="n">${orDash(row.worked)}</td><td class="n">${Math.abs(difference) < 0.5 ? '–' : signed(formatMinutes(Math.abs(difference)), difference)}</td><td class="n">${orDash(row.left)}</td></tr>`
}

function materialTable(rows: readonly ComparedMaterial[], system: LengthUnitSystem): Markup | null {
  if (rows.length === 0) return null
  const volume = (gallons: number) => (gallons === 0 ? '–' : formatVolume(gallons, system))
  return html`<table><caption>Paint and material</caption>
<thead><tr><th scope="col"></th><th scope="col" class="n">Needed</th><th scope="col" class="n">Bought, as planned</th><th scope="col" class="n">Used</th></tr></thead>
<tbody>${rows.map((row) => html`<tr><td>${row.label}</td><td class="n">${volume(row.neededGallons)}</td><td class="n">${volume(row.boughtGallons)}</td><td class="n">${volume(row.usedGallons)}</td></tr>`)}</tbody></table>`
}

function rateTable(rates: readonly RateLine[]): Markup | null {
  if (rates.length === 0) return null
  return html`<table><caption>What it says about the shop’s rates, per hour</caption>
<thead><tr><th scope="col"></th><th scope="col" class="n">Counted</th><th scope="col" class="n">Worked</th><th scope="col" class="n">The shop’s rate</th><th scope="col" class="n">Suggested</th><th scope="col" class="n">Own jobs behind it</th></tr></thead>
<tbody>${rates.map(({ name, own }) => html`<tr><td>${name}</td><td class="n">${orDash(own.plannedMinutes)}</td><td class="n">${orDash(own.workedMinutes)}</td><td class="n">${own.rate.perHour}</td><td class="n">${own.suggested.perHour}</td><td class="n">${own.suggested.own?.jobs ?? 0}</td></tr>`)}</tbody></table>`
}

function orDash(minutes: number): string {
  return minutes < 0.5 ? '–' : formatMinutes(minutes)
}

function signed(text: string, difference: number): string {
  return `${difference > 0 ? '+' : '−'} ${text}`
}
