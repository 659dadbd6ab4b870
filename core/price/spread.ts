import type { Product } from '../project/shop-records.ts'
import { formatArea, roughArea, squareFeet } from '../units/area.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import { litresPerGallon, squareFeetMilsPerGallon } from '../units/volume.ts'

/**
 * Square feet one gallon covers when nothing is lost: 1604.1667 x solids / film (exact constant; the trade prints 1604).
 * Solids in percent by volume, film in mils dry. Formula: coatings guides, trade practice.
 */
export function theoreticalSpread(volumeSolidsPercent: number, dryFilmMils: number): number {
  return (squareFeetMilsPerGallon * (volumeSolidsPercent / 100)) / dryFilmMils
}

/** Film to put on for a dry one, what a comb gauge should show: dry film / volume solids (MIL-HDBK-1110 s. 2.1.5). In the unit of the dry one. */
export function wetFilm({
  dryFilmMils,
  volumeSolidsPercent,
}: Pick<Product, 'volumeSolidsPercent' | 'dryFilmMils'>): number {
  return (dryFilmMils * 100) / volumeSolidsPercent
}

/** Square feet per gallon after `lossPercent` stays in the tray, the roller and the texture. */
export function practicalSpread(
  product: Pick<Product, 'volumeSolidsPercent' | 'dryFilmMils' | 'lossPercent'>,
): number {
  const { volumeSolidsPercent, dryFilmMils, lossPercent } = product
  return theoreticalSpread(volumeSolidsPercent, dryFilmMils) * (1 - lossPercent / 100)
}

/** `313 sq ft per gal` or `7.68 m² per L`. */
export function spreadText(squareFeetPerGallon: number, system: LengthUnitSystem): string {
  return system === 'imperial'
    ? `${roughArea(squareFeet(squareFeetPerGallon), 'imperial')} per gal`
    : `${formatArea(squareFeet(squareFeetPerGallon / litresPerGallon), 'metric')} per L`
}

/** `1.5 mil` or `38 µm`; a film in mils. */
export function filmText(mils: number, system: LengthUnitSystem): string {
  return system === 'imperial' ? `${Number(mils.toFixed(2))} mil` : `${(mils * 25.4).toFixed(0)} µm`
}
