import type { Estimate } from '../price/estimate-types.ts'
import { shareCents } from '../price/price-shares.ts'
import type { DealingOf, JobOption, Money, PaymentStep, PricedLine } from '../project/agreement-records.ts'
import type { Business } from '../project/business-record.ts'
import { type Job, records } from '../project/job.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import { roundToCents } from '../units/money.ts'
import type { Offer } from './proposal-version.ts'
import { type PriceJob, priceOfChanges } from './whole-price.ts'

/** An option with what it adds to the price, less than nothing where it takes work away. */
type PricedOption = JobOption & Money

/** The steps of payment of the shop sheet, as a proposal prints and a quote keeps them; with none, all at the end. */
export function quoteSteps({ paymentSteps }: Pick<Business, 'paymentSteps'>): readonly PaymentStep[] {
  if (paymentSteps.length === 0) return [{ name: 'When all is done and looked over', percent: 100, when: '' }]
  return paymentSteps.map(({ name, percent }) => ({ name, percent, when: '' }))
}

/** The price by room, each line with its share of the tax; together they are the price and its tax to the cent. */
export function quoteLines({ rooms, totals }: Pick<Estimate, 'rooms' | 'totals'>): readonly PricedLine[] {
  if (rooms.length === 0)
    return [{ label: 'The work', beforeTaxCents: totals.beforeTax, taxCents: totals.tax }]
  const taxes = shareCents(
    totals.tax,
    rooms.map(({ cents }) => Math.max(0, cents)),
  )
  return rooms.map(({ name, cents }, index) => ({
    label: name,
    beforeTaxCents: cents,
    taxCents: taxes[index] ?? roundToCents(0),
  }))
}

/** Every option of work with its price, each alone on the job as it stands; a problem where one no longer fits. */
export function pricedOptions(
  priceJob: PriceJob,
  job: Job,
): readonly { readonly option: JobOption; readonly price: Outcome<Money & { readonly minutes: number }> }[] {
  return records(job.options)
    .filter(({ isScheme }) => isScheme !== true)
    .map((option) => ({ option, price: priceOfChanges(priceJob, job, option.changes) }))
}

/** The offer as it is printed and frozen: the price by room, every option that fits, and the steps of payment. */
export function offerOf(
  { business }: Pick<Job, 'business'>,
  estimate: Pick<Estimate, 'rooms' | 'totals'>,
  options: ReturnType<typeof pricedOptions>,
): Offer {
  return {
    lines: quoteLines(estimate),
    options: options.flatMap(({ option, price }) =>
      price.ok
        ? [{ ...option, beforeTaxCents: price.value.beforeTaxCents, taxCents: price.value.taxCents }]
        : [],
    ),
    steps: quoteSteps(business),
  }
}

/** A sentence where the client cannot have these options together, or the quote has not got one of them. */
export function checkTaken(
  quote: Pick<DealingOf<'quoted'>, 'options'>,
  optionIds: readonly JobOption['id'][],
): Outcome<readonly PricedOption[]> {
  const taken = optionIds.map((id) => quote.options.find((option) => option.id === id))
  const known = taken.filter((option) => option !== undefined)
  if (known.length < taken.length) return fail('notFound', 'The quote has no such option.', optionIds)
  const clash = known.find(
    ({ id, oneOf }) => oneOf !== '' && known.some((other) => other.id !== id && other.oneOf === oneOf),
  )
  if (clash === undefined) return succeed(known)
  return fail('notAllowed', `Only one of “${clash.oneOf}” can be taken: they are alternatives.`, [clash.id])
}
