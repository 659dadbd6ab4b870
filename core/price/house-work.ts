import { present } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import { bookOf } from '../specification/rule-book.ts'
import { allRules } from '../specification/rule-list.ts'
import type { Operation, Specification } from '../specification/types.ts'
import { type WorkingMinutes, workingMinutes } from '../units/duration.ts'
import { defaultRate } from './default-rates.ts'
import { labourText } from './labour-text.ts'

/** Work for the house as a whole that is done in no room: it is priced once and stands in no plan of rooms. */
export interface HouseWork {
  readonly key: 'leadPapers'
  readonly label: string
  readonly minutes: WorkingMinutes
  readonly derivation: string
}

const leadSafe: ReadonlySet<Operation> = new Set([
  'postSigns',
  'sheetFloor',
  'sealOpenings',
  'cleanFinal',
  'wipeCheck',
])

/** Pamphlet, receipt and records, once, as soon as lead-safe work is done in any room (rule `lead-papers`). */
export function houseWork(job: Job, specification: Specification): readonly HouseWork[] {
  const isLeadSafe = specification.steps.some((step) => leadSafe.has(step.operation))
  if (!isLeadSafe || !bookOf(job, allRules).isOn('lead-papers')) return []
  const rate = present(job.rates.leadPapers ?? defaultRate('leadPapers'))
  const part = { rate, quantity: 1, minutes: 60 / rate.perHour }
  return [
    {
      key: 'leadPapers',
      label: 'Lead-safe papers: pamphlet, receipt, records',
      minutes: workingMinutes(part.minutes),
      derivation: `once for the house; ${labourText([part], 1, 1, job.header.unitSystem)}`,
    },
  ]
}
