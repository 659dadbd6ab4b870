import { movedRooms } from '../../../../core/agreement/moved-rooms.ts'
import type { DealingOf, JobChange, Money } from '../../../../core/project/agreement-records.ts'
import type { Job } from '../../../../core/project/job.ts'
import { dateWords } from '../../../../core/time/date-words.ts'
import type { WorkPlan } from '../../../../core/work-order/work-plan.ts'
import { newId } from '../../../state/new-id.ts'
import { keepDealing } from './keep-dealing.ts'

/** What a change order says. */
interface ChangeOffer
  extends Pick<DealingOf<'changeOffered'>, 'title' | 'why' | 'minutes' | 'finishesOn' | 'moves'> {
  readonly changes: readonly JobChange[]
  readonly money: Money
}

/** Writes a change order down as offered to the client, with its page; the job stays as it is until the client agrees. */
export function offerChange(
  number: number,
  { changes, money, moves, ...offer }: ChangeOffer,
  at: string,
): boolean {
  const { beforeTaxCents, taxCents } = money
  return keepDealing(
    `Offer change order ${number}`,
    {
      id: newId('dealing'),
      kind: 'changeOffered',
      on: at.slice(0, 10),
      number,
      ...offer,
      changes: [...changes],
      beforeTaxCents,
      taxCents,
      moves: [...moves],
    },
    at,
  )
}

/** Which rooms are back on another day by the second plan, a sentence for each. */
export function movedRoomWords(job: Job, before: WorkPlan, after: WorkPlan): readonly string[] {
  const day = (date: string) => dateWords(date, job.header.unitSystem)
  return movedRooms(before, after).map((moved) => {
    const name = job.rooms[moved.roomId]?.name ?? moved.roomId
    if (moved.after === null) return `${name}: not worked in.`
    return moved.before === null
      ? `${name}: ready again ${day(moved.after)}.`
      : `${name}: ready again ${day(moved.after)} instead of ${day(moved.before)}.`
  })
}
