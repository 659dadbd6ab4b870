import type { ExistingCoat, ProductClass } from '../project/vocabulary.ts'
import { type PrimerNeed, primerDoes } from './primers.ts'
import type { Step } from './types.ts'

export const finishFamilies = ['waterborne', 'oil', 'clear'] as const
type FinishFamily = (typeof finishFamilies)[number]

function finishFamily(productClass: ProductClass): FinishFamily {
  if (productClass === 'clearVarnish') return 'clear'
  return productClass === 'alkydEnamel' || productClass === 'radiatorEnamel' ? 'oil' : 'waterborne'
}

/**
 * What may go over what. `onto`: as it is, clean. `dull`: sanded first. `prime`: over a primer that meets the need (after dulling
 * where `dulled`). `poor`: holds, but the trade advises against it. `never`.
 */
interface Compatibility {
  readonly verdict: 'onto' | 'dull' | 'prime' | 'poor' | 'never'
  readonly dulled: boolean
  readonly needs: readonly PrimerNeed[]
  readonly source: string
}

const practice = 'common practice'
const smoothAlkyd = 'MIL-HDBK-1110 s. 4.4.1.2'
const onto: Compatibility = { verdict: 'onto', dulled: false, needs: [], source: practice }
const dull: Compatibility = { verdict: 'dull', dulled: true, needs: [], source: practice }
const never: Compatibility = { verdict: 'never', dulled: false, needs: [], source: practice }
const brittle: Compatibility = { verdict: 'poor', dulled: false, needs: [], source: practice }
function prime(needs: readonly PrimerNeed[], dulled: boolean, source = practice): Compatibility {
  return { verdict: 'prime', dulled, needs, source }
}

/** Any one of the needs listed is enough: a bare surface takes the primer of its substrate. */
export const compatibilityTable: Readonly<
  Record<ExistingCoat, Readonly<Record<FinishFamily, Compatibility>>>
> = {
  bare: {
    waterborne: prime(['porous', 'bareWood', 'bareMetal', 'newPlaster'], false),
    oil: prime(['porous', 'bareWood', 'bareMetal', 'newPlaster'], false),
    clear: onto,
  },
  latexFlat: { waterborne: onto, oil: brittle, clear: never },
  latexGlossy: { waterborne: dull, oil: { ...brittle, dulled: true }, clear: never },
  oilPaint: { waterborne: prime(['bond'], true, smoothAlkyd), oil: dull, clear: never },
  calcimine: { waterborne: prime(['chalk'], false), oil: prime(['chalk'], false), clear: never },
  varnish: { waterborne: prime(['bond'], true), oil: prime(['bond'], true), clear: dull },
  shellac: { waterborne: prime(['overShellac'], true), oil: prime(['overShellac'], true), clear: dull },
  wallpaper: {
    waterborne: prime(['pasteResidue'], false),
    oil: prime(['pasteResidue'], false),
    clear: never,
  },
  unknown: { waterborne: prime(['bond', 'bareMetal'], true), oil: dull, clear: never },
}

/** What is missing between the coat found and the finish, given the steps planned on the group; null when nothing is. */
export function missingGround(
  coat: ExistingCoat,
  finish: ProductClass,
  steps: readonly Step[],
): { readonly entry: Compatibility; readonly what: string } | null {
  const entry = compatibilityTable[coat][finishFamily(finish)]
  const sanded = steps.some((step) => step.operation === 'sand' && step.key.endsWith('/1'))
  const dulled = sanded || steps.some((step) => step.operation === 'degloss')
  const primed = steps.some(
    (step) =>
      ['prime', 'sealChalk', 'sealBare'].includes(step.operation) &&
      entry.needs.some((need) => step.productClass !== null && primerDoes(step.productClass, need)),
  )
  const deglossed = entry.needs.includes('bond') && steps.some((step) => step.operation === 'degloss')
  if (entry.verdict === 'never')
    return { entry, what: 'It does not belong over that at all: strip it, or choose another finish.' }
  if (entry.dulled && !dulled)
    return { entry, what: 'Nothing dulls the old coat: it must be sanded or deglossed first.' }
  if (entry.verdict === 'prime' && !primed && !deglossed) {
    return { entry, what: 'Nothing between them holds on both: a primer made for it is missing.' }
  }
  if (entry.verdict === 'poor') {
    return {
      entry,
      what: 'A hard oil film over soft latex cracks in time: a water-borne finish is the better choice.',
    }
  }
  return null
}
