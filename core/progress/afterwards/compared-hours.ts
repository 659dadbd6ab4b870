import { stepMinutes } from '../../price/labour.ts'
import { lastAcceptedPlan } from '../../project/accepted-plan.ts'
import type { Job } from '../../project/job.ts'
import type { Mark } from '../../project/progress-records.ts'
import type { CrewMemberId } from '../../project/shop-records.ts'
import type { Specification, Step } from '../../specification/types.ts'
import { workKindOf, workKinds, workKindWords } from '../../specification/work-kinds.ts'
import { isSettled, type StepProgress, stepStates } from '../step-states.ts'

/** Person-minutes of one person on a step; null where nobody was named. */
interface PersonMinutes {
  readonly crewMemberId: CrewMemberId | null
  readonly minutes: number
}

/** One step that was begun, done or is still to be done, in person-minutes. */
export interface ComparedStep {
  readonly step: Step
  /** As counted, where the step is done; 0 before. */
  readonly planned: readonly PersonMinutes[]
  /** As written down at Site; where a done step has no minutes, as counted. */
  readonly worked: readonly PersonMinutes[]
  /** As counted, where the step is not done. */
  readonly left: readonly PersonMinutes[]
  readonly isDone: boolean
  readonly isWritten: boolean
}

/** Every step with what was counted and what was worked. Daily steps stand here only where somebody marked them; steps left out are not there. */
export function comparedSteps(job: Job, specification: Specification): readonly ComparedStep[] {
  const planned = plannedPeople(job)
  return [...stepStates(job, specification).values()]
    .filter(({ step, history, state }) => state.kind !== 'skipped' && (!step.daily || history.length > 0))
    .map((progress) => comparedStep(job, progress, planned.get(progress.step.key) ?? []))
}

function comparedStep(
  job: Job,
  { step, state, history }: StepProgress,
  people: readonly CrewMemberId[],
): ComparedStep {
  const minutes = stepMinutes(job, step)
  const isDone = isSettled(state)
  const written = writtenMarks(history)
  const asPlanned = shared(minutes, people)
  const asMarked = shared(minutes, history.at(-1)?.crewMemberIds ?? [])
  return {
    step,
    planned: isDone ? asPlanned : [],
    worked:
      written.length > 0
        ? written.flatMap((mark) => shared(mark.actualMinutes ?? 0, mark.crewMemberIds))
        : isDone
          ? asMarked
          : [],
    left: isDone ? [] : asPlanned,
    isDone,
    isWritten: written.length > 0,
  }
}

/**
 * The marks whose minutes count: those written down last before the step was asked for again or its mark taken back, for they say what it
 * took all together.
 */
function writtenMarks(history: readonly Mark[]): readonly Mark[] {
  const counted: Mark[] = []
  let last: Mark | null = null
  for (const mark of history) {
    if (mark.mark === 'redo' && last !== null) counted.push(last)
    if (mark.mark === 'redo' || mark.mark === 'cleared') last = null
    else if ((mark.actualMinutes ?? 0) > 0) last = mark
  }
  return last === null ? counted : [...counted, last]
}

/** Everybody alike; nobody named is one nameless. */
function shared(minutes: number, people: readonly CrewMemberId[]): readonly PersonMinutes[] {
  if (people.length === 0) return [{ crewMemberId: null, minutes }]
  return people.map((crewMemberId) => ({ crewMemberId, minutes: minutes / people.length }))
}

/** Who does each step by the plan accepted last. */
function plannedPeople(job: Job): ReadonlyMap<string, readonly CrewMemberId[]> {
  const body = lastAcceptedPlan(job)?.body
  if (body === undefined || body.version === null) return new Map()
  return new Map(
    body.plan.tasks.flatMap(({ stepKeys, crewMemberIds }) => stepKeys.map((key) => [key, crewMemberIds])),
  )
}

/** What hours are compared by. */
export const hourGroupings = ['work', 'room', 'person'] as const
export type HourGrouping = (typeof hourGroupings)[number]

export const hourGroupingWords: Readonly<Record<HourGrouping, string>> = {
  work: 'Kind of work',
  room: 'Room',
  person: 'Person',
}

/** Person-minutes of a group of steps: counted and worked of what is done, and counted of what is left. */
export interface ComparedHours {
  readonly key: string
  readonly label: string
  readonly planned: number
  readonly worked: number
  readonly left: number
}

/** The hours of all steps in groups; whatever they are grouped by, the sums are the same. */
export function hoursBy(
  job: Job,
  steps: readonly ComparedStep[],
  grouping: HourGrouping,
): readonly ComparedHours[] {
  const rows = new Map<string, { planned: number; worked: number; left: number }>()
  for (const compared of steps) {
    for (const column of ['planned', 'worked', 'left'] as const) {
      for (const { crewMemberId, minutes } of compared[column]) {
        const key = keyOf(compared.step, crewMemberId, grouping)
        const row = rows.get(key) ?? { planned: 0, worked: 0, left: 0 }
        row[column] += minutes
        rows.set(key, row)
      }
    }
  }
  const order = grouping === 'work' ? workKinds.filter((kind) => rows.has(kind)) : [...rows.keys()]
  return order.map((key) => ({
    key,
    label: labelOf(job, key, grouping),
    ...(rows.get(key) ?? { planned: 0, worked: 0, left: 0 }),
  }))
}

function keyOf(step: Step, person: CrewMemberId | null, grouping: HourGrouping): string {
  if (grouping === 'work') return workKindOf(step.operation)
  return grouping === 'room' ? step.roomId : (person ?? '')
}

function labelOf(job: Job, key: string, grouping: HourGrouping): string {
  if (grouping === 'room') return job.rooms[key]?.name ?? key
  if (grouping === 'person') return key === '' ? 'Nobody named' : (job.crew[key]?.name ?? key)
  const kind = workKinds.find((each) => each === key)
  return kind === undefined ? key : workKindWords[kind]
}
