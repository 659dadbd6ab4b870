import type { Job } from '../project/job.ts'
import type { Operation, Specification, Step } from '../specification/types.ts'
import { formatArea, squareFeet, toSquareFeet } from '../units/area.ts'
import { feet, formatLength, toFeet } from '../units/length.ts'
import { type Cents, formatCents, roundToCents } from '../units/money.ts'

export interface SundryLine {
  readonly key: string
  readonly name: string
  /** Whole pieces to buy; null for the allowance by the hour. */
  readonly pieces: number | null
  readonly priceCents: Cents
  readonly derivation: string
}

interface SundryRule {
  readonly key: string
  readonly name: string
  readonly operations: readonly Operation[]
  readonly measure: 'length' | 'area' | 'count' | 'each'
  /** Feet, square feet or pieces one of them serves. */
  readonly perPiece: number
  readonly pieceCents: number
}

/** Contents and prices are shop assumptions. */
const sundryRules: readonly SundryRule[] = [
  {
    key: 'tape',
    name: 'Masking tape, roll',
    operations: ['maskOff'],
    measure: 'length',
    perPiece: 180,
    pieceCents: 700,
  },
  {
    key: 'abrasive',
    name: 'Abrasive sheet',
    operations: ['sand', 'sandPatch', 'sandFill'],
    measure: 'area',
    perPiece: 80,
    pieceCents: 120,
  },
  {
    key: 'sheeting',
    name: 'Floor covering and sheeting, per room',
    operations: ['protectRoom'],
    measure: 'each',
    perPiece: 1,
    pieceCents: 1400,
  },
  {
    key: 'bags',
    name: 'Bag and label for what comes off',
    operations: ['takeOff'],
    measure: 'count',
    perPiece: 1,
    pieceCents: 15,
  },
]

/** What is used up besides paint, by quantity; brushes, covers and rags by the hour as the house rules say. */
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
      name: 'Brushes, roller covers, rags',
      pieces: null,
      priceCents: roundToCents(hours * perHour),
      derivation: `${hours.toFixed(2)} h x ${formatCents(perHour)} per hour (house rule)`,
    },
  ]
}

function sundryLine(job: Job, rule: SundryRule, steps: readonly Step[]): readonly SundryLine[] {
  const amount = steps
    .filter((step) => rule.operations.includes(step.operation))
    .reduce((total, step) => total + measured(rule, step), 0)
  if (amount === 0) return []
  const pieces = Math.ceil(amount / rule.perPiece - 1e-9)
  return [
    {
      key: rule.key,
      name: rule.name,
      pieces,
      priceCents: roundToCents(pieces * rule.pieceCents),
      derivation: `${amountText(job, rule, amount)} / ${amountText(job, rule, rule.perPiece)} each = ${pieces} at ${formatCents(rule.pieceCents)} (shop assumption)`,
    },
  ]
}

function measured(rule: SundryRule, step: Step): number {
  switch (rule.measure) {
    case 'length':
      return toFeet(step.amounts.length)
    case 'area':
      return toSquareFeet(step.amounts.area)
    case 'count':
      return step.amounts.count
    case 'each':
      return 1
  }
}

function amountText(job: Job, rule: SundryRule, value: number): string {
  const system = job.header.unitSystem
  if (rule.measure === 'length') return formatLength(feet(value), system)
  if (rule.measure === 'area') return formatArea(squareFeet(value), system)
  return String(value)
}
