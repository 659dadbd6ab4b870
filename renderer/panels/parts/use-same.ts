import { useMemo, useRef } from 'react'
import { sameValue } from '../../../core/project/same-value.ts'

/** The value of before while it says the same, so that lists are not put together again for another object of the same words. */
export function useSame<Value>(value: Value): Value {
  const last = useRef(value)
  if (!sameValue(last.current, value)) last.current = value
  return last.current
}

/** A list with each item as it was before while it says the same; the items are told apart by `key`. */
export function useSameItems<Key extends PropertyKey, Item extends Readonly<Record<Key, string>>>(
  items: readonly Item[],
  key: Key,
): readonly Item[] {
  const before = useRef<readonly Item[]>([])
  const same = useMemo(() => {
    const known = new Map(before.current.map((item) => [item[key], item]))
    return items.map((item) => {
      const last = known.get(item[key])
      return last !== undefined && sameValue(last, item) ? last : item
    })
  }, [items, key])
  before.current = same
  return same
}
