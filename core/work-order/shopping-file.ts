import { toLitres } from '../units/volume.ts'
import { csvText } from './csv.ts'
import type { ShoppingLine } from './document-types.ts'

const columns = [
  'neededOn',
  'count',
  'container',
  'containerGallons',
  'containerLitres',
  'item',
  'productClass',
  'colour',
  'sheen',
  'neededInAllGallons',
  'neededInAllLitres',
  'unitPriceCents',
  'priceCents',
] as const

/** The shopping list as a file for a shop or a spreadsheet; column names carry their units. */
export function shoppingFile(lines: readonly ShoppingLine[]): string {
  return csvText(columns, lines.map(rowOf))
}

function rowOf(line: ShoppingLine): readonly (string | number | null)[] {
  return [
    line.neededOn,
    line.count,
    line.container,
    rounded(line.containerGallons),
    rounded(litres(line.containerGallons)),
    line.item,
    line.productClass,
    line.colour,
    line.sheen,
    rounded(line.neededGallons),
    rounded(litres(line.neededGallons)),
    line.unitPriceCents,
    line.priceCents,
  ]
}

function litres(gallons: number | null): number | null {
  return gallons === null ? null : toLitres(gallons)
}

function rounded(value: number | null): number | null {
  return value === null ? null : Number(value.toFixed(3))
}
