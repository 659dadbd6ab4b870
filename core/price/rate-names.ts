import type { Rate, RateBasis } from '../project/shop-records.ts'
import { surfaceClasses } from '../project/vocabulary.ts'
import { operationWords, surfaceNoun } from '../specification/trade-words.ts'
import type { Operation } from '../specification/types.ts'
import { woodworkWords } from '../specification/woodwork.ts'
import { roughArea, squareFeet, toSquareMetres } from '../units/area.ts'
import { feet, type LengthUnitSystem, roughLength, toMetres } from '../units/length.ts'

/** Parts that are added to a step's own work, by the names of their rates. */
export const addedRateWords: Readonly<Record<string, string>> = {
  cutIn: 'Cut in along an edge',
  glassEdge: 'Paint along glass',
  fillPatches: 'Fill patches',
  fillHoles: 'Fill holes',
  sandFillPatches: 'Sand filled patches',
  sandFillHoles: 'Sand filled holes',
  caulkSpots: 'Caulk spots',
  scrapeEdges: 'Feather scraped edges',
}

/** Names of surface classes and kinds of woodwork as rates end in them; a class that is a kind too has one name. */
const placeNames: Readonly<Record<string, string>> = {
  ...woodworkWords,
  ...Object.fromEntries(surfaceClasses.map((each) => [each, surfaceNoun(each)])),
}

/** Of a rate, from its id: `Coat: crown`. */
export function rateName(id: string): string {
  const [name = '', on] = id.split('-')
  // A name that is no operation finds no words, and stands for itself.
  const words = addedRateWords[name] ?? operationWords[name as Operation] ?? name
  return on === undefined ? words : `${words}: ${placeNames[on] ?? on}`
}

/** What a person does in an hour, in the words of the unit system: `sq ft`, `m²`, `pieces`. */
export function rateUnit(basis: RateBasis, system: LengthUnitSystem): string {
  if (basis === 'area') return system === 'metric' ? 'm²' : 'sq ft'
  if (basis === 'length') return system === 'metric' ? 'm' : 'ft'
  return basis === 'count' ? 'pieces' : 'rooms'
}

/** How many of the unit system's units one unit of the basis is; 1 for pieces and in feet. */
function unitsPerBasis(basis: RateBasis, system: LengthUnitSystem): number {
  if (system === 'imperial') return 1
  if (basis === 'area') return toSquareMetres(squareFeet(1))
  return basis === 'length' ? toMetres(feet(1)) : 1
}

/** The rate as a number of the unit system's units an hour, three digits where it had to be converted. */
export function rateInUnits({ basis, perHour }: Rate, system: LengthUnitSystem): number {
  const factor = unitsPerBasis(basis, system)
  return factor === 1 ? perHour : Number((perHour * factor).toPrecision(3))
}

/** Back from `rateInUnits`, in units of the basis. */
export function rateFromUnits(basis: RateBasis, value: number, system: LengthUnitSystem): number {
  const factor = unitsPerBasis(basis, system)
  return factor === 1 ? value : Number((value / factor).toPrecision(6))
}

/** An amount of a basis: square feet, feet or pieces as `2,286 sq ft`, `41.3 ft`, `26`. */
export function basisAmount(basis: RateBasis, value: number, system: LengthUnitSystem): string {
  if (basis === 'area') return roughArea(squareFeet(value), system)
  if (basis === 'length') return roughLength(feet(value), system)
  return String(Number(value.toFixed(2)))
}
