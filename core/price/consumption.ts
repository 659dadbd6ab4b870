import type { Product } from '../project/shop-records.ts'
import type { ProductClass } from '../project/vocabulary.ts'
import type { Step } from '../specification/types.ts'
import { roughArea, squareFeet, toSquareFeet } from '../units/area.ts'
import { type LengthUnitSystem, roughLength, toFeet } from '../units/length.ts'
import { formatVolume, type Gallons, gallons } from '../units/volume.ts'
import { filmText, practicalSpread, spreadText, theoreticalSpread } from './spread.ts'

/** Cubic inches of material per unit of work; 231 cu in are a gallon. All shop assumptions, waste included. */
interface FilledVolume {
  readonly kind: 'filled'
  readonly perFoot: number
  readonly perSquareFoot: number
  readonly perPiece: number
}
/** Liquids wiped on that leave no film worth counting; square feet per gallon ready to use. */
interface WipedOn {
  readonly kind: 'wiped'
  readonly squareFeetPerGallon: number
}
interface FilmOf {
  readonly kind: 'film'
}

const film: FilmOf = { kind: 'film' }
/** A crack opened to a V about 1/4 in wide and deep with its feathered edge; a patch or skim 1/16 in thick (9 cu in per sq ft). */
const filler: FilledVolume = { kind: 'filled', perFoot: 1, perSquareFoot: 9, perPiece: 0.5 }

const consumptionByClass: Partial<Record<ProductClass, FilledVolume | WipedOn>> = {
  dryingFiller: filler,
  settingFiller: filler,
  lightFiller: filler,
  woodFiller: filler,
  acrylicCaulk: { kind: 'filled', perFoot: 0.5, perSquareFoot: 6, perPiece: 0.5 },
  glazingPutty: { kind: 'filled', perFoot: 0.75, perSquareFoot: 9, perPiece: 1 },
  liquidDeglosser: { kind: 'wiped', squareFeetPerGallon: 250 },
  cleaner: { kind: 'wiped', squareFeetPerGallon: 400 },
  mildewWash: { kind: 'wiped', squareFeetPerGallon: 250 },
}

function consumptionOf(productClass: ProductClass): FilledVolume | WipedOn | FilmOf {
  return consumptionByClass[productClass] ?? film
}

/** It is spread at a film thickness; fillers, washes and caulk are used up by the foot, the area or the piece. */
export function isFilmProduct(product: Product): boolean {
  return consumptionOf(product.productClass).kind === 'film'
}

/**
 * Square feet wetted by a step. Spot work measured by length takes a strip 4 in wide: 2 in of repair and 1 in of overlap on
 * each side (overlap: MIL-HDBK-1110 s. 4.4); by the piece, a spot 4 in across. The strip and spot are shop assumptions.
 */
function wettedSquareFeet(step: Step): number {
  const { area, length, count } = step.amounts
  if (area > 0) return toSquareFeet(area)
  return toFeet(length) / 3 + count / 9
}

/** What one step takes of its product, exact; bought amounts are rounded up only when containers are chosen. */
export function stepGallons(product: Product, step: Step): Gallons {
  const use = consumptionOf(product.productClass)
  switch (use.kind) {
    case 'film':
      return gallons(wettedSquareFeet(step) / practicalSpread(product))
    case 'wiped':
      return gallons(wettedSquareFeet(step) / use.squareFeetPerGallon)
    case 'filled':
      return gallons(filledCubicInches(use, step) / 231)
  }
}

function filledCubicInches(use: FilledVolume, step: Step): number {
  const { area, length, count } = step.amounts
  return toFeet(length) * use.perFoot + toSquareFeet(area) * use.perSquareFoot + count * use.perPiece
}

/** How the gallons of a product came about, in the job's units. */
export function consumptionText(
  product: Product,
  steps: readonly Step[],
  total: Gallons,
  system: LengthUnitSystem,
): string {
  const use = consumptionOf(product.productClass)
  const volume = formatVolume(total, system)
  if (use.kind === 'filled') return `${filledText(steps, system)} = ${volume} (shop assumption)`
  const area = roughArea(squareFeet(steps.reduce((sum, step) => sum + wettedSquareFeet(step), 0)), system)
  if (use.kind === 'wiped') {
    return `${area} wiped / ${spreadText(use.squareFeetPerGallon, system)} (shop assumption) = ${volume}`
  }
  const theory = spreadText(theoreticalSpread(product.volumeSolidsPercent, product.dryFilmMils), system)
  const practice = spreadText(practicalSpread(product), system)
  return (
    `${area} over all coats / ${practice} = ${volume} ` +
    `(theory ${theory} at ${product.volumeSolidsPercent}% solids and ${filmText(product.dryFilmMils, system)} dry, less ${product.lossPercent}% loss)`
  )
}

function filledText(steps: readonly Step[], system: LengthUnitSystem): string {
  const sum = (of: (step: Step) => number) => steps.reduce((total, step) => total + of(step), 0)
  const [length, area, count] = [
    sum((step) => step.amounts.length),
    sum((step) => step.amounts.area),
    sum((step) => step.amounts.count),
  ]
  const parts = [
    ...(length > 0 ? [roughLength(length, system)] : []),
    ...(area > 0 ? [roughArea(area, system)] : []),
    ...(count > 0 ? [`${count} spots`] : []),
  ]
  return parts.length === 0 ? 'nothing measured' : parts.join(' + ')
}
