import type { OpeningKind, RoomUse, SlabKind, TrimKind } from '../../project/vocabulary.ts'
import type { Length } from '../../units/length.ts'

/** Openings of one sort in a line; what is null or empty is the job's usual. */
export interface TapeOpening {
  readonly kind: OpeningKind
  readonly count: number
  readonly width: Length | null
  readonly height: Length | null
  readonly slab: SlabKind | null
  /** Leaves of a door or units of a window side by side. */
  readonly parts: 1 | 2 | 3
  readonly isFixed: boolean
  /** A door that leads outdoors and is shared with no room. */
  readonly isOutside: boolean
}

/** A room as a line says it. */
export interface TapeRoom {
  readonly name: string
  readonly use: RoomUse
  readonly width: Length
  readonly depth: Length
  /** Null: as high as its kind, the heading above it or the job's usual. */
  readonly height: Length | null
  readonly openings: readonly TapeOpening[]
  /** No opening but closets is named, so that it has those of its kind. */
  readonly isUsual: boolean
  /** A corner of the rectangle that does not belong to the room. */
  readonly less: { readonly width: Length; readonly depth: Length } | null
  /** Heights of a ceiling that slopes one way. */
  readonly slope: { readonly low: Length; readonly high: Length } | null
  /** Null: as many lights as its kind has. */
  readonly lights: number | null
  readonly radiators: number
  /** Each has a door of its own in the room. */
  readonly closets: number
  /** Closets whose size is said, which are rooms of their own; each is one of `closets` too. */
  readonly closetRooms: readonly TapeCloset[]
  readonly trim: readonly { readonly kind: TrimKind; readonly height: Length | null }[]
  readonly without: readonly TrimKind[]
  readonly note: string
}

/** Width and depth of a closet, and its height where that is said. */
export interface TapeCloset {
  readonly width: Length
  readonly depth: Length
  readonly height: Length | null
}

/** A storey that the rooms below a heading stand on. */
export interface TapeStorey {
  readonly name: string
  readonly level: number
}

/** What a part of a line was taken as; every word of a line is in one part. */
export interface TapePart {
  readonly role:
    | 'name'
    | 'size'
    | 'height'
    | 'opening'
    | 'thing'
    | 'trim'
    | 'note'
    | 'storey'
    | 'filler'
    | 'unread'
  readonly text: string
}

export interface TapeSentence {
  /** The part of the line it is about. */
  readonly part: string
  readonly sentence: string
  /** `stop`: nothing is made of the line until it is mended. */
  readonly weight: 'stop' | 'say'
}

export interface TapeLine {
  /** From 1. */
  readonly number: number
  readonly text: string
  readonly storey: TapeStorey | null
  /** Height that a heading gives to the rooms below it. */
  readonly ceilings: Length | null
  /** Null for headings, empty lines, and lines that have to be mended. */
  readonly room: TapeRoom | null
  readonly sentences: readonly TapeSentence[]
  readonly parts: readonly TapePart[]
}
