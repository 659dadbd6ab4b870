import { sameValue } from '../../../../core/project/same-value.ts'
import { openingNouns } from '../../../../core/project/sketch-words.ts'
import type { Picked } from '../../../../core/sketch/many/picked.ts'

/** What all of them have; null where they differ or there is none. */
export function common<Item, Value>(items: readonly Item[], pick: (item: Item) => Value): Value | null {
  const [first, ...others] = items.map(pick)
  return first !== undefined && others.every((other) => sameValue(first, other)) ? first : null
}

/** Shown where what is picked does not have one value. */
export const differs = 'different'

/** `3 rooms, 4 windows, 2 walls`. */
export function pickedWords({ rooms, openings, walls }: Picked): string {
  const kinds = [...new Set(openings.map(({ kind }) => kind))]
  const counts: readonly (readonly [number, string])[] = [
    [rooms.length, 'room'],
    ...kinds.map((kind) => [openings.filter((one) => one.kind === kind).length, openingNouns[kind]] as const),
    [walls.length, 'wall'],
  ]
  return counts
    .filter(([count]) => count > 0)
    .map(([count, noun]) => `${count} ${noun}${count === 1 ? '' : 's'}`)
    .join(', ')
}
