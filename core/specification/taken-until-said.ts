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
 * before 1950 or of unknown age, gypsum board in a later one (common practice, from memory); an unknown coat, satin, no texture.
 */
export function takenUntilSaid(
  { yearBuilt }: Pick<JobHeader, 'yearBuilt'>,
  surfaceClass: SurfaceClass,
): TakenFacts {
  return {
    substrate: usualSubstrate(yearBuilt, surfaceClass),
    coat: 'unknown',
    sheen: 'satin',
    textured: false,
  }
}

function usualSubstrate(yearBuilt: number | null, surfaceClass: SurfaceClass): Substrate {
  if (surfaceClass === 'radiators') return 'metal'
  if (surfaceClass !== 'ceiling' && surfaceClass !== 'walls') return 'wood'
  return (yearBuilt ?? 0) >= 1950 ? 'gypsumBoard' : 'plaster'
}
