import type { Agreement } from '../../agreement/agreement.ts'
import type { Estimate } from '../../price/estimate-types.ts'
import { stepMinutes } from '../../price/labour.ts'
import { type Job, type RecordOf, records } from '../../project/job.ts'
import { ownJobSchema } from '../../project/outcome-records.ts'
import type { RoomId } from '../../project/sketch-records.ts'
import type { Condition } from '../../project/survey-records.ts'
import type { Specification } from '../../specification/types.ts'
import { workKindOf } from '../../specification/work-kinds.ts'
import type { LocalDate } from '../../time/local-date.ts'
import { dateOf } from '../../time/site-moment.ts'
import { roundToCents, sumCents } from '../../units/money.ts'
import { rateEvidence } from '../rate-suggestions.ts'
import { stepStates } from '../step-states.ts'
import { receiptCents } from './compared-money.ts'

type OwnJob = RecordOf<'ownJobs'>

/** What a job says for the shop's next ones, as a record of `keptOn`. Only steps with written minutes that were not asked for again speak of rates. */
export function ownJobOf(
  job: Job,
  specification: Specification,
  estimate: Estimate,
  agreement: Agreement,
  keptOn: LocalDate,
): OwnJob {
  const evidence = rateEvidence(job, specification)
  const sum = (of: 'planned' | 'actual') => evidence.reduce((all, each) => all + each[of], 0)
  const states = [...stepStates(job, specification).values()]
  const coats = states.filter(({ step, state }) => step.operation === 'coat' && state.kind === 'done')
  const rooms = new Set(states.filter(({ state }) => state.kind === 'done').map(({ step }) => step.roomId))
  return {
    id: ownJobSchema.shape.id.parse(job.header.id),
    title: job.header.title,
    keptOn,
    rates: evidence.map(({ rate, planned, actual }) => ({
      rateId: rate.id,
      workedAmount: (planned / 60) * rate.perHour,
      plannedMinutes: planned,
      workedMinutes: actual,
    })),
    plannedMinutes: sum('planned'),
    workedMinutes: sum('actual'),
    rooms: rooms.size,
    ...foundLater(job, specification, agreement, rooms),
    coats: coats.length,
    coatsAgain: coats.filter(({ history }) => history.some(({ mark }) => mark === 'redo')).length,
    plannedMaterialCents: roundToCents(estimate.totals.materials + estimate.totals.sundries),
    paidMaterialCents: sumCents(
      (['material', 'sundry'] as const).map((kind) => receiptCents(job, kind) ?? roundToCents(0)),
    ),
  }
}

/** What was found after the job was accepted, or, where it never was, after the first mark: the minutes of the steps that are there for it. */
function foundLater(
  job: Job,
  specification: Specification,
  { accepted }: Agreement,
  worked: ReadonlySet<RoomId>,
): Pick<OwnJob, 'roomsFound' | 'preparationMinutes' | 'foundMinutes'> {
  const begun =
    accepted?.on ??
    records(job.marks)
      .map(({ at }) => dateOf(at))
      .toSorted()[0]
  const isLater = ({ foundOn }: Condition) => begun !== undefined && foundOn !== null && foundOn > begun
  const later = new Set(
    records(job.conditions)
      .filter(isLater)
      .map(({ id }) => id),
  )
  const byRoom = new Map<RoomId, { preparation: number; found: number }>()
  for (const step of specification.steps) {
    if (!worked.has(step.roomId)) continue
    const ids = [...new Set(step.because.flatMap(({ conditionIds }) => conditionIds))]
    const share = ids.length === 0 ? 0 : ids.filter((id) => later.has(id)).length / ids.length
    const minutes = stepMinutes(job, step)
    const room = byRoom.get(step.roomId) ?? { preparation: 0, found: 0 }
    room.found += minutes * share
    if (workKindOf(step.operation) === 'prepare') room.preparation += minutes * (1 - share)
    byRoom.set(step.roomId, room)
  }
  const found = [...byRoom.values()].filter((room) => room.found > 0)
  return {
    roomsFound: found.length,
    preparationMinutes: found.reduce((sum, { preparation }) => sum + preparation, 0),
    foundMinutes: found.reduce((sum, room) => sum + room.found, 0),
  }
}
