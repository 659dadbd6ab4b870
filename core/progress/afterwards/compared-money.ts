import type { Agreement } from '../../agreement/agreement.ts'
import type { Estimate } from '../../price/estimate-types.ts'
import { meanWage } from '../../price/labour-costs.ts'
import { type Job, records } from '../../project/job.ts'
import { type Cents, roundToCents, sumCents } from '../../units/money.ts'
import type { ComparedStep } from './compared-hours.ts'

/** One line of money: as priced, and as it came out; null where nothing was written down, and then the priced figure counts in the sum. */
interface ComparedMoney {
  readonly key: 'labour' | 'around' | 'material' | 'sundry' | 'other'
  readonly label: string
  readonly plannedCents: Cents
  readonly realCents: Cents | null
}

/** What a job cost and what it left, as priced and as it came out. */
export interface JobMoney {
  readonly lines: readonly ComparedMoney[]
  readonly cost: { readonly plannedCents: Cents; readonly realCents: Cents }
  readonly overheadCents: Cents
  /** The agreed price before tax, changes in it; the estimate's where nothing is agreed. */
  readonly priceCents: Cents
  readonly isAgreed: boolean
  /** Price less cost and overhead: profit, and what of the contingency was not needed. */
  readonly left: { readonly plannedCents: Cents; readonly realCents: Cents }
}

/** Labor of done steps by the minutes worked at the wages of those who worked; other labor as priced; goods by their receipts. */
export function comparedMoney(
  job: Job,
  estimate: Estimate,
  steps: readonly ComparedStep[],
  agreement: Agreement,
): JobMoney {
  const { totals } = estimate
  const done = steps.filter(({ isDone }) => isDone)
  const priced = labourCents(job, done, 'planned')
  const around = roundToCents(totals.labour - priced)
  const lines: readonly ComparedMoney[] = [
    {
      key: 'labour',
      label: 'Labor in steps that are done',
      plannedCents: priced,
      realCents: done.length === 0 ? null : labourCents(job, done, 'worked'),
    },
    {
      key: 'around',
      label: 'Labor around it, and of what is left',
      plannedCents: around,
      realCents: null,
    },
    {
      key: 'material',
      label: 'Paint and material',
      plannedCents: totals.materials,
      realCents: receiptCents(job, 'material'),
    },
    {
      key: 'sundry',
      label: 'Sundries',
      plannedCents: totals.sundries,
      realCents: receiptCents(job, 'sundry'),
    },
    {
      key: 'other',
      label: 'Other',
      plannedCents: roundToCents(0),
      realCents: receiptCents(job, 'other'),
    },
  ]
  const cost = {
    plannedCents: sumCents(lines.map(({ plannedCents }) => plannedCents)),
    realCents: sumCents(lines.map(({ plannedCents, realCents }) => realCents ?? plannedCents)),
  }
  const isAgreed = agreement.accepted !== null
  const priceCents = isAgreed ? agreement.agreed.beforeTaxCents : totals.beforeTax
  const leftOf = (cents: Cents) => roundToCents(priceCents - cents - totals.overhead)
  return {
    lines,
    cost,
    overheadCents: totals.overhead,
    priceCents,
    isAgreed,
    left: { plannedCents: leftOf(cost.plannedCents), realCents: leftOf(cost.realCents) },
  }
}

/** The sum of the receipts of a kind; null where there are none. */
export function receiptCents(job: Job, kind: 'material' | 'sundry' | 'other'): Cents | null {
  const own = records(job.receipts).filter((receipt) => receipt.kind === kind)
  return own.length === 0 ? null : sumCents(own.map(({ cents }) => cents))
}

function labourCents(job: Job, steps: readonly ComparedStep[], column: 'planned' | 'worked'): Cents {
  const burden = 1 + job.houseRules.price.burdenPercent / 100
  let cost = 0
  for (const compared of steps) {
    for (const { crewMemberId, minutes } of compared[column]) {
      const own = crewMemberId === null ? undefined : job.crew[crewMemberId]?.wageCents
      cost += (minutes / 60) * (own ?? meanWage(job, compared.step.skill)) * burden
    }
  }
  return roundToCents(cost)
}
