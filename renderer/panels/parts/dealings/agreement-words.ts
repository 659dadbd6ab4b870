import { totalCents } from '../../../../core/agreement/taxed-money.ts'
import type { Money } from '../../../../core/project/agreement-records.ts'
import { signedCents } from '../../../../core/units/money.ts'

/** `+ $120.00` or `− $120.00`, with tax. */
export function signedMoney(money: Money): string {
  return signedCents(totalCents(money))
}
