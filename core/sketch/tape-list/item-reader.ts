import type { TrimKind } from '../../project/vocabulary.ts'
import type { Length, LengthUnitSystem } from '../../units/length.ts'
import type { TapeCloset, TapeOpening, TapePart, TapeRoom, TapeSentence } from './tape-records.ts'
import { numberWords } from './tape-words.ts'

/** What stands behind the size of a line. */
export interface TapeItems {
  readonly height: readonly Length[]
  readonly openings: readonly TapeOpening[]
  readonly less: readonly NonNullable<TapeRoom['less']>[]
  readonly slopes: readonly NonNullable<TapeRoom['slope']>[]
  readonly lights: readonly number[]
  readonly radiators: readonly number[]
  readonly closets: readonly number[]
  readonly closetRooms: readonly TapeCloset[]
  readonly trim: readonly { readonly kind: TrimKind; readonly height: Length | null }[]
  readonly without: readonly TrimKind[]
  readonly notes: readonly string[]
  readonly parts: readonly TapePart[]
  readonly sentences: readonly TapeSentence[]
}

/** One thing that was read: where it ends and what it adds. */
export interface Found {
  readonly end: number
  readonly adds: Partial<Omit<TapeItems, 'parts'>>
  readonly role: TapePart['role']
}

export type Reader = (text: string, at: number, system: LengthUnitSystem) => Found | null

/** What a pattern finds right at this place. */
export function sticky(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at
  return pattern.exec(text)
}

/** Where the text goes on behind a pattern, or this place. */
export function skip(text: string, at: number, pattern: RegExp): number {
  return at + (sticky(pattern, text, at)?.[0].length ?? 0)
}

/** What was taken in doubt, as a sentence that does not stop the line; nothing where there is no doubt. */
export function doubts(part: string, doubt: string | null): readonly TapeSentence[] {
  return doubt === null ? [] : [{ part, sentence: doubt, weight: 'say' }]
}

/** Something that was not understood: the line makes no room until it is put right. */
export function stopped(end: number, part: string, sentence: string, role: TapePart['role']): Found {
  return { end, role, adds: { sentences: [{ part: part.trim(), sentence, weight: 'stop' }] } }
}

const countPattern = /(\d{1,2})(?![\d.,/'"])\s*(?:-(?=[a-z\d])\s*)?(?:x(?![a-z])\s*)?|([a-z]+) /iy

/** A count in figures or words with where it ends; 1 and the same place where none stands. */
export function countAt(
  text: string,
  at: number,
): { readonly count: number; readonly end: number; readonly isSaid: boolean } {
  const found = sticky(countPattern, text, at)
  const spoken = numberWords[found?.[2]?.toLowerCase() ?? '']
  if (found?.[1] !== undefined) return { count: Number(found[1]), end: at + found[0].length, isSaid: true }
  if (found && spoken !== undefined) return { count: spoken, end: at + found[0].length, isSaid: true }
  return { count: 1, end: at, isSaid: false }
}
