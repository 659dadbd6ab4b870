import type { Brand } from './brand.ts'
import type { LengthUnitSystem } from './length.ts'

/** A volume of paint in US gallons. */
export type Gallons = Brand<number, 'Gallons'>

/** 1 US gal = 231 cu in exactly = 3.785411784 L (NIST Handbook 44, App. C; digits from memory, and 231 x 2.54^3 / 1000 agrees). */
export const litresPerGallon = 3.785411784

/** 1 gal spread 1 mil thick covers 231 / 144 / 0.001 sq ft (computed from exact definitions; the trade rounds to 1604). */
export const squareFeetMilsPerGallon = 231 / 144 / 0.001

/** US gallons. */
export function gallons(value: number): Gallons {
  return value as Gallons
}

/** @param volume US gallons */
export function toLitres(volume: number): number {
  return volume * litresPerGallon
}

/** `1.25 gal` or `4.7 L`; small amounts in the measure a painter pours, never less than it takes: `8 fl oz`, `230 ml`. */
export function formatVolume(volume: number, system: LengthUnitSystem): string {
  if (system === 'imperial') {
    return volume < 0.2 ? `${Math.ceil(volume * 128)} fl oz` : `${volume.toFixed(2)} gal`
  }
  const litres = toLitres(volume)
  return litres < 0.75 ? `${Math.ceil(litres * 100) * 10} ml` : `${litres.toFixed(1)} L`
}
