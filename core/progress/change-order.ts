import type { Estimate } from '../price/estimate-types.ts'
import { stepMinutes } from '../price/labour.ts'
import type { Job } from '../project/job.ts'
import type { Notice, Specification, Step } from '../specification/types.ts'
import { type WorkingMinutes, workingMinutes } from '../units/duration.ts'
import type { Cents } from '../units/money.ts'

/** One side of the comparison: the job as it was agreed, or as it would be with what was found. */
interface ChangeSide {
  readonly job: Job
  readonly specification: Specification
  readonly estimate: Estimate
  /** Local date of the last day of work, null where there is no plan yet. */
  readonly finishesOn: string | null
}

export interface ChangedStep {
  readonly before: Step
  readonly after: Step
  readonly minutesBefore: WorkingMinutes
  readonly minutesAfter: WorkingMinutes
}

interface BeforeAfter<Value> {
  readonly before: Value
  readonly after: Value
}

/** What a fact found on site would change, to be shown before it is accepted as a change order. */
export interface ChangeOrder {
  readonly added: readonly Step[]
  readonly removed: readonly Step[]
  /** Same step with other hours, product or reason. */
  readonly changed: readonly ChangedStep[]
  readonly minutes: BeforeAfter<WorkingMinutes>
  readonly totalCents: BeforeAfter<Cents>
  readonly finishesOn: BeforeAfter<string | null>
  /** Cautions and holds that were not there before. */
  readonly newNotices: readonly Notice[]
}

/** What a change does to steps, hours, price and last day, and which notices are new with it. */
export function compareChange(before: ChangeSide, after: ChangeSide): ChangeOrder {
  const old = new Map(before.specification.steps.map((step) => [step.key, step]))
  const now = new Map(after.specification.steps.map((step) => [step.key, step]))
  const known = new Set(before.specification.notices.map((notice) => notice.sentence))
  return {
    added: after.specification.steps.filter((step) => !old.has(step.key)),
    removed: before.specification.steps.filter((step) => !now.has(step.key)),
    changed: after.specification.steps.flatMap((step) => changedStep(before, after, old.get(step.key), step)),
    minutes: {
      before: workingMinutes(before.estimate.totals.labourMinutes),
      after: workingMinutes(after.estimate.totals.labourMinutes),
    },
    totalCents: { before: before.estimate.totals.total, after: after.estimate.totals.total },
    finishesOn: { before: before.finishesOn, after: after.finishesOn },
    newNotices: after.specification.notices.filter((notice) => !known.has(notice.sentence)),
  }
}

function changedStep(
  before: ChangeSide,
  after: ChangeSide,
  was: Step | undefined,
  step: Step,
): readonly ChangedStep[] {
  if (was === undefined) return []
  const minutesBefore = stepMinutes(before.job, was)
  const minutesAfter = stepMinutes(after.job, step)
  const same = Math.abs(minutesBefore - minutesAfter) < 1e-6 && wording(was) === wording(step)
  return same ? [] : [{ before: was, after: step, minutesBefore, minutesAfter }]
}

/** What a painter would notice beside the hours. */
function wording(step: Step): string {
  const reasons = step.because.map((because) => because.ruleId).toSorted()
  return [step.productId, step.productClass, step.colourId, step.sheen, ...reasons].join('|')
}
