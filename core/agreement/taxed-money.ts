import type { Money } from '../project/agreement-records.ts'
import { type Cents, roundToCents, sumCents } from '../units/money.ts'

export const noMoney: Money = moneyOf(0, 0)

/** Whole cents before tax, and the tax on them. */
export function moneyOf(beforeTax: number, tax: number): Money {
  return { beforeTaxCents: roundToCents(beforeTax), taxCents: roundToCents(tax) }
}

/** Sums the amounts before tax and the tax apart, so that the tax of each stays as it was rounded. */
export function sumMoney(amounts: readonly Money[]): Money {
  return {
    beforeTaxCents: sumCents(amounts.map(({ beforeTaxCents }) => beforeTaxCents)),
    taxCents: sumCents(amounts.map(({ taxCents }) => taxCents)),
  }
}

/** What is left of an amount when another is taken away; less than nothing where more is taken. */
export function lessMoney(amount: Money, taken: Money): Money {
  return moneyOf(amount.beforeTaxCents - taken.beforeTaxCents, amount.taxCents - taken.taxCents)
}

/** With tax. */
export function totalCents({ beforeTaxCents, taxCents }: Money): Cents {
  return sumCents([beforeTaxCents, taxCents])
}

/** A part of an amount, rounded to the cent once before tax and once for the tax. */
export function shareOfMoney({ beforeTaxCents, taxCents }: Money, percent: number): Money {
  return moneyOf((beforeTaxCents * percent) / 100, (taxCents * percent) / 100)
}

/** True only where neither the amount nor its tax is there. */
export function isNothing({ beforeTaxCents, taxCents }: Money): boolean {
  return beforeTaxCents === 0 && taxCents === 0
}
