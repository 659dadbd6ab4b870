import type { LengthUnitSystem } from './length.ts'

export function toFahrenheit(celsius: number): number {
  return celsius * 1.8 + 32
}

/** `54 °F` or `12.3 °C`; the number and its unit stay on one line. */
export function formatTemperature(celsius: number, system: LengthUnitSystem): string {
  return system === 'imperial'
    ? `${toFahrenheit(celsius).toFixed(0)}\u00a0°F`
    : `${Number(celsius.toFixed(1))}\u00a0°C`
}

/** How far two temperatures lie apart. */
export function formatKelvins(kelvins: number, system: LengthUnitSystem): string {
  return system === 'imperial' ? `${(kelvins * 1.8).toFixed(0)}\u00a0°F` : `${kelvins}\u00a0°C`
}
