import { groupedBy } from '../lists/lists.ts'
import { type Job, records } from '../project/job.ts'
import type { Mark } from '../project/progress-records.ts'
import type { CrewMemberId } from '../project/shop-records.ts'
import type { Specification, Step } from '../specification/types.ts'
import { momentAfter, type SiteMoment } from '../time/site-moment.ts'
import { compareText } from '../words/text.ts'

/**
 * How a step stands, by its latest mark. `redo` means it was judged not good and is to be done again.
 * A coat that is done says when it is dry to the touch, when the next coat may go on and until when at the latest.
 */
type StepState =
  | { readonly kind: 'todo' }
  | { readonly kind: 'started'; readonly at: SiteMoment; readonly crewMemberIds: readonly CrewMemberId[] }
  | {
      readonly kind: 'done'
      readonly at: SiteMoment
      readonly touchDryAt: SiteMoment
      readonly recoatFrom: SiteMoment
      readonly recoatBy: SiteMoment | null
    }
  | { readonly kind: 'skipped'; readonly at: SiteMoment; readonly note: string }
  | { readonly kind: 'redo'; readonly at: SiteMoment; readonly note: string }

export interface StepProgress {
  readonly step: Step
  readonly state: StepState
  /** All marks of the step in order of time. */
  readonly history: readonly Mark[]
}

type States = ReadonlyMap<string, StepProgress>

/** Neither a job nor its specification changes in place. */
const known = new WeakMap<Job, { readonly specification: Specification; readonly states: States }>()

/** The state of every step of the specification, by its key, in the order of the work; remembered for each job. */
export function stepStates(job: Job, specification: Specification): States {
  const last = known.get(job)
  if (last?.specification === specification) return last.states
  const states = statesOf(job, specification)
  known.set(job, { specification, states })
  return states
}

function statesOf(job: Job, specification: Specification): States {
  const marks = marksByStep(job)
  return new Map(
    specification.steps.map((step) => {
      const history = marks.get(step.key) ?? []
      return [step.key, { step, history, state: stateOf(job, specification, step, history.at(-1)) }]
    }),
  )
}

/** Marks of steps that the specification no longer has; they are kept and shown, never dropped. */
export function marksWithoutStep(job: Job, specification: Specification): readonly Mark[] {
  const known = new Set(specification.steps.map((step) => step.key))
  return records(job.marks).filter((mark) => !known.has(mark.stepKey))
}

/** Nothing is left to do: done, or left out on purpose. */
export function isSettled(state: StepState): boolean {
  return state.kind === 'done' || state.kind === 'skipped'
}

/** Marks made in the same minute keep the order in which they were added. */
function marksByStep(job: Job): ReadonlyMap<string, readonly Mark[]> {
  const inTime = records(job.marks).toSorted((a, b) => compareText(a.at, b.at))
  return groupedBy(inTime, ({ stepKey }) => stepKey)
}

function stateOf(job: Job, specification: Specification, step: Step, mark: Mark | undefined): StepState {
  if (mark === undefined) return { kind: 'todo' }
  switch (mark.mark) {
    case 'cleared':
      return { kind: 'todo' }
    case 'started':
      return { kind: 'started', at: mark.at, crewMemberIds: mark.crewMemberIds }
    case 'skipped':
    case 'redo':
      return { kind: mark.mark, at: mark.at, note: mark.note }
    case 'done':
      return { kind: 'done', at: mark.at, ...dryingAfter(job, specification, step, mark.at) }
  }
}

function dryingAfter(job: Job, specification: Specification, step: Step, at: SiteMoment) {
  const { timeZone } = job.header
  const waits = specification.order.filter((order) => order.before === step.key)
  const least = Math.max(step.touchDry, ...waits.map((order) => order.minimumWait))
  const limits = waits.flatMap((order) => (order.maximumWait === null ? [] : [order.maximumWait]))
  return {
    touchDryAt: momentAfter(at, step.touchDry, timeZone),
    recoatFrom: momentAfter(at, least, timeZone),
    recoatBy: limits.length === 0 ? null : momentAfter(at, Math.min(...limits), timeZone),
  }
}
