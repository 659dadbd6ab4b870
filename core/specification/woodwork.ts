import type { Job } from '../project/job.ts'
import type { SurfaceQuantity } from '../quantities/takeoff-types.ts'
import { formatArea } from '../units/area.ts'
import { formatLength, type LengthUnitSystem } from '../units/length.ts'
import { amountsSum } from './amounts.ts'
import { type StepAmounts, type WoodworkKind, type WoodworkPart, woodworkKinds } from './types.ts'

/** In the middle of a sentence. */
export const woodworkWords: Readonly<Record<WoodworkKind, string>> = {
  crown: 'crown',
  pictureRail: 'picture rail',
  chairRail: 'chair rail',
  wainscotCap: 'wainscot cap',
  casing: 'casings',
  jamb: 'jambs',
  stool: 'stools',
  baseboard: 'base',
  wainscot: 'wainscot',
  doors: 'doors',
  sash: 'sash',
  builtWork: 'built work',
}

/** Null for what is no woodwork: walls, ceilings, stairs, radiators. */
function woodworkKind(
  job: Pick<Job, 'trimRuns'>,
  { surface, surfaceClass }: Pick<SurfaceQuantity, 'surface' | 'surfaceClass'>,
): WoodworkKind | null {
  if (surfaceClass !== 'trim') return woodworkKinds.find((kind) => kind === surfaceClass) ?? null
  if (surface.kind === 'trim') return job.trimRuns[surface.trimRunId]?.kind ?? null
  return surface.kind === 'opening' ? (woodworkKinds.find((kind) => kind === surface.part) ?? null) : null
}

/** Amounts of surfaces by kind of woodwork, from the ceiling down; they add up to the amounts of all, or there are none. */
export function woodworkParts(
  job: Pick<Job, 'trimRuns'>,
  surfaces: readonly SurfaceQuantity[],
  amountsOf: (surfaces: readonly SurfaceQuantity[]) => StepAmounts,
): readonly WoodworkPart[] {
  const kinds = surfaces.map((surface) => woodworkKind(job, surface))
  if (kinds.includes(null)) return []
  return woodworkKinds
    .filter((kind) => kinds.includes(kind))
    .map((kind) => ({ kind, amounts: amountsOf(surfaces.filter((_, index) => kinds[index] === kind)) }))
}

/** Parts of several steps together, one for each kind. */
export function partsSum(parts: readonly WoodworkPart[]): readonly WoodworkPart[] {
  return woodworkKinds.flatMap((kind) => {
    const amounts = parts.filter((part) => part.kind === kind).map((part) => part.amounts)
    return amounts.length === 0 ? [] : [{ kind, amounts: amountsSum(amounts) }]
  })
}

/** `crown 48' 0"`, `doors 2 faces`: what a kind is counted by in the trade. */
export function partWords({ kind, amounts }: WoodworkPart, system: LengthUnitSystem): string {
  const name = woodworkWords[kind]
  const { area, length, count } = amounts
  if (count > 0 && kind === 'doors') return `${name} ${count} ${count === 1 ? 'face' : 'faces'}`
  if (count > 0 && (kind === 'sash' || kind === 'builtWork')) return `${name} ${count} pc`
  if (length > 0) return `${name} ${formatLength(length, system)}`
  return area > 0 ? `${name} ${formatArea(area, system)}` : name
}
