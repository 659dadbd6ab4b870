import type { Problem } from '../project/problem.ts'
import type { ProductId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { ColourId, ConditionId, KeptItemId } from '../project/survey-records.ts'
import type { ProductClass, Sheen, Skill, SurfaceClass } from '../project/vocabulary.ts'
import type { LocalDate } from '../time/local-date.ts'
import type { Area } from '../units/area.ts'
import type { ElapsedMinutes } from '../units/duration.ts'
import type { Length } from '../units/length.ts'

/** What a person does in one step, in the trade's imperative. Each has a production rate of the same name. */
export const operations = [
  'protectRoom',
  'postSigns',
  'sheetFloor',
  'sealOpenings',
  'takeOff',
  'loosenHanging',
  'coverAlarm',
  'dustDown',
  'wash',
  'washMildew',
  'scrape',
  'stripWallpaper',
  'washOffSize',
  'washOffCalcimine',
  'openCrack',
  'driveFastener',
  'reattachPlaster',
  'sealChalk',
  'sealBare',
  'blockStain',
  'spotPrime',
  'dampCrack',
  'fill',
  'tapeCrack',
  'fillSmall',
  'skim',
  'puttySash',
  'freeSash',
  'caulk',
  'treatRust',
  'sandPatch',
  'sandFill',
  'sand',
  'vacuum',
  'dustOff',
  'degloss',
  'prime',
  'coat',
  'maskOff',
  'unmask',
  'easeSash',
  'scrapeGlass',
  'cleanDaily',
  'bagSheeting',
  'cleanFinal',
  'wipeCheck',
  'touchUp',
  'restoreAlarm',
  'refitHanging',
  'putBack',
  'cleanUp',
  'inspect',
] as const
export type Operation = (typeof operations)[number]

/** A caution printed with a step; `rule` is the cited law or standard, or `common practice`. */
export interface Caution {
  readonly id: string
  readonly text: string
  readonly rule: string
}

/** Why a step is there: the rule, its reason for the user, its source, and what triggered it. */
export interface Because {
  readonly ruleId: string
  readonly reason: string
  /** Standard, section, edition; or `common practice`; or `shop assumption`. */
  readonly source: string
  readonly conditionIds: readonly ConditionId[]
}

export interface StepAmounts {
  readonly area: Area
  readonly equivalentArea: Area
  readonly length: Length
  readonly cuttingIn: Length
  readonly glassPerimeter: Length
  readonly count: number
}

/** Kinds of woodwork, from the ceiling down. Trim is several; of the other classes each is one kind by itself. */
export const woodworkKinds = [
  'crown',
  'pictureRail',
  'chairRail',
  'wainscotCap',
  'casing',
  'jamb',
  'stool',
  'baseboard',
  'wainscot',
  'doors',
  'sash',
  'builtWork',
] as const
export type WoodworkKind = (typeof woodworkKinds)[number]

/** What of a step is on one kind of woodwork. */
export interface WoodworkPart {
  readonly kind: WoodworkKind
  readonly amounts: StepAmounts
}

/**
 * One line of the work order: one operation on one group of like surfaces of a room. Keys are stable: the same room, group,
 * operation and ordinal give the same key after any re-specification.
 */
export interface Step {
  readonly key: string
  readonly roomId: RoomId
  /** `ceiling`, `walls`, `trim`...; null for steps on the room as a whole. */
  readonly surfaceClass: SurfaceClass | null
  /** Like surfaces worked together: same class, substrate, coat found and finish. */
  readonly groupKey: string
  readonly surfaceKeys: readonly string[]
  readonly keptItemIds: readonly KeptItemId[]
  readonly operation: Operation
  /** 1, 2, 3 for finish coats; 0 otherwise. */
  readonly coat: number
  readonly productClass: ProductClass | null
  readonly productId: ProductId | null
  readonly colourId: ColourId | null
  readonly sheen: Sheen | null
  readonly amounts: StepAmounts
  /** The same amounts by kind of woodwork; none where nothing of it is woodwork, or where only spots of it are worked. */
  readonly parts: readonly WoodworkPart[]
  /** Rate multiplied by this for height, access and edges; 1 is plain. */
  readonly difficulty: number
  readonly skill: Skill
  /** What it does to the room while it lasts and until dry. */
  readonly effects: {
    readonly wet: boolean
    readonly dusty: boolean
    readonly fumes: boolean
    readonly closesRoom: boolean
  }
  /** Elapsed minutes until touch dry after it; 0 for dry work. */
  readonly touchDry: ElapsedMinutes
  /** May be left half done over a break or a night. */
  readonly splittable: 'no' | 'break' | 'night'
  /** Returns every working day (alarms covered and restored) instead of standing in the order once. */
  readonly daily: boolean
  readonly because: readonly Because[]
  readonly cautions: readonly Caution[]
}

/** `before` ends at least `minimumWait` (and, if given, at most `maximumWait`) elapsed minutes before `after` starts. */
export interface StepOrder {
  readonly before: string
  readonly after: string
  readonly minimumWait: ElapsedMinutes
  readonly maximumWait: ElapsedMinutes | null
  readonly ruleId: string
  readonly reason: string
  readonly source: string
}

/** Something the owner must know or decide; never a statement that something is safe. */
export interface Notice {
  readonly kind:
    | 'leadSafe'
    | 'asbestosSuspicion'
    /** A safety rule is left out here for a written reason. */
    | 'leftOut'
    | 'dewPoint'
    | 'cause'
    | 'compatibility'
    | 'advice'
    | 'missingProduct'
  readonly roomId: RoomId | null
  readonly surfaceKeys: readonly string[]
  readonly sentence: string
  readonly source: string
  /** True where work must wait until somebody acts. */
  readonly hold: boolean
  /** The hold this speaks of; absent where nothing is there to be cleared (a finish that would not hold, a product too cold). */
  readonly holdKey?: string
}

export const holdKinds = [
  'asbestos',
  'leak',
  'mildewCause',
  'newPlaster',
  'movingCrack',
  'loosePlaster',
  'dewPoint',
  'unknownCoat',
] as const
export type HoldKind = (typeof holdKinds)[number]

/**
 * Something that has to be known, cured or cleared before surfaces are touched. The steps that would disturb or coat them wait for it; what
 * may be done meanwhile elsewhere goes on.
 */
export interface Hold {
  /** Room, kind and surfaces: the same after any re-specification. */
  readonly key: string
  readonly roomId: RoomId
  readonly surfaceKeys: readonly string[]
  readonly kind: HoldKind
  readonly reason: string
  readonly whoSeesToIt: string
  /** The day from which work may go on; null when nobody knows. */
  readonly expectedOn: LocalDate | null
  /** Nobody named a day: it is the usual number of days after the job's first day, or, for what cures by itself, after it was found. */
  readonly expectedIsAssumed: boolean
  /** The usual number of days of its kind; a house rule, labelled a shop assumption where nothing else is said. */
  readonly usualDays: number
  readonly cleared: { readonly on: LocalDate; readonly by: string } | null
  /** Every step on the held surfaces: all of it disturbs or coats them. Covering, taking hardware off and dusting down are not among them, but for dusting down what may hold asbestos. */
  readonly stepKeys: readonly string[]
  readonly source: string
}

export interface Specification {
  /** In a valid order of work. */
  readonly steps: readonly Step[]
  readonly order: readonly StepOrder[]
  /** What is held, cleared or not, in the order of the rooms. Each that is not cleared has its notice too. */
  readonly holds: readonly Hold[]
  readonly notices: readonly Notice[]
  /** Contradictions between rules (kind `ruleClash`), naming both; never silently resolved. */
  readonly clashes: readonly Problem[]
}
