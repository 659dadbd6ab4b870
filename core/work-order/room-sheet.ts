import { stepMinutes } from '../price/labour.ts'
import { type Job, records } from '../project/job.ts'
import type { Room } from '../project/sketch-records.ts'
import type { Condition } from '../project/survey-records.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import type { Relaxed } from '../schedule/job/planning-site.ts'
import { cautionsOfRoom } from '../specification/cautions.ts'
import { conditionWords, severityWords, surfaceClassWords } from '../specification/trade-words.ts'
import type { Specification, Step } from '../specification/types.ts'
import { formatArea, squareMetres } from '../units/area.ts'
import { formatLength } from '../units/length.ts'
import { inRoom } from './by-room.ts'
import type { CoverRoom, FoundLine, RoomSheet, StepLine } from './document-types.ts'
import { holdLine } from './hold-words.ts'
import { roomRegister } from './register.ts'
import { roomPlan } from './room-plan.ts'
import { roomQuantities } from './room-quantities.ts'
import { momentAfter, type SiteMoment } from './site-time.ts'
import { stepLine } from './step-lines.ts'
import { roomOfCondition, surfaceWords } from './surface-words.ts'
import { earliest, latest, type WorkPlanTask } from './work-plan.ts'

export interface RoomSheetInput {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
  readonly tasks: ReadonlyMap<string, readonly WorkPlanTask[]>
  /** What the plan had to assume. */
  readonly relaxed: readonly Relaxed[]
}

export function roomSheet(input: RoomSheetInput, room: Room): RoomSheet {
  const { job, takeoff, specification } = input
  const steps = inRoom(specification.steps, room.id)
  const found = records(job.conditions).filter((condition) => roomOfCondition(job, condition) === room.id)
  const cautions = cautionsOfRoom(steps.flatMap((step) => step.cautions))
  return {
    roomId: room.id,
    name: room.name,
    storey: job.storeys[room.storeyId]?.name ?? '',
    note: room.note,
    dates: coverRoom(input, room, steps),
    plan: roomPlan(job, room, found),
    found: found.map((condition, index) => foundLine(job, condition, index + 1)),
    quantities: roomQuantities(takeoff, room.id, job.header.unitSystem),
    steps: eachReasonOnce(
      inOrderOfPlan(input, steps).map((step, index) => stepLine({ ...input, cautions }, step, index + 1)),
    ),
    cautions,
    holds: specification.holds
      .filter((hold) => hold.roomId === room.id)
      .map((hold) => holdLine(hold, input.relaxed, job.header.unitSystem)),
    notices: inRoom(specification.notices, room.id).filter((notice) => notice.holdKey === undefined),
    register: roomRegister(job, room.id),
  }
}

/**
 * As the plan starts them. What it does not hold comes back every day and frames the rest: covering alarms first, uncovering them
 * last, cleaning down after what it cleans up.
 */
function inOrderOfPlan(input: RoomSheetInput, steps: readonly Step[]): readonly Step[] {
  const starts = new Map(steps.map((step) => [step.key, startOf(input, steps, step)]))
  const start = (step: Step) => starts.get(step.key) ?? ''
  return steps.toSorted((a, b) => (start(a) < start(b) ? -1 : start(a) > start(b) ? 1 : 0))
}

function startOf({ tasks, specification }: RoomSheetInput, steps: readonly Step[], step: Step): string {
  const planned = (key: string) => earliest((tasks.get(key) ?? []).map((task) => task.startsAt))
  if (step.operation === 'restoreAlarm') return '9'
  if (step.operation !== 'cleanDaily') return planned(step.key) ?? ''
  const followers = specification.order.filter(({ before }) => before === step.key)
  const next = steps.find(({ key }) => followers.some(({ after }) => after === key))
  return (next && planned(next.key)) ?? ''
}

/** Later steps point to the step that gave the reason first. */
function eachReasonOnce(lines: readonly StepLine[]): readonly StepLine[] {
  const given = new Map<string, number>()
  return lines.map((line) => {
    const repeated = line.reasons.flatMap((because) => given.get(because.reason) ?? [])
    const fresh = line.reasons.filter((because) => !given.has(because.reason))
    for (const because of fresh) given.set(because.reason, line.number)
    return { ...line, reasons: fresh, reasonsAt: [...new Set(repeated)] }
  })
}

function coverRoom(input: RoomSheetInput, room: Room, steps: readonly Step[]): CoverRoom {
  const { job } = input
  const tasks = steps.flatMap((step) => input.tasks.get(step.key) ?? [])
  return {
    roomId: room.id,
    name: room.name,
    storey: job.storeys[room.storeyId]?.name ?? '',
    startsAt: earliest(tasks.map((task) => task.startsAt)),
    endsAt: latest(tasks.map((task) => task.endsAt)),
    freeAt: freeAt(input, steps),
    promisedBy: room.backBy,
    minutes: steps.reduce((total, step) => total + stepMinutes(job, step), 0),
  }
}

/** When the last step has ended and everything put on is dry to the touch. */
function freeAt(input: RoomSheetInput, steps: readonly Step[]): SiteMoment | null {
  const { timeZone } = input.job.header
  return latest(
    steps.flatMap((step) =>
      (input.tasks.get(step.key) ?? []).map((task) => momentAfter(task.endsAt, step.touchDry, timeZone)),
    ),
  )
}

function foundLine(job: Job, condition: Condition, number: number): FoundLine {
  const cause =
    condition.suspectedCause === ''
      ? []
      : [`suspected cause: ${condition.suspectedCause}${condition.causeCured ? ' (put right)' : ''}`]
  const note = condition.note === '' ? [] : [condition.note]
  return {
    number,
    where: placeOf(job, condition),
    what: `${conditionWords[condition.kind]}, ${severityWords[condition.severity]}`,
    amount: amountOf(job, condition),
    note: [...cause, ...note].join('; '),
  }
}

function placeOf(job: Job, { on }: Condition): string {
  if (on.level === 'surface') return surfaceWords(job, on.surface)
  return on.surfaceClass === null ? 'whole room' : surfaceClassWords[on.surfaceClass].toLowerCase()
}

function amountOf(job: Job, { length, areaMm2, count }: Condition): string {
  const { unitSystem } = job.header
  return [
    ...(length ? [formatLength(length, unitSystem)] : []),
    ...(areaMm2 ? [formatArea(squareMetres(areaMm2 / 1e6), unitSystem)] : []),
    ...(count ? [`${count}`] : []),
  ].join(', ')
}
