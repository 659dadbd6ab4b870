import { compareText } from '../words/text.ts'
import type { Issued } from './issued-records.ts'
import { type Job, records } from './job.ts'

type AcceptedRecord = Extract<Issued, { readonly kind: 'plan' }>

/** The plan accepted last, whether this version can open it or not. Of two in one minute the later record counts. */
export function lastAcceptedPlan(job: Job): AcceptedRecord | undefined {
  return records(job.issued)
    .filter((issued) => issued.kind === 'plan')
    .toSorted((one, other) => compareText(one.issuedAt, other.issuedAt))
    .at(-1)
}
