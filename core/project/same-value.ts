import { isGroup } from '../lists/lists.ts'
/** Two values that would be written alike: compared through and through, a part that is `undefined` being no part. */
export function sameValue(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true
  if (!isGroup(one) || !isGroup(other)) return false
  if (Array.isArray(one) !== Array.isArray(other)) return false
  const [first, second] = [partsOf(one), partsOf(other)]
  return first.length === second.length && first.every(([key, part]) => sameValue(part, other[key]))
}

function partsOf(value: object): readonly (readonly [string, unknown])[] {
  return Object.entries(value).filter(([, part]) => part !== undefined)
}
