import type { RoomSet } from '../project/room-sets.ts'
import type { ProductId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { ColourId } from '../project/survey-records.ts'
import type { Sheen, Skill, SurfaceClass } from '../project/vocabulary.ts'
import type { Caution, Operation, StepAmounts, WoodworkPart } from '../specification/types.ts'
import type { LocalDate } from '../time/local-date.ts'
import type { ElapsedMinutes, WorkingMinutes } from '../units/duration.ts'

/** Person-minutes by step key. */
export type MinutesByStep = ReadonlyMap<string, WorkingMinutes>

/** What goes on in a pass, in the order of a room. `slow` is a first visit for what dries or cures for days. */
export const passKinds = [
  'setUp',
  'slow',
  'repair',
  'sand',
  'prime',
  'ceiling',
  'woodwork',
  'walls',
  'stairs',
  'putBack',
] as const
export type PassKind = (typeof passKinds)[number]

/** The kind that a pass's key says, `woodwork` of `bedroom-1/woodwork/2`; undefined for a key of another form. */
export function kindOfPass(key: string): PassKind | undefined {
  const word = key.split('/')[1]
  return passKinds.find((kind) => kind === word)
}

/** One line of a pass as a painter would write it: one operation with one product and color over its surfaces. */
export interface PassLine {
  readonly operation: Operation
  /** Null where the line covers surfaces of several classes, or the room as a whole. */
  readonly surfaceClass: SurfaceClass | null
  /** 1, 2, 3 for finish coats; 0 otherwise. */
  readonly coat: number
  readonly productId: ProductId | null
  readonly colourId: ColourId | null
  readonly sheen: Sheen | null
  readonly stepKeys: readonly string[]
  /** Sums over the steps. */
  readonly amounts: StepAmounts
  /** Of its steps on whole woodwork, the same by kind. */
  readonly parts: readonly WoodworkPart[]
  /** Of the steps that stand in the plan once; daily steps count nothing here, they are the chores of each day. */
  readonly personMinutes: WorkingMinutes
  /** `Sand to dull the gloss: crown 48' 0", casings 121' 0", doors 2 faces`. */
  readonly words: string
}

/** What a pass does to its room set. Elapsed minutes after its end; null means "does not". */
export interface PassEffects {
  readonly touchDry: ElapsedMinutes | null
  readonly dusty: boolean
  readonly fumesFor: ElapsedMinutes | null
  readonly closedFor: ElapsedMinutes | null
}

/** What one or two people do in one room set in one go and would write as one line. */
export interface Pass {
  /** Outlives a new specification: room set, kind and ordinal, `bedroom-1/woodwork/2`. */
  readonly key: string
  readonly roomSetId: RoomId
  /** The rooms of the set that are worked in. */
  readonly roomIds: readonly RoomId[]
  readonly kind: PassKind
  /** `Woodwork, second coat`. */
  readonly name: string
  /** In a valid order of work. */
  readonly stepKeys: readonly string[]
  /** In the order they are worked. */
  readonly lines: readonly PassLine[]
  readonly personMinutes: WorkingMinutes
  readonly people: { readonly min: number; readonly max: number }
  /** All skills its lines ask for; a helper needs only those of the lines he works on. */
  readonly skills: readonly Skill[]
  /** `never`: a coat on a ceiling, a wall or a door face. `natural`: between two openings, two walls, two repairs. */
  readonly breaking: 'never' | 'natural'
  /** Person-minutes of the smallest part worth a visit where it may be broken; null where it may not. */
  readonly smallestPart: WorkingMinutes | null
  /** Product and color in the brush, `wall-paint/linen`; null for dry work. */
  readonly paint: string | null
  readonly effects: PassEffects
  /** Holds that none of its steps may begin before; all of its steps wait for one, or none does. */
  readonly holdKeys: readonly string[]
  /** The latest day one of the holds is expected to be cleared; null where nothing is held, or where nobody knows the day. */
  readonly notBefore: LocalDate | null
  readonly cautions: readonly Caution[]
}

/** `after` starts at least and, where given, at most so many elapsed minutes after the end of `before`. */
export interface PassOrder {
  readonly before: string
  readonly after: string
  readonly atLeast: ElapsedMinutes
  readonly atMost: ElapsedMinutes | null
  /** Both go round the same surfaces in the same order: the wait may run while they go round. */
  readonly sameOrder: boolean
  readonly reason: string
}

export interface Passes {
  readonly sets: readonly RoomSet[]
  /** In a valid order of work, room sets together. */
  readonly passes: readonly Pass[]
  readonly order: readonly PassOrder[]
}
