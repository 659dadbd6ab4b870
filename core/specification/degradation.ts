import type { ConditionKind } from '../project/vocabulary.ts'
import type { Finding } from './findings.ts'

/** MPI degree of surface degradation, 0 sound to 4 substrate unsound. */
type SurfaceDegree = 0 | 1 | 2 | 3 | 4

export const degreeWords: Readonly<Record<SurfaceDegree, string>> = {
  0: 'Sound: only color or sheen changes; clean, dull, coat.',
  1: 'Slight: the substrate is exposed nowhere; touch up and coat.',
  2: 'Moderate: bare or damaged places; spot-prime, then coat.',
  3: 'Severe and widespread: heavy preparation, prime all of it.',
  4: 'The substrate itself is unsound: repair it first.',
}

export const degreeSource = 'MPI degree of surface degradation (DSD-4 partly from memory)'

const unsoundSubstrate: readonly ConditionKind[] = ['loosePlasterKeys']
const exposesSubstrate: readonly ConditionKind[] = [
  'loosePaint',
  'stressCrack',
  'movingCrack',
  'poppedFastener',
  'hole',
  'bareWood',
  'bareJointCompound',
  'newPlaster',
  'newSkimCoat',
  'oldWallpaper',
  'rust',
  'missingPutty',
]

/** The degree of a surface from what was found on it; `percent` of it is where widespread begins (rule `spot-or-full`). */
export function surfaceDegree(findings: readonly Finding[], area: number, percent: number): SurfaceDegree {
  const of = (kinds: readonly ConditionKind[]) =>
    findings.filter(({ condition }) => kinds.includes(condition.kind))
  if (of(unsoundSubstrate).length > 0) return 4
  const bare = of(exposesSubstrate)
  const share = bare.reduce((sum, finding) => sum + finding.spotArea, 0) * 100
  const severe = bare.some(
    ({ condition }) => condition.kind === 'loosePaint' && condition.severity === 'severe',
  )
  if (bare.length > 0) return severe || share >= area * percent ? 3 : 2
  return findings.length > 0 ? 1 : 0
}
