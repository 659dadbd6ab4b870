import type { Operation } from '../../specification/types.ts'
import { toSquareFeet, toSquareMetres } from '../../units/area.ts'
import { formatFeetInches, type LengthUnitSystem, toFeet, toMetres } from '../../units/length.ts'

/** To the nearest square foot, or tenth of a square meter. */
export function shortArea(area: number, system: LengthUnitSystem): string {
  if (system === 'metric') return `${toSquareMetres(area).toFixed(1)} m²`
  const whole = Math.round(toSquareFeet(area))
  return whole === 0 ? 'under 1 sq ft' : `${whole} sq ft`
}

/** To the nearest foot, under ten feet to the nearest inch; or to a tenth of a meter. */
export function shortLength(length: number, system: LengthUnitSystem): string {
  if (system === 'metric') return `${toMetres(length).toFixed(1)} m`
  return toFeet(length) < 10 ? formatFeetInches(length, 1) : `${Math.round(toFeet(length))} ft`
}

/** A wait as somebody counts it: `50 min`, `4½ h`, `26 h`, `3 days`; never shorter than it is. */
export function waitWords(minutes: number): string {
  if (minutes < 60) return `${Math.ceil(minutes / 5) * 5} min`
  const halves = Math.ceil(minutes / 30)
  if (minutes < 1440) return `${halves % 2 === 0 ? halves / 2 : `${halves === 1 ? '' : (halves - 1) / 2}½`} h`
  const hours = Math.ceil(minutes / 60)
  return hours <= 72 ? `${hours} h` : `${Math.ceil(hours / 24)} days`
}

/** `4.1 h`. */
export function hourWords(minutes: number): string {
  return `${(minutes / 60).toFixed(1)} h`
}

/** What a finding asks for, in a word or two, in the order in which it is done. */
export const repairWords: Readonly<Partial<Record<Operation, string>>> = {
  wash: 'wash',
  washMildew: 'wash off',
  scrape: 'scrape until nothing lifts, feather',
  stripWallpaper: 'strip',
  washOffSize: 'wash off paste',
  washOffCalcimine: 'wash off',
  openCrack: 'open to a V',
  driveFastener: 'drive below the surface, one more beside it',
  reattachPlaster: 'fasten back to the lath',
  sealChalk: 'seal',
  sealBare: 'seal',
  blockStain: 'block',
  spotPrime: 'spot-prime',
  dampCrack: 'dampen',
  fill: 'fill in layers',
  tapeCrack: 'bridge with mesh tape',
  fillSmall: 'fill',
  skim: 'skim',
  puttySash: 'putty',
  freeSash: 'cut free',
  caulk: 'caulk',
  treatRust: 'clean and treat',
  sandPatch: 'sand flat',
  sandFill: 'sand',
  sand: 'sand dull',
  dustDown: 'dust down',
  degloss: 'wipe with deglosser',
  prime: 'prime',
}

/** Goes with other work of its pass: a line of its own only where there is room. */
export const serving: ReadonlySet<Operation> = new Set<Operation>([
  'dustDown',
  'dustOff',
  'vacuum',
  'maskOff',
  'unmask',
  'dampCrack',
  'cleanDaily',
  'bagSheeting',
])
