import type { Job } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Specification } from '../specification/types.ts'
import type { SiteMoment } from '../time/site-moment.ts'
import { compareText } from '../words/text.ts'
import { type StepProgress, stepStates } from './step-states.ts'

/** Something judged not good on the walk through: a mark to redo a step, with what was seen. */
interface PunchItem {
  readonly stepKey: string
  readonly roomId: RoomId
  readonly roomName: string
  readonly seen: string
  readonly notedAt: SiteMoment
  /** When the step was done again; null while open. */
  readonly madeGoodAt: SiteMoment | null
}

/** Open items first, each group in the order noted. */
export function punchList(job: Job, specification: Specification): readonly PunchItem[] {
  const items = [...stepStates(job, specification).values()].flatMap((progress) => itemsOf(job, progress))
  const byTime = items.toSorted((a, b) => compareText(a.notedAt, b.notedAt))
  return [
    ...byTime.filter((item) => item.madeGoodAt === null),
    ...byTime.filter((item) => item.madeGoodAt !== null),
  ]
}

function itemsOf(job: Job, { step, history }: StepProgress): readonly PunchItem[] {
  return history.flatMap((mark, index) => {
    if (mark.mark !== 'redo') return []
    const later = history.slice(index + 1).find((each) => each.mark === 'done')
    return [
      {
        stepKey: step.key,
        roomId: step.roomId,
        roomName: job.rooms[step.roomId]?.name ?? step.roomId,
        seen: mark.note,
        notedAt: mark.at,
        madeGoodAt: later?.at ?? null,
      },
    ]
  })
}
