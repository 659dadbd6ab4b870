import type { JobHeader } from '../project/job.ts'
import type { ExistingCoat, Sheen, Substrate, SurfaceClass } from '../project/vocabulary.ts'

/** Facts the rules take for a surface of which nobody has said them. The depth of its color is never taken: coats are then counted as for a change. */
interface TakenFacts {
  readonly substrate: Substrate
  readonly coat: ExistingCoat
  readonly sheen: Sheen
  readonly textured: boolean
}

/**
 * What is taken for a class of surface until somebody says: wood trim, iron radiators, plaster on walls and ceilings of a house from
 * before 1950 or of unknown age, gypsum board in a later one; no texture. Walls and ceilings of a house from 1980 on are taken as flat
 * latex, woodwork of one from 2000 on as glossy latex, every other coat as unknown (all common practice, from memory).
 */
export function takenUntilSaid(
  { yearBuilt }: Pick<JobHeader, 'yearBuilt'>,
  surfaceClass: SurfaceClass,
): TakenFacts {
  const coat = usualCoat(yearBuilt ?? 0, surfaceClass)
  return {
    substrate: usualSubstrate(yearBuilt ?? 0, surfaceClass),
    coat,
    sheen: coat === 'latexFlat' ? 'flat' : 'satin',
    textured: false,
  }
}

function usualSubstrate(yearBuilt: number, surfaceClass: SurfaceClass): Substrate {
  if (surfaceClass === 'radiators') return 'metal'
  if (!isBroad(surfaceClass)) return 'wood'
  return yearBuilt >= 1950 ? 'gypsumBoard' : 'plaster'
}

function usualCoat(yearBuilt: number, surfaceClass: SurfaceClass): ExistingCoat {
  if (isBroad(surfaceClass)) return yearBuilt >= 1980 ? 'latexFlat' : 'unknown'
  return surfaceClass !== 'radiators' && yearBuilt >= 2000 ? 'latexGlossy' : 'unknown'
}

function isBroad(surfaceClass: SurfaceClass): boolean {
  return surfaceClass === 'ceiling' || surfaceClass === 'walls'
}
