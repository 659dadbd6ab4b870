import { present } from '../lists/lists.ts'
import type { Precedence } from './order.ts'

interface InTime {
  /** In a valid order of work. */
  readonly keys: readonly string[]
  readonly precedences: readonly Precedence[]
}

/**
 * Puts each serving step (dusting off, vacuuming, masking, scuffing) right before the first step that waits for it, and lets it start no
 * sooner than that one may: whatever comes before what it serves comes before it too, with the same wait. `keys` are in a valid order.
 */
export function servedJustInTime(
  keys: readonly string[],
  precedences: readonly Precedence[],
  isServing: (key: string) => boolean,
): InTime {
  const into = new Map(keys.map((key) => [key, new Map<string, Precedence>()]))
  for (const precedence of precedences) into.get(precedence.after)?.set(precedence.before, precedence)
  const order = [...keys]
  for (const key of keys.filter(isServing).toReversed()) {
    const served = order.find((each) => into.get(each)?.has(key))
    if (served === undefined) continue
    order.splice(order.indexOf(key), 1)
    order.splice(order.indexOf(served), 0, key)
    const known = present(into.get(key))
    for (const precedence of into.get(served)?.values() ?? []) {
      if (precedence.before !== key && !isServing(precedence.before))
        known.set(precedence.before, taken(known, precedence, key))
    }
  }
  return { keys: order, precedences: [...into.values()].flatMap((each) => [...each.values()]) }
}

/** The precedence to the serving step: its own where it says as much, else that of what it serves. */
function taken(known: ReadonlyMap<string, Precedence>, precedence: Precedence, key: string): Precedence {
  const own = known.get(precedence.before)
  if (own === undefined) return { ...precedence, after: key, maximumWait: null }
  return own.minimumWait >= precedence.minimumWait ? own : { ...own, minimumWait: precedence.minimumWait }
}
