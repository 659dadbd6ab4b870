import { toFahrenheit } from '../../../core/units/temperature.ts'
import { decimalNumber, type Entry, type ReadEntry } from '../parts/entries.ts'

/** One decimal; stored in Celsius to a hundredth, so that whole Fahrenheit degrees come back as typed. */
export function degrees(celsius: number, isMetric: boolean): string {
  const value = isMetric ? celsius : toFahrenheit(celsius)
  return String(Math.round(value * 10) / 10)
}

/** Reads degrees of the units shown into Celsius. The bounds are in Celsius. */
export function degreesEntry([least, most]: readonly [number, number], isMetric: boolean): ReadEntry<number> {
  const shift = (celsius: number) => (isMetric ? celsius : Math.round(toFahrenheit(celsius)))
  const read = decimalNumber(shift(least), shift(most))
  return (text): Entry<number> => {
    const entry = read(text)
    if (!entry.ok || isMetric) return entry
    return { ok: true, value: Math.round(((entry.value - 32) / 1.8) * 100) / 100 }
  }
}
