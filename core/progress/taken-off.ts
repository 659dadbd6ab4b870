import { type Job, records } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { KeptItem, KeptItemId } from '../project/survey-records.ts'
import type { Operation, Specification } from '../specification/types.ts'
import type { SiteMoment } from '../work-order/site-time.ts'
import { type StepProgress, stepStates } from './step-states.ts'

const takingOff: readonly Operation[] = ['takeOff', 'loosenHanging', 'coverAlarm']
const puttingBack: readonly Operation[] = ['putBack', 'refitHanging', 'restoreAlarm']

/** Where a thing kept in the house is just now: in its place, off (loosened, covered), or back again. */
export interface TakenOff {
  readonly keptItemId: KeptItemId
  readonly roomId: RoomId
  readonly name: string
  readonly count: number
  readonly handling: KeptItem['handling']
  readonly standing: 'inPlace' | 'off' | 'back'
  readonly offAt: SiteMoment | null
  readonly backAt: SiteMoment | null
}

/** The register of the job in the order of its kept items; what is still off when the work ends must go back. */
export function takenOffRegister(job: Job, specification: Specification): readonly TakenOff[] {
  const states = [...stepStates(job, specification).values()]
  return records(job.keptItems).map((item) => {
    const offAt = doneAt(states, item.id, takingOff)
    const backAt = doneAt(states, item.id, puttingBack)
    const isBack = backAt !== null && (offAt === null || backAt >= offAt)
    return {
      keptItemId: item.id,
      roomId: item.roomId,
      name: item.name,
      count: item.count,
      handling: item.handling,
      standing: isBack ? 'back' : offAt === null ? 'inPlace' : 'off',
      offAt,
      backAt: isBack ? backAt : null,
    }
  })
}

/** The latest moment such a step of the item was finished. */
function doneAt(
  states: readonly StepProgress[],
  itemId: KeptItemId,
  operations: readonly Operation[],
): SiteMoment | null {
  const moments = states.flatMap(({ step, state }) =>
    operations.includes(step.operation) && step.keptItemIds.includes(itemId) && state.kind === 'done'
      ? [state.at]
      : [],
  )
  return moments.toSorted().at(-1) ?? null
}
