import type { Dealing, DealingId, DealingKind, DealingOf, Money } from '../project/agreement-records.ts'
import { type Cents, roundToCents, sumCents } from '../units/money.ts'
import { isNothing, lessMoney, noMoney, sumMoney, totalCents } from './taxed-money.ts'

/** Where a job stands between the shop and its client. */
export type Stage = 'notQuoted' | 'quoted' | 'lost' | 'accepted' | 'underWay' | 'finished' | 'paid'

interface ChangeOrderState {
  readonly change: DealingOf<'changeOffered'>
  /** Null while the client has not answered. */
  readonly answer: DealingOf<'changeAnswered'> | null
}

interface InvoiceState {
  readonly invoice: DealingOf<'invoiced'>
  readonly money: Money
  /** Payments go to the oldest invoice first, and nothing to one that was taken back. */
  readonly openCents: Cents
  /** The credit invoice that took it back. */
  readonly creditedBy: DealingOf<'invoiced'> | null
}

/** What was agreed, asked for and paid. Every sum is of whole cents that were said in a dealing. */
export interface Agreement {
  readonly stage: Stage
  /** The quote that was accepted, else the last one given; null before any. */
  readonly quote: DealingOf<'quoted'> | null
  readonly accepted: DealingOf<'accepted'> | null
  readonly lost: DealingOf<'lost'> | null
  /** The accepted price with the options taken; nothing before. */
  readonly contract: Money
  readonly changes: readonly ChangeOrderState[]
  /** The contract with the changes agreed. */
  readonly agreed: Money
  readonly invoices: readonly InvoiceState[]
  readonly invoiced: Money
  /** Agreed and in no invoice yet. */
  readonly toInvoice: Money
  readonly payments: readonly DealingOf<'paid'>[]
  readonly paidCents: Cents
  /** Asked for in invoices and not paid. */
  readonly dueCents: Cents
  /** Agreed and not paid, asked for or not: `toInvoice` with `dueCents`. */
  readonly balanceCents: Cents
}

/**
 * How a job stands, from everything that happened, in the order in which it was written down.
 *
 * @param workHasBegun something was marked on site
 */
export function agreementOf(dealings: readonly Dealing[], workHasBegun: boolean): Agreement {
  const accepted = ofKind(dealings, 'accepted').at(-1) ?? null
  const quotes = ofKind(dealings, 'quoted')
  const quote = quotes.find(({ id }) => id === accepted?.quoteId) ?? quotes.at(-1) ?? null
  const contract = accepted === null || quote === null ? noMoney : contractOf(quote, accepted)
  const changes = changesIn(dealings)
  const agreed = sumMoney([contract, ...agreedChanges(changes)])
  const payments = ofKind(dealings, 'paid')
  const paidCents = sumCents(payments.map(({ cents }) => cents))
  const invoices = settle(ofKind(dealings, 'invoiced'), paidCents)
  const invoiced = sumMoney(invoices.map(({ money }) => money))
  const toInvoice = lessMoney(agreed, invoiced)
  const dueCents = roundToCents(totalCents(invoiced) - paidCents)
  return {
    stage: stageOf(dealings, workHasBegun, isNothing(toInvoice) && dueCents <= 0),
    quote,
    accepted,
    lost: ofKind(dealings, 'lost').at(-1) ?? null,
    contract,
    changes,
    agreed,
    invoices,
    invoiced,
    toInvoice,
    payments,
    paidCents,
    dueCents,
    balanceCents: roundToCents(totalCents(agreed) - paidCents),
  }
}

/** The price of a quote with some of its options: every line and every option to the cent as printed, and what the options cost together beside that. */
export function contractOf(
  quote: DealingOf<'quoted'>,
  { optionIds, together }: Pick<DealingOf<'accepted'>, 'optionIds' | 'together'>,
): Money {
  const taken = quote.options.filter(({ id }) => optionIds.includes(id))
  return sumMoney([...quote.lines, ...taken, together])
}

/** The prices of the changes that the client agreed to. */
export function agreedChanges(changes: readonly ChangeOrderState[]): readonly DealingOf<'changeOffered'>[] {
  return changes.filter(({ answer }) => answer?.answer === 'agreed').map(({ change }) => change)
}

function ofKind<Kind extends DealingKind>(
  dealings: readonly Dealing[],
  kind: Kind,
): readonly DealingOf<Kind>[] {
  return dealings.filter((dealing): dealing is DealingOf<Kind> => dealing.kind === kind)
}

function changesIn(dealings: readonly Dealing[]): readonly ChangeOrderState[] {
  const answers = new Map<DealingId, DealingOf<'changeAnswered'>>(
    ofKind(dealings, 'changeAnswered').map((answer) => [answer.changeId, answer]),
  )
  return ofKind(dealings, 'changeOffered').map((change) => ({
    change,
    answer: answers.get(change.id) ?? null,
  }))
}

/** A credit invoice and the one it takes back are nothing together; whatever was paid of that goes to the others. */
function settle(invoices: readonly DealingOf<'invoiced'>[], paid: Cents): readonly InvoiceState[] {
  const creditOf = new Map(invoices.map((invoice) => [invoice.credits, invoice]))
  let left: number = paid
  return invoices.map((invoice) => {
    const money = sumMoney(invoice.lines)
    const creditedBy = creditOf.get(invoice.id) ?? null
    if (creditedBy !== null || invoice.credits !== null)
      return { invoice, money, openCents: roundToCents(0), creditedBy }
    const total = totalCents(money)
    const covered = total < 0 ? total : Math.min(Math.max(left, 0), total)
    left -= covered
    return { invoice, money, openCents: roundToCents(total - covered), creditedBy }
  })
}

function stageOf(dealings: readonly Dealing[], workHasBegun: boolean, isSettled: boolean): Stage {
  const last = dealings.findLast(({ kind }) => kind === 'quoted' || kind === 'accepted' || kind === 'lost')
  if (last === undefined) return 'notQuoted'
  if (last.kind !== 'accepted') return last.kind === 'lost' ? 'lost' : 'quoted'
  if (dealings.some(({ kind }) => kind === 'finished')) return isSettled ? 'paid' : 'finished'
  return workHasBegun || dealings.some(({ kind }) => kind === 'begun') ? 'underWay' : 'accepted'
}
