import type { PassKind } from '../../passes/pass-types.ts'
import type { ProductId } from '../../project/shop-records.ts'
import type { OpeningId, RoomId } from '../../project/sketch-records.ts'
import type { ColourId } from '../../project/survey-records.ts'
import type { KeptItemHandling, PhotoStage, Sheen } from '../../project/vocabulary.ts'
import type { Caution } from '../../specification/types.ts'
import type { SiteMoment } from '../../time/site-moment.ts'
import type { HoldLine } from '../hold-words.ts'
import type { PlanMarker, PlanPoint, RoomPlan } from '../room-plan.ts'

/** Everything one person needs to paint a room set, without clock times and without names in its lines: it stays true when the plan moves. */
export interface RoomSheet {
  readonly roomSetId: RoomId
  /** In the order in which the plan begins the rooms; the same number stands on the cover. */
  readonly number: number
  readonly name: string
  readonly storey: string
  /** Names of the small rooms worked with it. */
  readonly alongside: readonly string[]
  readonly personMinutes: number
  /** Local dates of its first and last work in the plan; null while nothing of it is planned. */
  readonly firstDay: string | null
  readonly lastDay: string | null
  /** Last work ended and touch dry: from then on the household may have it. */
  readonly freeAt: SiteMoment | null
  readonly promisedBy: SiteMoment | null
  /** Who does most of the work in it by the plan. */
  readonly lead: string | null
  /** To the highest place of the main room, `9 ft`; empty where nothing of it was measured. */
  readonly ceilingHeight: string
  /** The federal renovation rule asks for its steps here. */
  readonly leadSafe: boolean
  /** The main room first. */
  readonly plans: readonly RoomPlan[]
  /** Walls with several findings. */
  readonly walls: readonly WallDrawing[]
  readonly openings: readonly OpeningLine[]
  readonly colors: readonly ColorLine[]
  /** What stays as it is, in words. */
  readonly unpainted: readonly string[]
  readonly repairs: readonly RepairLine[]
  /** On pages behind the sheet. */
  readonly photos: readonly PhotoLine[]
  readonly passes: readonly PassEntry[]
  /** How a brush goes round doors, sash and stairs, and what else changes what a hand does. */
  readonly handling: readonly string[]
  /** At most four, those of the whole house left out. */
  readonly cautions: readonly Caution[]
  readonly holds: readonly SheetHold[]
  /** What else somebody has to know or decide here. */
  readonly notices: readonly NoticeLine[]
  readonly register: readonly RegisterLine[]
  /** Of the rooms, as written down in the sketch. */
  readonly notes: readonly string[]
}

/** A hold with the surfaces it keeps, `walls A`. */
export interface SheetHold extends HoldLine {
  readonly where: string
}

export interface OpeningLine {
  readonly openingId: OpeningId
  /** Letters go on from those of the walls, so that none stands for two things on a sheet. */
  readonly letter: string
  /** `door to Stair hall`, `window "east"`. */
  readonly words: string
}

/** Surfaces of one product, color and sheen over one primer. */
export interface ColorLine {
  /** `Ceiling`, `Trim and sash`; letters where not all of the room is meant. */
  readonly surface: string
  readonly productId: ProductId | null
  readonly product: string
  readonly colourId: ColourId | null
  readonly color: string
  /** What the store tints it by; empty where nobody has said. */
  readonly code: string
  readonly sheen: Sheen | null
  /** `bonding primer, all of it`, `acrylic primer on patches`; empty for none. */
  readonly primer: string
  readonly coats: number
  /** Area, length or pieces of one coat. */
  readonly amount: string
  /** Of the finish, all coats. */
  readonly gallons: number
  readonly primerGallons: number
  /** Keys of its finish coats and primers. */
  readonly stepKeys: readonly string[]
}

export interface RepairLine {
  /** The number drawn in the plan; null for what every room has and nobody pointed out. */
  readonly number: number | null
  readonly what: string
  /** Empty where the amount says it: `walls 61, trim 47`. */
  readonly where: string
  readonly amount: string
  /** `open to a V, fill with setting filler, sand, spot-prime with acrylic primer`; empty where nothing is done yet. */
  readonly how: string
  /** Suspected cause and what was written down; empty for none. */
  readonly note: string
  /** `photo crack.jpg` for one kept elsewhere, `2 photos behind`; empty for none. */
  readonly photo: string
}

export interface PhotoLine {
  /** Hash of the small picture. */
  readonly picture: string
  /** Of the finding it shows; null for a room. */
  readonly number: number | null
  /** The room, or what was found. */
  readonly subject: string
  readonly stage: PhotoStage
  readonly note: string
}

export interface PassEntry {
  readonly passKey: string
  readonly stepKeys: readonly string[]
  readonly number: number
  readonly kind: PassKind
  readonly name: string
  readonly lines: readonly PassLineEntry[]
  readonly personMinutes: number
  readonly waits: readonly PassWait[]
  /** Numbers of the sheet's holds. */
  readonly holds: readonly number[]
}

export interface PassLineEntry {
  /** `Coat 1`, `Fill in layers with setting filler`. */
  readonly what: string
  /** `crown 48 ft, doors E, F`; empty for the room as a whole. */
  readonly where: string
  /** The same without amounts. */
  readonly place: string
  /** Dusting, vacuuming, masking: goes with other work of its pass. */
  readonly serves: boolean
  /** The finish it puts on, `Linen, eggshell`; empty for all else. */
  readonly finish: string
  readonly personMinutes: number
}

/** Not before so many elapsed minutes after another pass of the sheet; where `atMost` is given, no later than that. */
export interface PassWait {
  readonly after: number
  readonly afterName: string
  readonly atLeast: number
  readonly atMost: number | null
}

export interface NoticeLine {
  readonly sentence: string
  /** Work must wait until somebody acts. */
  readonly stops: boolean
}

export interface RegisterLine {
  readonly name: string
  readonly where: string
  readonly count: number
  readonly handling: KeptItemHandling
  readonly wired: boolean
}

/** A wall square on from inside the room, in millimeters from its upper left corner, y down. */
export interface WallDrawing {
  /** `Wall B`, or `Rear closet, wall B`. */
  readonly name: string
  readonly widthMm: number
  readonly heightMm: number
  readonly outline: readonly PlanPoint[]
  readonly openings: readonly WallOpening[]
  readonly markers: readonly PlanMarker[]
}

interface WallOpening {
  readonly letter: string
  readonly from: PlanPoint
  readonly to: PlanPoint
}
