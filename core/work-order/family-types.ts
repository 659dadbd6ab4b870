import type { RoomId } from '../project/sketch-records.ts'

/** Local dates of the first and last day on which the household does without the room. */
export interface FamilyStretch {
  readonly from: string
  readonly to: string
}

/** For the household: nothing internal is on it. */
export interface FamilyPage {
  readonly title: string
  readonly startsOn: string
  readonly finishesOn: string
  /** In the order in which they are taken. */
  readonly rooms: readonly FamilyRoom[]
  /** What children and pets are kept from, and everybody else. */
  readonly keepAway: readonly string[]
}

export interface FamilyRoom {
  readonly roomSetId: RoomId
  readonly name: string
  readonly stretches: readonly FamilyStretch[]
  /** Null for a room nobody planned yet. */
  readonly readyAt: { readonly date: string; readonly half: 'noon' | 'evening' | 'morning' } | null
  /** What the household takes out before the crew comes. */
  readonly moveBefore: readonly string[]
}
