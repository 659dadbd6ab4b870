import fc from 'fast-check'
import { expect, test } from 'vitest'
import { agreedChanges, agreementOf, contractOf } from '../../core/agreement/agreement.ts'
import { sumMoney, totalCents } from '../../core/agreement/taxed-money.ts'
import { credited, deals, invoiced } from './random-deals.ts'

test('invoices and what is open are the contract with the changes agreed, before tax and in tax', () => {
  fc.assert(
    fc.property(deals, (dealings) => {
      const deal = agreementOf(dealings, true)
      expect(sumMoney([deal.invoiced, deal.toInvoice])).toEqual(
        sumMoney([deal.contract, ...agreedChanges(deal.changes)]),
      )
      expect(deal.invoiced).toEqual(sumMoney(deal.invoices.flatMap(({ invoice }) => invoice.lines)))
      expect(totalCents(deal.toInvoice) + deal.dueCents).toBe(deal.balanceCents)
      expect(deal.balanceCents + deal.paidCents).toBe(totalCents(deal.agreed))
    }),
  )
})

test('an invoice for the rest leaves nothing to ask for, whatever was asked before', () => {
  fc.assert(
    fc.property(deals, (dealings) => {
      const deal = agreementOf(invoiced(dealings, { kind: 'rest' }), true)
      expect(deal.toInvoice).toEqual({ beforeTaxCents: 0, taxCents: 0 })
      expect(deal.dueCents).toBe(deal.balanceCents)
    }),
  )
})

test('the contract is the lines and the options taken as they were quoted, with what these cost together', () => {
  fc.assert(
    fc.property(deals, (dealings) => {
      const { quote, accepted, contract } = agreementOf(dealings, true)
      if (quote === null || accepted === null) throw new Error('these deals are accepted')
      const taken = quote.options.filter(({ id }) => accepted.optionIds.includes(id))
      expect(contract).toEqual(contractOf(quote, accepted))
      expect(totalCents(contract)).toBe(
        [...quote.lines, ...taken, accepted.together].reduce(
          (sum, line) => sum + line.beforeTaxCents + line.taxCents,
          0,
        ),
      )
    }),
  )
})

test('what payments leave open of the invoices is what is due, unless more came in than was asked for', () => {
  fc.assert(
    fc.property(deals, (dealings) => {
      const { invoices, dueCents, paidCents } = agreementOf(dealings, true)
      const open = invoices.reduce((sum, each) => sum + each.openCents, 0)
      for (const { openCents } of invoices) expect(openCents).toBeGreaterThanOrEqual(0)
      const asking = invoices.filter(
        ({ invoice, creditedBy }) => invoice.credits === null && creditedBy === null,
      )
      if (dueCents >= 0 && paidCents >= 0 && asking.every(({ money }) => totalCents(money) >= 0))
        expect(open).toBe(dueCents)
    }),
  )
})

test('an invoice and the credit for it are nothing together: the deal asks for as much as before it', () => {
  fc.assert(
    fc.property(deals, (dealings) => {
      const before = agreementOf(dealings, true)
      const wrong = agreementOf(invoiced(dealings, { kind: 'rest' }), true).invoices.at(-1)?.invoice
      if (wrong === undefined) return
      const after = agreementOf(credited(invoiced(dealings, { kind: 'rest' }), wrong.id), true)
      if (wrong.credits !== null || dealings.some(({ id }) => id === wrong.id)) return
      expect([after.invoiced, after.toInvoice, after.dueCents, after.balanceCents]).toEqual([
        before.invoiced,
        before.toInvoice,
        before.dueCents,
        before.balanceCents,
      ])
      const open = (deal: typeof after) =>
        deal.invoices
          .filter(({ openCents }) => openCents !== 0)
          .map((each) => [each.invoice.id, each.openCents])
      expect(open(after)).toEqual(open(before))
      expect(credited(dealings, wrong.id)).toBe(dealings)
    }),
  )
})
