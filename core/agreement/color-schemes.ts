import type { JobChange, JobOption } from '../project/agreement-records.ts'
import { type Job, records } from '../project/job.ts'
import type { Outcome } from '../project/problem.ts'
import { sameValue } from '../project/same-value.ts'
import type { Scope } from '../project/survey-records.ts'
import { applyChanges } from './changes.ts'

/** The color schemes kept with the job. They lie among its options and are not offered as work. */
export function schemesOf(job: Job): readonly JobOption[] {
  return records(job.options).filter(({ isScheme }) => isScheme === true)
}

/** What is painted and in which color, at every scope that says so, as changes that bring it back. */
export function colorsNow(job: Job): JobChange[] {
  return records(job.finishes).map(({ scope, paint, colourId }) => ({
    kind: 'finish',
    scope,
    set: { paint, colourId },
  }))
}

/**
 * The job in the colors of a scheme. What a room or surface said for itself since the scheme was kept is taken back, so that the wider
 * color holds there; sheen and product of what the scheme names stay. Refused where a room, surface or color of it is gone.
 */
export function withScheme(job: Job, { changes }: Pick<JobOption, 'changes'>): Outcome<Job> {
  const isNamed = (scope: Scope) =>
    changes.some((change) => change.kind === 'finish' && sameValue(change.scope, scope))
  const since = records(job.finishes).filter(({ scope }) => !isNamed(scope))
  const back = since.map(({ scope }): JobChange => ({ kind: 'inherit', scope }))
  return applyChanges(job, [...back, ...changes])
}
