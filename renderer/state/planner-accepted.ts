import { type Job, records } from '../../core/project/job.ts'
import type { WorkPlan } from '../../core/work-order/work-plan.ts'

export interface AcceptedPlan {
  readonly id: string
  readonly acceptedAt: string
  readonly plan: WorkPlan
}

/** The plan accepted last, frozen as it was then; null where none was. Of two in one minute the later record counts. */
export function acceptedPlan(job: Job): AcceptedPlan | null {
  const accepted = records(job.issued)
    .filter((issued) => issued.kind === 'plan')
    .toSorted((one, other) => (one.issuedAt < other.issuedAt ? -1 : one.issuedAt > other.issuedAt ? 1 : 0))
    .at(-1)
  if (accepted === undefined) return null
  const body = accepted.body as unknown as { readonly plan: WorkPlan }
  return { id: accepted.id, acceptedAt: accepted.issuedAt, plan: body.plan }
}
