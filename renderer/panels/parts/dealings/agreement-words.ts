import { totalCents } from '../../../../core/agreement/taxed-money.ts'
import type { Money } from '../../../../core/project/agreement-records.ts'
import { formatCents } from '../../../../core/units/money.ts'

/** `+ $120.00` or `− $120.00`, with tax. */
export function signedMoney(money: Money): string {
  const total = totalCents(money)
  return `${total < 0 ? '−' : '+'} ${formatCents(Math.abs(total))}`
}
