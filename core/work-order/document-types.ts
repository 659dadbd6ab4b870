import type { CrewMemberId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Because, Caution, Notice } from '../specification/types.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import type { Cents } from '../units/money.ts'
import type { HoldLine } from './hold-words.ts'
import type { RoomPlan } from './room-plan.ts'
import type { SiteMoment } from './site-time.ts'
import type { TripDays } from './trips.ts'

/** All documents of a job as data; pages and files are made from it. Amounts are worded in the job's unit system. */
export interface WorkOrder {
  readonly title: string
  readonly client: string
  readonly site: string
  readonly unitSystem: LengthUnitSystem
  readonly yearBuilt: number | null
  readonly startsOn: string
  readonly finishesOn: string
  readonly cover: Cover
  readonly rooms: readonly RoomSheet[]
  /** By date. */
  readonly days: readonly SiteDay[]
  readonly weeks: readonly WeekSheet[]
  readonly shopping: ShoppingList
  readonly estimate: ClientEstimate
}

export interface Cover {
  readonly rooms: readonly CoverRoom[]
  readonly crew: readonly string[]
  /** What has to be cleared before surfaces are touched, cleared or not. */
  readonly holds: readonly HoldLine[]
  /** What somebody has to decide before work goes on. */
  readonly toDecide: readonly Notice[]
  readonly notices: readonly Notice[]
  /** Cautions of the whole job, each once. */
  readonly cautions: readonly Caution[]
}

export interface CoverRoom {
  readonly roomId: RoomId
  readonly name: string
  readonly storey: string
  readonly startsAt: SiteMoment | null
  readonly endsAt: SiteMoment | null
  /** Last work ended and touch dry: from then on the household may have it. */
  readonly freeAt: SiteMoment | null
  readonly promisedBy: SiteMoment | null
  readonly minutes: number
}

export interface FoundLine {
  /** The number drawn in the plan. */
  readonly number: number
  readonly where: string
  readonly what: string
  readonly amount: string
  readonly note: string
}

export interface QuantityLine {
  readonly surfaceClass: string
  readonly netArea: string
  readonly length: string
  readonly cuttingIn: string
  readonly masking: string
  readonly glassPerimeter: string
  readonly count: string
}

export interface StepLine {
  readonly stepKey: string
  readonly number: number
  readonly what: string
  readonly where: string
  /** Product class, product, colour and sheen, or nothing. */
  readonly material: string
  /** Area, length or pieces worked, edges cut in. */
  readonly amounts: readonly string[]
  /** Of the product. */
  readonly volume: string
  /** Person-minutes, once. */
  readonly minutes: number
  readonly daily: boolean
  readonly startsAt: SiteMoment | null
  readonly endsAt: SiteMoment | null
  readonly people: readonly string[]
  readonly notBefore: { readonly at: SiteMoment; readonly reason: string } | null
  readonly notAfter: { readonly at: SiteMoment; readonly reason: string } | null
  /** Only where the step is out of the usual, and each reason only at the first step of the room it is for. */
  readonly reasons: readonly Because[]
  /** Numbers of the steps that give the same reasons. */
  readonly reasonsAt: readonly number[]
  /** Numbers of the room's cautions. */
  readonly cautions: readonly number[]
}

export interface RegisterLine {
  readonly name: string
  readonly where: string
  readonly count: number
  readonly handling: string
  readonly wired: boolean
}

export interface RoomSheet {
  readonly roomId: RoomId
  readonly name: string
  readonly storey: string
  readonly note: string
  readonly dates: CoverRoom
  readonly plan: RoomPlan
  readonly found: readonly FoundLine[]
  readonly quantities: readonly QuantityLine[]
  readonly steps: readonly StepLine[]
  readonly cautions: readonly Caution[]
  readonly holds: readonly HoldLine[]
  /** Besides the holds. */
  readonly notices: readonly Notice[]
  readonly register: readonly RegisterLine[]
}

/** Passes that somebody works in one room set in one half of a day. */
export interface HalfDayWork {
  readonly roomSetId: RoomId
  readonly roomName: string
  /** In the order they are worked. */
  readonly passes: readonly string[]
}

/** A product in one color and sheen, with the rooms it is for. */
export interface CanLine {
  readonly what: string
  readonly roomNames: readonly string[]
}

export interface PersonDay {
  readonly crewMemberId: CrewMemberId
  readonly name: string
  readonly morning: readonly HalfDayWork[]
  readonly afternoon: readonly HalfDayWork[]
  readonly cans: readonly CanLine[]
  /** Of lead and asbestos, where the day's work needs them. */
  readonly cautions: readonly Caution[]
}

/** Comes back every day in the rooms that are worked in. */
export interface DayChore {
  readonly kind: 'alarms' | 'cleaning'
  readonly roomNames: readonly string[]
}

/** One day on site, to the half day: it stays true when a pass slips by an hour. */
export interface SiteDay {
  readonly date: string
  /** Who works on that day, in the order of the crew list. */
  readonly people: readonly PersonDay[]
  readonly chores: readonly DayChore[]
  /** Sees to the chores of the whole house: who leaves last. Null where there are none. */
  readonly choresOwner: CrewMemberId | null
}

/** The days on site of one week. */
export interface WeekSheet {
  /** Local date of its Monday. */
  readonly monday: string
  readonly days: readonly SiteDay[]
}

/** What to buy, with every container and piece in the trip that first needs it. */
export interface ShoppingList {
  readonly daysBetweenTrips: number
  readonly trips: readonly ShoppingTrip[]
  /** Of each product in one color and sheen, over all trips. */
  readonly totals: readonly ShoppingTotal[]
}

export interface ShoppingTrip extends TripDays {
  readonly lines: readonly ShoppingLine[]
  /** Needed from this trip on; what hands bring home again. */
  readonly tools: readonly string[]
}

export interface ShoppingTotal {
  readonly item: string
  readonly brand: string
  readonly colour: string
  readonly colourCode: string
  readonly sheen: string
  /** What the work takes, what is kept for touching up, and what is bought. */
  readonly neededGallons: number
  readonly spareGallons: number
  readonly boughtGallons: number
  readonly containers: readonly { readonly count: number; readonly name: string }[]
}

export interface ShoppingLine {
  /** Number of the trip. */
  readonly trip: number
  readonly item: string
  /** Empty where the shop has not said. */
  readonly brand: string
  readonly productClass: string
  readonly colour: string
  /** What the store tints it by; empty where nobody has said. */
  readonly colourCode: string
  readonly sheen: string
  readonly container: string
  readonly containerGallons: number | null
  readonly count: number
  /** What to mind when buying; empty for most. */
  readonly advice: string
  /** What the work takes of this product in all, or null for sundries. */
  readonly neededGallons: number | null
  /** Of this product in all, bought besides for touching up; 0 for none. */
  readonly spareGallons: number
  readonly unitPriceCents: Cents
  readonly priceCents: Cents
  /** Local date of the first step of the trip that needs it; null for what is bought ahead of its trip, a can of a batch. */
  readonly neededOn: string | null
}

export interface ClientEstimate {
  readonly rooms: readonly { readonly name: string; readonly scope: string; readonly cents: Cents }[]
  readonly beforeTax: Cents
  readonly tax: Cents
  readonly total: Cents
  readonly optional: readonly { readonly label: string; readonly cents: Cents }[]
  readonly doubts: readonly string[]
  readonly terms: readonly string[]
}
