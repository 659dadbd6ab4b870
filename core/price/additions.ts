import type { HouseRules } from '../project/job.ts'
import { type Cents, formatCents, roundToCents, sumCents } from '../units/money.ts'
import type { EstimateLine, EstimateLineKind } from './estimate-types.ts'

type PriceRules = HouseRules['price']

/** Overhead, contingency, profit and tax on top of the direct cost lines, each rounded once. */
export function additions(rules: PriceRules, direct: readonly EstimateLine[]): readonly EstimateLine[] {
  const cost = sumCents(direct.map((line) => line.cents))
  const overhead = percentLine(
    'overhead',
    'Overhead',
    rules.overheadPercent,
    cost,
    'labor, materials and sundries',
  )
  const withOverhead = roundToCents(cost + overhead.cents)
  const contingency = percentLine(
    'contingency',
    'Contingency for hidden conditions',
    rules.contingencyPercent,
    withOverhead,
    'cost and overhead',
  )
  const beforeProfit = roundToCents(withOverhead + contingency.cents)
  const profit = profitLine(rules.profit, beforeProfit)
  const priced = roundToCents(beforeProfit + profit.cents)
  return [overhead, contingency, profit, ...taxLines(rules, direct, cost, priced)].filter(
    (line) => line.cents !== 0,
  )
}

function additionLine(kind: EstimateLineKind, label: string, cents: Cents, derivation: string): EstimateLine {
  return { kind, key: kind, label, roomId: null, surfaceClass: null, cents, derivation }
}

function percentLine(
  kind: EstimateLineKind,
  label: string,
  percent: number,
  of: Cents,
  ofWhat: string,
): EstimateLine {
  const cents = roundToCents((of * percent) / 100)
  return additionLine(kind, label, cents, `${percent}% of ${formatCents(of)} (${ofWhat})`)
}

/** Markup is a share of cost; margin is a share of the price: 20% margin is 25% markup. */
function profitLine(profit: PriceRules['profit'], cost: Cents): EstimateLine {
  const { basis, percent } = profit
  if (basis === 'markup') {
    const cents = roundToCents((cost * percent) / 100)
    return additionLine('profit', 'Profit (markup)', cents, `markup of ${percent}% on ${formatCents(cost)}`)
  }
  const cents = roundToCents((cost * percent) / (100 - percent))
  return additionLine(
    'profit',
    'Profit (margin)',
    cents,
    `margin: ${percent}% of the price before tax, that is ${formatCents(cost)} x ${percent} / ${100 - percent}`,
  )
}

/**
 * Materials and sundries are taxed on what the shop pays for them; labour, where it is taxed at all, on its share of the price
 * charged. What is taxed differs from place to place: shop assumption, to be set by local rules.
 */
function taxLines(
  rules: PriceRules,
  direct: readonly EstimateLine[],
  cost: Cents,
  priced: Cents,
): readonly EstimateLine[] {
  const goods = sumCents(direct.filter((line) => line.kind !== 'labour').map((line) => line.cents))
  const work = sumCents(direct.filter((line) => line.kind === 'labour').map((line) => line.cents))
  const workPrice = roundToCents(cost === 0 ? 0 : (priced * work) / cost)
  return [
    percentLine(
      'materialsTax',
      'Tax on materials and sundries',
      rules.materialsTaxPercent,
      goods,
      'materials and sundries at cost',
    ),
    percentLine('labourTax', 'Tax on labor', rules.labourTaxPercent, workPrice, "labor's share of the price"),
  ]
}
