import type { Business } from '../project/business-record.ts'
import type { CollectionName, HouseRules, JobHeader, RecordOf } from '../project/job.ts'
import type {
  Casing,
  CeilingOpening,
  CeilingShape,
  Corner,
  FloorShape,
  Opening,
  OpeningId,
  Room,
  RoomId,
  Storey,
  StoreyId,
  TrimRun,
  WallId,
} from '../project/sketch-records.ts'
import type { RoomUse } from '../project/vocabulary.ts'
import type { Length } from '../units/length.ts'

/** What a new room starts with; the caller takes it from the storey and the shop (`roomDefaultsFor`). */
export interface RoomDefaults {
  readonly ceiling: CeilingShape
  readonly above: Room['above']
  /** Trim on all its walls; ids are new ones. */
  readonly trim: readonly Omit<TrimRun, 'roomId' | 'walls'>[]
}

/** Collections that rooms made at once put records into, in the order in which these hang on each other. */
export const drawnNames = ['storeys', 'rooms', 'openings', 'trimRuns', 'keptItems', 'builtItems'] as const
export type Drawn = { readonly [Name in (typeof drawnNames)[number]]: readonly RecordOf<Name>[] }

/** A door or cased opening that stood before and leads into another room from now on. */
export interface JoinedWay {
  readonly openingId: OpeningId
  readonly far: WallPlace
}

export interface RecordTarget {
  readonly collection: CollectionName
  readonly id: string
}

type WallPlace = { readonly roomId: RoomId; readonly wallId: WallId }

/**
 * Everything a hand can do to a sketch, and to the records that hang on it, as data. Lengths and coordinates are whole 1/8000 mm.
 * Ids of what is new come with the command, so that the same command on the same job always gives the same job.
 */
export type SketchCommand =
  | {
      readonly kind: 'addRoom'
      readonly id: RoomId
      readonly storeyId: StoreyId
      readonly name: string
      readonly use: RoomUse
      /** In order, at the finished face; the last is joined to the first. */
      readonly corners: readonly Corner[]
      readonly defaults: RoomDefaults
    }
  /** Whole rooms with what is in them, as one edit. */
  | { readonly kind: 'addDrawn'; readonly drawn: Drawn; readonly joins: readonly JoinedWay[] }
  /** A corner is named by the wall that starts there. Openings keep their distance from the ends that stay. */
  | (WallPlace & { readonly kind: 'moveCorner'; readonly x: number; readonly y: number })
  /**
   * Shifts a wall parallel to itself, outward when `by` is positive; its neighbours keep their directions. `withFacing` takes along the
   * walls of other rooms that share an opening with it, so that a partition stays as thick as it is.
   */
  | (WallPlace & { readonly kind: 'moveWall'; readonly by: number; readonly withFacing: boolean })
  /** Gives a wall an exact length by shifting the wall at its other end; the `fixed` end stays. */
  | (WallPlace & { readonly kind: 'setWallLength'; readonly length: Length; readonly fixed: 'start' | 'end' })
  | (WallPlace & { readonly kind: 'setWallBehind'; readonly behind: Corner['behind'] })
  | {
      readonly kind: 'moveRooms'
      readonly roomIds: readonly RoomId[]
      readonly dx: number
      readonly dy: number
    }
  /** Splits a wall at a distance from its start; the new wall is the far part. */
  | (WallPlace & { readonly kind: 'insertCorner'; readonly at: Length; readonly newWallId: WallId })
  /** Takes the corner at the start of the wall away; the wall before it swallows the wall and all that is on it. */
  | (WallPlace & { readonly kind: 'removeCorner' })
  | { readonly kind: 'addOpening'; readonly opening: Opening }
  /** Slides an opening; with a wall named, it changes to another wall of its room. */
  | {
      readonly kind: 'moveOpening'
      readonly openingId: OpeningId
      readonly offset: Length
      readonly wallId?: WallId
    }
  | {
      readonly kind: 'resizeOpening'
      readonly openingId: OpeningId
      readonly offset: Length
      readonly width: Length
      readonly height: Length
      readonly sill: Length
    }
  | {
      readonly kind: 'setOpening'
      readonly openingId: OpeningId
      readonly change: Partial<Omit<Opening, 'id'>>
    }
  /** Makes an opening one thing between two rooms, or with null, parts them again. */
  | {
      readonly kind: 'joinOpening'
      readonly openingId: OpeningId
      readonly far: WallPlace | null
      readonly casingFar: Casing | null
    }
  /** Makes two openings of one between two rooms, so that each room has its own; the far room's gets the new id. */
  | { readonly kind: 'partOpening'; readonly openingId: OpeningId; readonly newId: OpeningId }
  | { readonly kind: 'addTrimRun'; readonly trimRun: TrimRun }
  | { readonly kind: 'addCeilingOpening'; readonly ceilingOpening: CeilingOpening }
  | { readonly kind: 'setCeiling'; readonly roomId: RoomId; readonly ceiling: CeilingShape }
  | { readonly kind: 'setFloor'; readonly roomId: RoomId; readonly floor: FloorShape }
  | { readonly kind: 'renameRoom'; readonly roomId: RoomId; readonly name: string }
  | {
      readonly kind: 'setRoom'
      readonly roomId: RoomId
      readonly change: Partial<Omit<Room, 'id' | 'corners'>>
    }
  /**
   * Copies rooms with everything drawn in them and their finishes, moved by dx, dy; what was found on site is not copied.
   * `newIds` gives an id for each of `recordsOfRooms`.
   */
  | {
      readonly kind: 'duplicateRooms'
      readonly roomIds: readonly RoomId[]
      readonly storeyId: StoreyId | null
      readonly dx: number
      readonly dy: number
      readonly newIds: Readonly<Record<string, string>>
      readonly names: Readonly<Record<string, string>>
    }
  /** Takes records away with everything that hangs on them. An opening between two rooms stays with the room that stays. */
  | { readonly kind: 'removeRecords'; readonly targets: readonly RecordTarget[] }
  | { readonly kind: 'addStorey'; readonly storey: Storey }
  | { readonly kind: 'renameStorey'; readonly storeyId: StoreyId; readonly name: string }
  | { readonly kind: 'removeStorey'; readonly storeyId: StoreyId }
  /** Adds a record or puts it in the place of the one with its id. */
  | {
      readonly kind: 'putRecord'
      readonly collection: CollectionName
      readonly record: RecordOf<CollectionName>
    }
  | { readonly kind: 'removeRecord'; readonly collection: CollectionName; readonly id: string }
  | { readonly kind: 'setHeader'; readonly change: Partial<JobHeader> }
  | { readonly kind: 'setHouseRules'; readonly change: Partial<HouseRules> }
  | { readonly kind: 'setBusiness'; readonly change: Partial<Business> }
