import type { BuiltItem } from './built-records.ts'

type Radiator = Extract<BuiltItem, { readonly kind: 'radiator' }>

/**
 * Heating surface, which is the surface to coat, in square feet per section: rows by height in inches, columns 1 to 6.
 * Source: a boiler maker's guide (seen manuzoid.com). Null where the table has no figure.
 */
const columnSurface: Readonly<Record<number, readonly (number | null)[]>> = {
  20: [1.5, 2, null, null],
  23: [5 / 3, 7 / 3, null, null],
  26: [2, 8 / 3, 3.75, 5],
  32: [2.5, 10 / 3, 4.5, 6.5],
  38: [3, 4, 5, 8],
}

const tubeSurface: Readonly<Record<number, readonly (number | null)[]>> = {
  20: [null, null, 1.75, 2.25, 8 / 3, 3],
  23: [null, null, 2, 2.5, 3, 3.5],
  26: [null, null, 7 / 3, 2.75, 3.5, 4],
  32: [null, null, 3, 3.5, 13 / 3, 5],
  38: [null, null, 3.5, 4.25, 5, 6],
}

/** Square feet per section; null for a radiator the table does not know. */
export function radiatorSectionSquareFeet(
  radiator: Pick<Radiator, 'pattern' | 'columns' | 'heightInches'>,
): number | null {
  const table = radiator.pattern === 'column' ? columnSurface : tubeSurface
  return table[radiator.heightInches]?.[radiator.columns - 1] ?? null
}
