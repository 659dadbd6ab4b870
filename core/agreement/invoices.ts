import type { DealingId, DealingOf, Money, PaymentStep } from '../project/agreement-records.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import { type Agreement, agreedChanges } from './agreement.ts'
import { isNothing, lessMoney, noMoney, shareOfMoney, sumMoney, totalCents } from './taxed-money.ts'

export type InvoiceLine = DealingOf<'invoiced'>['lines'][number]

/** What an invoice asks for. */
export type InvoiceAsk =
  /** The next steps of payment up to this one, counted from 0. */
  | { readonly kind: 'step'; readonly step: number }
  /** As much of the agreed price as is done, in percent of the work. */
  | { readonly kind: 'done'; readonly percent: number }
  /** All that is agreed and in no invoice yet. */
  | { readonly kind: 'rest' }

/**
 * The lines of the next invoice: the agreed price up to a share of it less what earlier invoices asked for it, and the same for every
 * change agreed. Each is rounded to the cent against the sum so far, so that all invoices together are the agreed sum exactly. Steps ask for
 * the agreed price alone, and the last of them for everything.
 */
export function invoiceLines(agreement: Agreement, ask: InvoiceAsk): Outcome<readonly InvoiceLine[]> {
  const { quote, accepted, contract, changes } = agreement
  if (quote === null || accepted === null)
    return fail('notAllowed', 'Nothing is agreed yet: an invoice needs an accepted quote.')
  const share = shareOf(ask, quote.steps)
  const parts: readonly AgreedPart[] = [
    { changeId: null, label: 'Agreed price', money: contract, percent: share.contract },
    ...agreedChanges(changes).map((change) => ({
      changeId: change.id,
      label: `Change order ${change.number}: ${change.title}`.slice(0, longestLabel),
      money: change,
      percent: share.changes,
    })),
  ]
  const lines = parts.flatMap((part) => {
    const line = lineOf(part, askedBefore(agreement, part.changeId))
    // Less may be done than was asked for already: a progress invoice takes nothing back.
    const goesBack = totalCents(line) * totalCents(part.money) < 0
    return isNothing(line) || (ask.kind === 'done' && goesBack) ? [] : [line]
  })
  if (lines.length === 0 || (ask.kind !== 'rest' && totalCents(sumMoney(lines)) <= 0))
    return fail('notAllowed', 'Earlier invoices have already billed all of this.')
  return succeed(lines)
}

/** `Invoice 3`, or `Credit invoice 4` for one that takes another back. */
export function invoiceName({ number, credits }: Pick<DealingOf<'invoiced'>, 'number' | 'credits'>): string {
  return `${credits === null ? 'Invoice' : 'Credit invoice'} ${number}`
}

/** The lines that take an invoice back, each whole. What it asked for can then be asked for again, rightly. */
export function creditLines({ invoices }: Agreement, invoiceId: DealingId): Outcome<readonly InvoiceLine[]> {
  const state = invoices.find(({ invoice }) => invoice.id === invoiceId)
  if (state === undefined) return fail('notFound', 'There is no such invoice.', [invoiceId])
  const { invoice, creditedBy } = state
  if (creditedBy !== null)
    return fail('notAllowed', `Invoice ${invoice.number} was taken back by ${creditedBy.number} already.`)
  if (invoice.credits !== null)
    return fail('notAllowed', 'A credit invoice cannot be taken back. Make the right invoice instead.')
  return succeed(
    invoice.lines.map(({ changeId, label, ...money }) => ({
      changeId,
      label: `Taken back: ${label}`.slice(0, longestLabel),
      ...lessMoney(noMoney, money),
    })),
  )
}

const longestLabel = 150

interface AgreedPart {
  readonly changeId: DealingId | null
  readonly label: string
  readonly money: Money
  /** Of it that is asked for by now. */
  readonly percent: number
}

function lineOf({ changeId, label, money, percent }: AgreedPart, before: Money): InvoiceLine {
  const asked = lessMoney(shareOfMoney(money, percent), before)
  const words = percent === 100 && isNothing(before) ? label : `${label}, up to ${percentWords(percent)}`
  return { changeId, label: words, ...asked }
}

/** What earlier invoices asked for the agreed price, or for one change. */
export function askedBefore({ invoices }: Agreement, changeId: DealingId | null): Money {
  return sumMoney(
    invoices.flatMap(({ invoice }) => invoice.lines.filter((line) => line.changeId === changeId)),
  )
}

function shareOf(
  ask: InvoiceAsk,
  steps: readonly PaymentStep[],
): { readonly contract: number; readonly changes: number } {
  switch (ask.kind) {
    case 'step': {
      if (ask.step >= steps.length - 1) return { contract: 100, changes: 100 }
      const sum = steps.slice(0, ask.step + 1).reduce((all, { percent }) => all + percent, 0)
      return { contract: Math.min(100, sum), changes: 0 }
    }
    case 'done':
      return { contract: ask.percent, changes: ask.percent }
    case 'rest':
      return { contract: 100, changes: 100 }
  }
}

/** `12.5%`. */
function percentWords(percent: number): string {
  return `${Math.round(percent * 100) / 100}%`
}
