import { hourProblems } from './hour-problems.ts'
import type { Job } from './job.ts'
import type { Problem } from './problem.ts'
import { referenceProblems } from './references.ts'

/**
 * Everything that makes a job impossible although each record by itself has the right form: references into nothing, hours that
 * end before they begin. Empty for a job that may be stored and computed with.
 */
export function jobProblems(job: Job): readonly Problem[] {
  return [...referenceProblems(job), ...hourProblems(job)]
}
