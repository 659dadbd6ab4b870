import { type Job, records } from '../project/job.ts'
import type { KeptItem, KeptItemId } from '../project/survey-records.ts'
import type { Operation } from '../specification/types.ts'
import type { SiteMoment } from '../time/site-moment.ts'
import type { StepProgress } from './step-states.ts'

const takingOff: readonly Operation[] = ['takeOff', 'loosenHanging', 'coverAlarm', 'maskOff']
const puttingBack: readonly Operation[] = ['putBack', 'refitHanging', 'restoreAlarm', 'unmask']

/** Where a thing kept in the house is just now: in its place, off (loosened, covered), or back again. */
interface TakenOff {
  readonly item: KeptItem
  readonly standing: 'inPlace' | 'off' | 'back'
  readonly offAt: SiteMoment | null
  readonly backAt: SiteMoment | null
}

/**
 * The register of the job in the order of its kept items, from the steps and what is marked on them; what is still off when the work
 * ends must go back. `backAt` is null while a thing is off, also when it was back before.
 */
export function takenOffRegister(job: Job, steps: readonly StepProgress[]): readonly TakenOff[] {
  return records(job.keptItems).map((item) => {
    const offAt = doneAt(steps, item.id, takingOff)
    const backAt = doneAt(steps, item.id, puttingBack)
    const isBack = backAt !== null && (offAt === null || backAt >= offAt)
    return {
      item,
      standing: isBack ? 'back' : offAt === null ? 'inPlace' : 'off',
      offAt,
      backAt: isBack ? backAt : null,
    }
  })
}

/** The latest moment such a step of the item was finished. */
function doneAt(
  steps: readonly StepProgress[],
  itemId: KeptItemId,
  operations: readonly Operation[],
): SiteMoment | null {
  const moments = steps.flatMap(({ step, state }) =>
    operations.includes(step.operation) && step.keptItemIds.includes(itemId) && state.kind === 'done'
      ? [state.at]
      : [],
  )
  return moments.toSorted().at(-1) ?? null
}
