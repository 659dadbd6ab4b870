import type { Skill, SurfaceClass } from '../project/vocabulary.ts'
import type { Operation } from './types.ts'

/** Wet cleaning, done before any dry work. */
export const washOperations = [
  'wash',
  'washMildew',
  'stripWallpaper',
  'washOffSize',
  'washOffCalcimine',
] as const satisfies readonly Operation[]

/** Dry work that fills the air with dust. */
const dusty: ReadonlySet<Operation> = new Set([
  'scrape',
  'openCrack',
  'treatRust',
  'sandPatch',
  'sandFill',
  'sand',
  'reattachPlaster',
])

/** Dry work that fills the air with dust, which settles on wet paint. */
export function makesDust(operation: Operation): boolean {
  return dusty.has(operation)
}

/** Work that cuts into old paint, for the lead arithmetic. */
const disturbing: ReadonlySet<Operation> = new Set([
  'scrape',
  'openCrack',
  'treatRust',
  'sandPatch',
  'sand',
  'stripWallpaper',
  'washOffCalcimine',
  'reattachPlaster',
  'driveFastener',
  'freeSash',
])

/** It cuts into old paint, whose area counts where that may hold lead. */
export function disturbsPaint(operation: Operation): boolean {
  return disturbing.has(operation)
}

const wetWork: ReadonlySet<Operation> = new Set([
  'wash',
  'washMildew',
  'stripWallpaper',
  'washOffSize',
  'washOffCalcimine',
  'sealChalk',
  'sealBare',
  'blockStain',
  'spotPrime',
  'prime',
  'degloss',
  'fill',
  'fillSmall',
  'skim',
  'puttySash',
  'caulk',
  'coat',
])

/** It leaves something wet that others keep away from. */
export function isWetWork(operation: Operation): boolean {
  return wetWork.has(operation)
}

/** Puts on a primer, sealer or finish film. */
const films: ReadonlySet<Operation> = new Set([
  'sealChalk',
  'sealBare',
  'blockStain',
  'spotPrime',
  'prime',
  'coat',
])

/** It leaves a film of sealer, primer or paint. */
export function putsOnFilm(operation: Operation): boolean {
  return films.has(operation)
}

/** Done for the step right behind it and worth nothing days earlier; a role is `operation/ordinal`. */
export function isServing(role: string): boolean {
  return /^(dustOff|vacuum|maskOff|dampCrack)\/|^sand\/[2-9]/.test(role)
}

export const broadClasses: readonly SurfaceClass[] = ['ceiling', 'walls']

/**
 * The skill a step asks for: broad surfaces are rolled (painting), others brushed (fine brush), what goes before is
 * preparation. Shop assumption.
 */
export function skillFor(operation: Operation, surfaceClass: SurfaceClass | null): Skill {
  const brushed = operation === 'coat' || operation === 'prime' || operation === 'degloss'
  if (brushed) {
    return surfaceClass !== null && broadClasses.includes(surfaceClass) ? 'painting' : 'fineBrush'
  }
  return putsOnFilm(operation) || operation === 'caulk' ? 'painting' : 'preparation'
}
