import fc from 'fast-check'
import { agreementOf } from '../../core/agreement/agreement.ts'
import { creditLines, type InvoiceAsk, invoiceLines } from '../../core/agreement/invoices.ts'
import type { Dealing, DealingId, OptionId } from '../../core/project/agreement-records.ts'
import type { Cents } from '../../core/units/money.ts'

export const cents = (value: number) => value as Cents
export const dealingId = (text: string) => text as DealingId
export const optionId = (text: string) => text as OptionId

const money = fc.record({
  beforeTaxCents: fc.integer({ min: -300_000, max: 3_000_000 }).map(cents),
  taxCents: fc.integer({ min: -20_000, max: 200_000 }).map(cents),
})

/** What may happen after a quote was accepted, before anything is known of the deal it happens in. */
const happenings = fc.oneof(
  fc.record({ kind: fc.constant('change' as const), money, isAgreed: fc.boolean() }),
  fc.record({
    kind: fc.constant('invoice' as const),
    ask: fc.oneof(
      fc.record({ kind: fc.constant('step' as const), step: fc.integer({ min: 0, max: 3 }) }),
      fc.record({
        kind: fc.constant('done' as const),
        percent: fc.double({ min: 0, max: 100, noNaN: true }),
      }),
    ),
  }),
  fc.record({ kind: fc.constant('credit' as const), invoice: fc.integer({ min: 1, max: 4 }) }),
  fc.record({ kind: fc.constant('payment' as const), cents: fc.integer({ min: -5000, max: 2_000_000 }) }),
)
type Happening = typeof happenings extends fc.Arbitrary<infer Value> ? Value : never

/** Deals from an accepted quote through changes, invoices and payments, as the program would write them down. */
export const deals: fc.Arbitrary<readonly Dealing[]> = fc
  .record({
    lines: fc.array(money, { minLength: 1, maxLength: 6 }),
    options: fc.array(fc.tuple(money, fc.boolean()), { maxLength: 4 }),
    taken: money,
    percents: fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 4 }),
    happenings: fc.array(happenings, { maxLength: 12 }),
  })
  .map(({ lines, options, taken, percents, happenings: later }) => {
    const start: readonly Dealing[] = [
      {
        id: dealingId('quote'),
        kind: 'quoted',
        on: '2027-03-01',
        number: 1,
        validUntil: null,
        lines: lines.map((line, index) => ({ label: `Room ${index}`, ...line })),
        options: options.map(([price], index) => ({
          id: optionId(`option-${index}`),
          name: `Option ${index}`,
          note: '',
          changes: [],
          oneOf: '',
          ...price,
        })),
        steps: percents.map((percent, index) => ({ name: `Step ${index}`, percent, when: '' })),
      },
      {
        id: dealingId('yes'),
        kind: 'accepted',
        on: '2027-03-02',
        quoteId: dealingId('quote'),
        by: 'A. Client',
        optionIds: options.flatMap(([, isTaken], index) => (isTaken ? [optionId(`option-${index}`)] : [])),
        together: taken,
        counted: { beforeTaxCents: cents(0), taxCents: cents(0) },
      },
    ]
    return later.reduce(happen, start)
  })

function happen(dealings: readonly Dealing[], happening: Happening, index: number): readonly Dealing[] {
  const on = '2027-03-10'
  switch (happening.kind) {
    case 'change': {
      const number = dealings.filter(({ kind }) => kind === 'changeOffered').length + 1
      const changeId = dealingId(`change-${number}`)
      return [
        ...dealings,
        {
          id: changeId,
          kind: 'changeOffered',
          on,
          number,
          title: 'Change',
          why: '',
          changes: [],
          ...happening.money,
          minutes: { before: 0, after: 0 },
          finishesOn: { before: null, after: null },
          moves: [],
        },
        {
          id: dealingId(`answer-${number}`),
          kind: 'changeAnswered',
          on,
          changeId,
          answer: happening.isAgreed ? 'agreed' : 'declined',
          by: 'A. Client',
          why: '',
        },
      ]
    }
    case 'invoice':
      return invoiced(dealings, happening.ask)
    case 'credit':
      return credited(dealings, dealingId(`invoice-${happening.invoice}`))
    case 'payment':
      return [
        ...dealings,
        {
          id: dealingId(`paid-${index}`),
          kind: 'paid',
          on,
          cents: cents(happening.cents),
          how: 'check',
          note: '',
        },
      ]
  }
}

/** The deal with one invoice more; unchanged where there is nothing to ask for. */
export function invoiced(dealings: readonly Dealing[], ask: InvoiceAsk): readonly Dealing[] {
  const lines = invoiceLines(agreementOf(dealings, true), ask)
  const number = dealings.filter(({ kind }) => kind === 'invoiced').length + 1
  if (!lines.ok) return dealings
  const id = dealingId(`invoice-${number}`)
  return [
    ...dealings,
    {
      id,
      kind: 'invoiced',
      on: '2027-04-01',
      number,
      title: 'Invoice',
      credits: null,
      dueOn: null,
      lines: lines.value,
    },
  ]
}

/** The deal with an invoice taken back; unchanged where it cannot be. */
export function credited(dealings: readonly Dealing[], invoiceId: DealingId): readonly Dealing[] {
  const lines = creditLines(agreementOf(dealings, true), invoiceId)
  const number = dealings.filter(({ kind }) => kind === 'invoiced').length + 1
  if (!lines.ok) return dealings
  return [
    ...dealings,
    {
      id: dealingId(`invoice-${number}`),
      kind: 'invoiced',
      on: '2027-04-01',
      number,
      title: 'Credit',
      credits: invoiceId,
      dueOn: null,
      lines: lines.value,
    },
  ]
}
