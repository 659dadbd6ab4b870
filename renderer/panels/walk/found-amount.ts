import type { Condition } from '../../../core/project/survey-records.ts'
import { squareMetres } from '../../../core/units/area.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { areaText, lengthText } from '../parts/entries.ts'

/** `6' 0", 4.0 sq ft`; empty where nobody measured. */
export function foundAmount(
  { length, areaMm2, count }: Pick<Condition, 'length' | 'areaMm2' | 'count'>,
  system: LengthUnitSystem,
): string {
  return [
    lengthText(length, system),
    areaMm2 === null ? '' : areaText(squareMetres(areaMm2 / 1e6), system),
    count === null ? '' : `${count} ×`,
  ]
    .filter((text) => text !== '')
    .join(', ')
}
