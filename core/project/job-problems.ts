import { hourProblems } from './hour-problems.ts'
import { type Job, placeInTable } from './job.ts'
import { photoProblems } from './photo-problems.ts'
import type { Problem } from './problem.ts'
import { referenceProblems } from './references.ts'
import { scopeProblems } from './scope-problems.ts'
import { sketchProblems } from './sketch-problems.ts'

/**
 * Everything that makes a job impossible although each record by itself has the right form: references into nothing, hours that
 * end before they begin, one scope with two finishes, sketches that cannot stand. Empty for a job that may be stored and computed with.
 */
export function jobProblems(job: Job): readonly Problem[] {
  const broken = [
    ...referenceProblems(job),
    ...hourProblems(job),
    ...scopeProblems(job),
    ...photoProblems(job),
  ]
  // The checks of the sketch follow references, so they wait until every one holds.
  if (broken.length > 0) return broken
  const wrong = sketchProblems(job).map((one) => ({ ...one, path: one.path || placeOf(job, one) }))
  // An outline that cannot be makes doors of the room next door wrong as well; the cause is said first.
  return [...wrong.filter(isOfOutline), ...wrong.filter((one) => !isOfOutline(one))]
}

function isOfOutline({ kind }: Problem): boolean {
  return kind === 'wallTooShort' || kind === 'outlineDegenerate' || kind === 'outlineCrossesItself'
}

/** Problems of the sketch name the record first that is to be changed. */
function placeOf(job: Job, { ids }: Problem): string {
  for (const name of ['openings', 'trimRuns', 'ceilingOpenings', 'builtItems', 'rooms'] as const) {
    const index = placeInTable(job[name], ids[0] ?? '')
    if (index >= 0) return `${name}[${index}]`
  }
  return ''
}
