import { type ColourDepth, colourDepths, type Sheen, sheens } from '../project/vocabulary.ts'

/** What a change of colour asks for. */
export interface CoatNeed {
  readonly coats: number
  readonly tintedPrimer: boolean
  readonly reason: 'renewal' | 'change' | 'strong' | 'overDark'
}

interface CoatNumbers {
  readonly renewal: number
  readonly change: number
  readonly strong: number
  readonly strongOverLight: number
  /** Steps of depth from which a lighter colour goes over a primer. */
  readonly lighterBy: number
}

/**
 * Finish coats by depth of colour found and wanted: the same white or off-white in the same sheen is renewed, any other change takes
 * two, a deep or strong colour two over a tinted primer, three where it goes over a much lighter one; a much lighter colour
 * hides the dark one with a primer. White to off-white two, strong two or three over tinted primer: common practice.
 */
export function coatsForColour(
  found: { readonly depth: ColourDepth | null; readonly sheen: Sheen },
  wanted: { readonly depth: ColourDepth | null; readonly sheen: Sheen },
  numbers: CoatNumbers,
): CoatNeed {
  if (found.depth === null || wanted.depth === null) {
    return { coats: numbers.change, tintedPrimer: false, reason: 'change' }
  }
  const steps = colourDepths.indexOf(wanted.depth) - colourDepths.indexOf(found.depth)
  if (wanted.depth === 'strong' || wanted.depth === 'deep') return strongNeed(wanted.depth, steps, numbers)
  if (-steps >= numbers.lighterBy) {
    return { coats: numbers.change, tintedPrimer: true, reason: 'overDark' }
  }
  const samePale = steps === 0 && (wanted.depth === 'white' || wanted.depth === 'offWhite')
  return samePale && found.sheen === wanted.sheen
    ? { coats: numbers.renewal, tintedPrimer: false, reason: 'renewal' }
    : { coats: numbers.change, tintedPrimer: false, reason: 'change' }
}

function strongNeed(depth: ColourDepth, steps: number, numbers: CoatNumbers): CoatNeed {
  if (steps <= 0) return { coats: numbers.change, tintedPrimer: false, reason: 'change' }
  const coats = depth === 'strong' && steps >= 2 ? numbers.strongOverLight : numbers.strong
  return { coats, tintedPrimer: true, reason: 'strong' }
}

/** MPI gloss level 1-7 by the painter's word, as the words are listed. */
export function glossLevel(sheen: Sheen): number {
  return sheens.indexOf(sheen) + 1
}
