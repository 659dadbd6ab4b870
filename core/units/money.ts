import type { Brand } from './brand.ts'
import { withCommas } from './rough-number.ts'

/** Money in whole cents. Rounded once, at the line, by `roundToCents`. */
export type Cents = Brand<number, 'Cents'>

/** @param value cents, with a fraction; half a cent goes up, and there is no -0 */
export function roundToCents(value: number): Cents {
  const whole = Math.round(value)
  return (whole === 0 ? 0 : whole) as Cents
}

/** Sums exactly, for amounts are whole cents. */
export function sumCents(amounts: readonly Cents[]): Cents {
  return roundToCents(amounts.reduce<number>((total, amount) => total + amount, 0))
}

/** `$1,234.50`; the sign of the currency is the shop's. */
export function formatCents(cents: number, currency = '$'): string {
  const sign = cents < 0 ? '-' : ''
  const whole = Math.floor(Math.abs(cents) / 100)
  const rest = String(Math.abs(cents) % 100).padStart(2, '0')
  return `${sign}${currency}${withCommas(whole)}.${rest}`
}

/** What is more or less: `+ $120.00`, `− $120.00`. */
export function signedCents(cents: number): string {
  return `${cents < 0 ? '−' : '+'} ${formatCents(Math.abs(cents))}`
}
