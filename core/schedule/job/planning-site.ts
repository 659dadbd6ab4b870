import type { Pass, Passes } from '../../passes/pass-types.ts'
import { type Job, records } from '../../project/job.ts'
import { compareText } from '../../words/text.ts'
import type { Person, PlanSegment, SiteClock } from '../model.ts'
import { personOf } from './site-hours.ts'
import type { StepFact } from './step-facts.ts'

/** All starts and ends lie on whole steps of so many minutes. */
export const planGrid = 5

/** What could not be asked of the plan as it was written down. */
export const relaxations = [
  'pinLost',
  'eveningsLost',
  'roomBegun',
  'splitOverNight',
  'fumesOverNight',
  'holdNoDate',
  'holdOverdue',
] as const

export interface Relaxed {
  readonly what: (typeof relaxations)[number]
  /** A pin, a room set, a pass or a hold. */
  readonly id: string
}

/** What every part of a problem is made from. */
export interface Site {
  readonly job: Job
  readonly passes: Passes
  readonly facts: ReadonlyMap<string, StepFact>
  readonly clock: Extract<SiteClock, { kind: 'site' }>
  readonly people: readonly Person[]
  /** Local day before which a step may not be planned, by step key. */
  readonly heldFrom: ReadonlyMap<string, string>
  readonly relaxed: Relaxed[]
}

/** A pass, or the part of it that is done while the rest is not, as one task. */
export interface PassTask {
  /** Of the task: the pass's key, with `#done` behind it for the part that is done while the rest is not. */
  readonly id: string
  readonly pass: Pass
  readonly stepKeys: readonly string[]
}

/**
 * By id, so that the same job gives the same plan in whatever order its crew was entered. `busy`: stretches in which they work on other
 * accepted jobs, by id.
 */
export function crewOf(job: Job, busy: Readonly<Record<string, readonly PlanSegment[]>>): readonly Person[] {
  const { burdenPercent } = job.houseRules.price
  return records(job.crew)
    .toSorted((one, other) => compareText(one.id, other.id))
    .map((member) => personOf(member, planGrid, burdenPercent, busy[member.id] ?? []))
}
