import type { Agreement } from '../../agreement/agreement.ts'
import { tableByKey } from '../../lists/lists.ts'
import type { Estimate } from '../../price/estimate-types.ts'
import type { Job } from '../../project/job.ts'
import type { Specification } from '../../specification/types.ts'
import {
  type ComparedHours,
  comparedSteps,
  type HourGrouping,
  hourGroupings,
  hoursBy,
} from './compared-hours.ts'
import { type ComparedMaterial, comparedMaterial } from './compared-material.ts'
import { comparedMoney, type JobMoney } from './compared-money.ts'

/** A job looked at afterwards: what was counted against what it took. */
export interface JobReview {
  readonly hours: Readonly<Record<HourGrouping, readonly ComparedHours[]>>
  readonly doneSteps: number
  readonly writtenSteps: number
  readonly leftSteps: number
  readonly money: JobMoney
  readonly material: readonly ComparedMaterial[]
}

/** Hours, money and material of a job, counted against real; under way as well as finished. */
export function jobReview(
  job: Job,
  specification: Specification,
  estimate: Estimate,
  agreement: Agreement,
): JobReview {
  const steps = comparedSteps(job, specification)
  const done = steps.filter(({ isDone }) => isDone)
  return {
    hours: tableByKey(hourGroupings, (grouping) => hoursBy(job, steps, grouping)),
    doneSteps: done.length,
    writtenSteps: done.filter(({ isWritten }) => isWritten).length,
    leftSteps: steps.length - done.length,
    money: comparedMoney(job, estimate, steps, agreement),
    material: comparedMaterial(job, estimate),
  }
}

/** The sum of a column of compared hours. */
export function hoursSum(rows: readonly ComparedHours[]): Omit<ComparedHours, 'key' | 'label'> {
  const sum = (of: (row: ComparedHours) => number) => rows.reduce((all, row) => all + of(row), 0)
  return {
    planned: sum(({ planned }) => planned),
    worked: sum(({ worked }) => worked),
    left: sum(({ left }) => left),
  }
}

/** What the hours rest on, in a sentence. */
export function hoursBasis({ doneSteps, writtenSteps, leftSteps }: JobReview): string {
  const are = (count: number) => `${count} ${count === 1 ? 'step' : 'steps'}`
  const left = leftSteps === 0 ? '' : ` ${are(leftSteps)} are still to be done.`
  if (doneSteps === 0) return `Nothing is checked off at Site yet.${left}`
  const rest = writtenSteps === doneSteps ? '' : '; the others count as planned'
  return `${writtenSteps} of ${are(doneSteps)} done have minutes written down${rest}.${left}`
}
