import type { Job } from '../project/job.ts'
import type { Specification, Step } from '../specification/types.ts'
import { type Cents, formatCents, roundToCents } from '../units/money.ts'
import { basisAmount } from './rate-names.ts'
import { type SundryRule, sundryRules } from './sundry-rules.ts'

export interface SundryLine {
  readonly key: string
  readonly name: string
  /** Whole pieces to buy; null for the allowance by the hour. */
  readonly pieces: number | null
  readonly priceCents: Cents
  readonly derivation: string
}

/** What is used up besides paint, by quantity; rags and small things by the hour as the house rules say. */
export function sundries(
  job: Job,
  specification: Specification,
  labourMinutes: number,
): readonly SundryLine[] {
  const byQuantity = sundryRules.flatMap((rule) => sundryLine(job, rule, specification.steps))
  const perHour = job.houseRules.price.sundriesCentsPerHour
  if (perHour === 0 || labourMinutes === 0) return byQuantity
  const hours = labourMinutes / 60
  return [
    ...byQuantity,
    {
      key: 'byTheHour',
      name: 'Rags, trays and small things',
      pieces: null,
      priceCents: roundToCents(hours * perHour),
      derivation: `${hours.toFixed(2)} h x ${formatCents(perHour)} per hour (house rule)`,
    },
  ]
}

function sundryLine(job: Job, rule: SundryRule, steps: readonly Step[]): readonly SundryLine[] {
  const amount = steps.reduce((total, step) => total + rule.amount(step), 0)
  if (amount === 0) return []
  const pieces = piecesOf(rule, amount)
  return [
    {
      key: rule.key,
      name: rule.name,
      pieces,
      priceCents: roundToCents(pieces * rule.pieceCents),
      derivation: `${neededText(job, rule, amount)} at ${formatCents(roundToCents(rule.pieceCents))} (shop assumption)`,
    },
  ]
}

function piecesOf(rule: SundryRule, amount: number): number {
  return Math.ceil(amount / rule.perPiece - 1e-9)
}

/** `735 ft / 180 ft each = 5`; what goes by the piece as its number alone. */
function neededText({ header }: Job, rule: SundryRule, amount: number): string {
  const pieces = piecesOf(rule, amount)
  if (rule.measure === 'count' && rule.perPiece === 1) return String(pieces)
  const [all, each] = [amount, rule.perPiece].map((value) =>
    basisAmount(rule.measure, value, header.unitSystem),
  )
  return `${all} / ${each} each = ${pieces}`
}
