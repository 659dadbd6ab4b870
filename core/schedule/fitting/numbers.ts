/** How a task stands: as `TaskState`, in numbers. */
export const openTask = 0
export const pinnedTask = 1
export const startedTask = 2
export const doneTask = 3

/** No product, room, person, limit or tail. */
export const none = -1

/** People are bits of one word. */
export type PeopleBits = number

/** `own`, `other`: ticks that the first and the second last longer than their work where they meet. */
export interface Conflict {
  readonly other: number
  readonly ownTail: number
  readonly otherTail: number
}

/**
 * People as bits; nobody is 0.
 *
 * @param index place of each person, below 31
 */
export function bitsOf(people: readonly string[], index: ReadonlyMap<string, number>): PeopleBits {
  return people.reduce((bits, id) => bits | (1 << (index.get(id) ?? 31)), 0)
}

/** How many people they are. */
export function countBits(bits: number): number {
  let count = 0
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++
  return count
}

/** Minutes as ticks, rounded up, so that nothing gets less time than it needs. */
export function ticksUp(minutes: number, grid: number): number {
  return Math.ceil(minutes / grid)
}
