import type { Job } from '../project/job.ts'
import type { Room } from '../project/sketch-records.ts'
import type { KeptItem } from '../project/survey-records.ts'
import type { ProductClass } from '../project/vocabulary.ts'
import type { Finding } from './findings.ts'
import type { Group } from './groups.ts'
import type { HoldNeed } from './holds.ts'
import type { PrimerNeed } from './primers.ts'
import type { RuleBook } from './rule-book.ts'
import type { OrderStatement, RuleFacts } from './rule-facts.ts'
import type { Notice, Operation } from './types.ts'

/**
 * How much of its group a step covers: all of it, all of the surfaces something was found on, the places found (as spots, overlap included), what was measured of them
 * (feet of crack, count of fasteners), or the edges that are masked.
 */
export type Extent = 'whole' | 'surfaces' | 'spots' | 'measured' | 'masking'

/** A step as one rule asks for it; requests with the same operation and ordinal become one step with several reasons. */
export interface StepRequest {
  readonly operation: Operation
  /** Part of the step's key: a role that does not move when other steps come or go. */
  readonly ordinal: string
  readonly extent: Extent
  readonly findings: readonly Finding[]
  readonly productClass: ProductClass | null
  /** Carries the colour and sheen of the finish. */
  readonly coloured: boolean
  /** Minutes to dry where no product says so (a wash); null where the product does. */
  readonly dryMinutes: number | null
}

export type PrimerLayer = 'sealChalk' | 'sealBare' | 'block' | 'prime'

export interface PrimerRequest {
  readonly need: PrimerNeed
  readonly extent: 'whole' | 'spots'
  readonly findings: readonly Finding[]
  /** `block` primers go on stains and knots only; seals come before filling; `prime` makes the ground for the finish. */
  readonly layer: PrimerLayer
  /** Tinted towards the finish colour. */
  readonly tinted: boolean
}

export interface Contribution {
  readonly steps?: readonly StepRequest[]
  readonly primers?: readonly PrimerRequest[]
  /** Finish coats this rule asks for; the most any rule asks for go on. */
  readonly coats?: number
  /** Coats on top of all that rules ask for. */
  readonly moreCoats?: number
  readonly holds?: readonly HoldNeed[]
  readonly notices?: readonly Notice[]
}

/** What a rule of a group may look at. `planned` are the steps that earlier rules asked for. */
export interface GroupView {
  readonly job: Job
  readonly room: Room
  readonly group: Group
  readonly book: RuleBook
  readonly planned: readonly PlannedRequest[]
  /** Something in this room is scraped or sanded before the coats. */
  readonly roomIsDusty: boolean
}

export interface PlannedRequest extends StepRequest {
  readonly ruleId: string
}

export interface RoomView {
  readonly job: Job
  readonly room: Room
  readonly groups: readonly Group[]
  readonly keptItems: readonly KeptItem[]
  readonly book: RuleBook
  /** Square feet of painted surface the planned steps disturb in this room. */
  readonly disturbedSquareFeet: number
  /** Groups whose old surface is scraped, opened or sanded. */
  readonly disturbedGroups: ReadonlySet<string>
}

/**
 * A rule on one group of like surfaces. `found` rules look at what is there, `system` rules choose the coating, `coats` rules
 * count coats over what was primed, `follow` rules add what earlier steps make necessary (dusting off, masking).
 */
export interface GroupRule extends RuleFacts {
  readonly level: 'group'
  readonly phase: 'found' | 'system' | 'coats' | 'follow'
  /** Rules that treat the same thing another way: with both on, they clash. */
  readonly instead?: readonly string[]
  readonly when: (view: GroupView) => boolean
  readonly consequence: (view: GroupView) => Contribution
  readonly order: readonly OrderStatement[]
}

/** A rule on a room as a whole. */
export interface RoomRule extends RuleFacts {
  readonly level: 'room'
  readonly holds?: (view: RoomView) => readonly HoldNeed[]
  readonly notices: (view: RoomView) => readonly Notice[]
}

/** A rule that only says what comes first, or only keeps numbers for other functions. */
export interface HouseRule extends RuleFacts {
  readonly level: 'house'
  readonly order: readonly OrderStatement[]
}

export type Rule = GroupRule | RoomRule | HouseRule

export const commonPractice = 'common practice'
export const shopAssumption = 'shop assumption'
