import { type Job, records } from '../../project/job.ts'
import type { RoomId } from '../../project/sketch-records.ts'
import type { Person, SiteClock } from '../model.ts'
import { personOf } from './site-hours.ts'
import type { StepFact } from './step-facts.ts'

/** All starts and ends lie on whole steps of so many minutes. */
export const planGrid = 5

/** What could not be asked of the plan as it was written down. */
export const relaxations = [
  'pinLost',
  'eveningsLost',
  'roomBegun',
  'splitOverBreak',
  'splitOverNight',
  'holdNoDate',
  'holdOverdue',
] as const

export interface Relaxed {
  readonly what: (typeof relaxations)[number]
  /** A pin, a room, a task or a hold. */
  readonly id: string
}

/** What every part of a problem is made from. */
export interface Site {
  readonly job: Job
  readonly facts: ReadonlyMap<string, StepFact>
  readonly clock: Extract<SiteClock, { kind: 'site' }>
  readonly people: readonly Person[]
  /** Of each of the people. */
  readonly longestTimes: readonly LongestTimes[]
  /** Local day before which a step may not be planned, by step key. */
  readonly heldFrom: ReadonlyMap<string, string>
  /** How many people each room has space for; null is no limit. */
  readonly peopleAtOnce: ReadonlyMap<RoomId, number | null>
}

/** The longest stretch between breaks, and the longest day, of a plain week of somebody; minutes. */
export interface LongestTimes {
  readonly stretch: number
  readonly day: number
}

/** By id, so that the same job gives the same plan in whatever order its crew was entered. */
export function crewOf(job: Job): readonly Person[] {
  return records(job.crew)
    .toSorted((one, other) => (one.id < other.id ? -1 : 1))
    .map((member) => personOf(member, planGrid))
}
