import { toLitres } from '../units/volume.ts'
import { csvText } from './csv.ts'
import type { ShoppingLine } from './document-types.ts'

const columns = [
  'Trip',
  'Needed on (year-month-day)',
  'Count',
  'Container',
  'Container (US gal)',
  'Container (L)',
  'Item',
  'Brand',
  'Product class',
  'Color',
  'Color code',
  'Sheen',
  'Needed in all (US gal)',
  'Needed in all (L)',
  'To keep for touching up (US gal)',
  'To keep for touching up (L)',
  'Price each ($)',
  'Price ($)',
  'Advice',
] as const

/** The shopping list as a file for a shop or a spreadsheet. Columns carry their units, fields are plain numbers that may be summed. */
export function shoppingFile(lines: readonly ShoppingLine[]): string {
  return csvText(columns, lines.map(rowOf))
}

function rowOf(line: ShoppingLine): readonly (string | number | null)[] {
  return [
    line.trip,
    line.neededOn,
    line.count,
    line.container,
    rounded(line.containerGallons),
    rounded(litres(line.containerGallons)),
    line.item,
    line.brand,
    line.productClass,
    line.colour,
    line.colourCode,
    line.sheen,
    rounded(line.neededGallons),
    rounded(litres(line.neededGallons)),
    ...spareOf(line),
    dollars(line.unitPriceCents),
    dollars(line.priceCents),
    line.advice,
  ]
}

/** Empty where nothing is kept, so that the column can be told from amounts of nothing. */
function spareOf({ spareGallons }: ShoppingLine): readonly (number | null)[] {
  return spareGallons === 0 ? [null, null] : [rounded(spareGallons), rounded(litres(spareGallons))]
}

function dollars(cents: number): number {
  return cents / 100
}

function litres(gallons: number | null): number | null {
  return gallons === null ? null : toLitres(gallons)
}

function rounded(value: number | null): number | null {
  return value === null ? null : Number(value.toFixed(3))
}
