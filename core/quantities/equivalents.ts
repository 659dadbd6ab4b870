import type { SlabKind } from '../project/vocabulary.ts'
import { type Area, areaFromSquareUnits, areaFromUnits } from '../units/area.ts'

export const equivalentSource =
  'IS 1200 Part 15:1987, table of equivalent plain areas (flat area, not girthed, each side)'

/** Coefficient on the flat area of each side of a door. `partGlazed` is the table's part panelled, part glazed. */
export const slabCoefficients: Readonly<Record<SlabKind, number>> = {
  flush: 1.2,
  panelled: 1.3,
  partGlazed: 1,
  glazed: 0.8,
  louvred: 1.8,
}

/** Fully glazed doors and windows, each side. */
export const sashCoefficient = 0.8

/** Cupboards and pantry shelves, on what is measured (Armstrong, Cyclopedia of Painting, 1908, p. 127). */
export const cupboardCoefficient = 1.5
export const cupboardSource = 'Armstrong, Cyclopedia of Painting, 1908, p. 127'

/** Coefficients have two digits, so that the product is worked in whole hundredths and 1.3 x 4.2 m² is 5.46 m². */
export function equivalentArea(flatArea: number, coefficient: number): Area {
  return areaFromUnits(Math.round((flatArea * Math.round(coefficient * 100)) / 100))
}

/** Painters' balustrade: handrail length x (2 x baluster height + rail girth), 18th-19th c. mensuration texts. Length units in. */
export function balustradeArea(railLength: number, balusterHeight: number, railGirth: number): Area {
  return areaFromSquareUnits(railLength * (2 * balusterHeight + railGirth))
}

/** Steps: the line over all treads and risers x the length of the step, 18th-19th c. mensuration texts. */
export function stepsArea(lineOverSteps: number, stepLength: number): Area {
  return areaFromSquareUnits(lineOverSteps * stepLength)
}
