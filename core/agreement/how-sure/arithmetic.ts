/**
 * Logarithm and power by sums, products and quotients alone, which IEEE 754 rounds alike on every machine; `Math.log` and `Math.exp` may
 * differ in the last digit from engine to engine, and then the same price would not be equally sure everywhere.
 */

/** The natural logarithm of a number above 0, to about 15 digits: halved or doubled until it is near 1, then the series of artanh. */
export function naturalLog(value: number): number {
  let near = value
  let halvings = 0
  while (near > Math.SQRT2) {
    near /= 2
    halvings++
  }
  while (near < Math.SQRT1_2) {
    near *= 2
    halvings--
  }
  const part = (near - 1) / (near + 1)
  let sum = 0
  for (let odd = 25; odd >= 1; odd -= 2) sum = sum * part * part + 1 / odd
  return 2 * part * sum + halvings * Math.LN2
}

/** e to a power between -700 and 700, to about 15 digits: whole doublings apart, then the power series. */
export function exponential(power: number): number {
  const doublings = Math.round(power / Math.LN2)
  const rest = power - doublings * Math.LN2
  let value = 1
  for (let term = 18; term >= 1; term--) value = 1 + (value * rest) / term
  for (let left = Math.abs(doublings); left > 0; left--) value = doublings > 0 ? value * 2 : value / 2
  return value
}
