import type { CrewMemberId, ProductId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Caution, Notice } from '../specification/types.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import type { Cents } from '../units/money.ts'
import type { FamilyPage } from './family-types.ts'
import type { HouseColors } from './house-colors.ts'
import type { HousePicture } from './house-picture.ts'
import type { LeadRule } from './lead-rules.ts'
import type { Phase } from './phases.ts'
import type { Proposal } from './proposal/proposal-types.ts'
import type { RoomDay } from './room-day.ts'
import type { ColorLine, RoomSheet, SheetHold } from './room-sheet/sheet-types.ts'
import type { TripDays } from './trips.ts'
import type { RoomWalls } from './wall-colors.ts'

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
  readonly family: FamilyPage
  /** A second page for the household. */
  readonly house: HouseWeeks
  readonly colors: ColorsPaper
  readonly shopping: ShoppingList
  readonly proposal: Proposal
  readonly colorRecord: ColorRecord
}

export interface Cover {
  /** How the client is reached; empty where nobody has said. */
  readonly phones: string
  readonly access: string
  readonly rooms: readonly CoverRoom[]
  readonly crew: readonly string[]
  /** What has to be cleared before surfaces are touched, cleared or not. */
  readonly holds: readonly (SheetHold & { readonly roomNumber: number; readonly roomName: string })[]
  /** What somebody has to decide before work goes on. */
  readonly toDecide: readonly Notice[]
  readonly notices: readonly Notice[]
  /** In full where any room is under the federal rule; else none. */
  readonly leadRules: readonly LeadRule[]
  /** Cautions of the whole job, each once. */
  readonly cautions: readonly Caution[]
}

/** A row of the cover: one room set. */
export interface CoverRoom
  extends Pick<
    RoomSheet,
    | 'roomSetId'
    | 'number'
    | 'name'
    | 'storey'
    | 'alongside'
    | 'firstDay'
    | 'lastDay'
    | 'freeAt'
    | 'promisedBy'
    | 'personMinutes'
  > {
  /** In the order of time. */
  readonly phases: readonly PhaseDays[]
}

/** Local dates on which one phase of a room is worked on. */
export interface PhaseDays {
  readonly phase: Phase
  readonly days: readonly string[]
}

/** What the client keeps when the work is done. */
export interface ColorRecord {
  readonly client: string
  readonly site: string
  readonly rooms: readonly {
    readonly roomSetId: RoomId
    readonly name: string
    readonly alongside: readonly string[]
    readonly colors: readonly ColorLine[]
    readonly unpainted: readonly string[]
  }[]
  /** Finish paints of the whole job, and what is bought of each to be kept. */
  readonly paints: readonly {
    readonly productId: ProductId
    readonly product: string
    readonly brand: string
    readonly color: string
    readonly code: string
    readonly sheen: string
    readonly spareGallons: number
    readonly roomNames: readonly string[]
  }[]
  readonly care: readonly string[]
  /** Empty where the federal rule asks for no lead-safe work. */
  readonly leadPapers: readonly string[]
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

/** The house on the first day of its weeks, for one page: all drawn from one picture, in millimeters. */
export interface HouseWeeks {
  readonly picture: HousePicture
  readonly days: readonly { readonly date: string; readonly rooms: ReadonlyMap<RoomId, RoomDay> }[]
}

/** The house in its colors, its picture in millimeters. */
interface ColorsPaper {
  readonly house: HouseColors
  readonly picture: HousePicture
  /** Half a page high. */
  readonly halfPicture: HousePicture
  readonly walls: readonly RoomWalls[]
  /** Kept beside the colors of the job; one that no longer fits is left out. */
  readonly schemes: readonly { readonly name: string; readonly house: HouseColors }[]
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
