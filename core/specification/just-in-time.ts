import type { Edge } from './order.ts'

interface InTime {
  /** In a valid order of work. */
  readonly keys: readonly string[]
  readonly edges: readonly Edge[]
}

/**
 * Puts each serving step (dusting off, vacuuming, masking, scuffing) right before the first step that waits for it, and lets it start no
 * sooner than that one may: whatever comes before what it serves comes before it too, with the same wait. `keys` are in a valid order.
 */
export function servedJustInTime(
  keys: readonly string[],
  edges: readonly Edge[],
  isServing: (key: string) => boolean,
): InTime {
  const into = new Map(keys.map((key) => [key, new Map<string, Edge>()]))
  for (const edge of edges) into.get(edge.after)?.set(edge.before, edge)
  const order = [...keys]
  for (const key of keys.filter(isServing).toReversed()) {
    const served = order.find((each) => into.get(each)?.has(key))
    if (served === undefined) continue
    order.splice(order.indexOf(key), 1)
    order.splice(order.indexOf(served), 0, key)
    const known = into.get(key) as Map<string, Edge>
    for (const edge of into.get(served)?.values() ?? []) {
      if (edge.before !== key && !isServing(edge.before)) known.set(edge.before, taken(known, edge, key))
    }
  }
  return { keys: order, edges: [...into.values()].flatMap((each) => [...each.values()]) }
}

/** The edge to the serving step: its own where it says as much, else that of what it serves. */
function taken(known: ReadonlyMap<string, Edge>, edge: Edge, key: string): Edge {
  const own = known.get(edge.before)
  if (own === undefined) return { ...edge, after: key, maximumWait: null }
  return own.minimumWait >= edge.minimumWait ? own : { ...own, minimumWait: edge.minimumWait }
}
