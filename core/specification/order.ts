import { type Problem, problem } from '../project/problem.ts'
import { elapsedMinutes } from '../units/duration.ts'
import type { StepOrder } from './types.ts'

/** An order edge in the making; where two rules give one, the longer wait and the more special reason stand. */
export interface Edge {
  readonly before: string
  readonly after: string
  readonly minimumWait: number
  readonly maximumWait: number | null
  readonly ruleId: string
  readonly reason: string
  readonly source: string
  readonly special: boolean
}

export function mergeEdges(edges: readonly Edge[]): readonly Edge[] {
  const byPair = new Map<string, Edge>()
  for (const edge of edges) {
    if (edge.before === edge.after) continue
    const pair = `${edge.before}\n${edge.after}`
    const found = byPair.get(pair)
    byPair.set(pair, found === undefined ? edge : mergeTwo(found, edge))
  }
  return [...byPair.values()]
}

function mergeTwo(first: Edge, second: Edge): Edge {
  const lead = !first.special && second.special ? second : first
  const limits = [first.maximumWait, second.maximumWait].filter((wait) => wait !== null)
  return {
    ...lead,
    minimumWait: Math.max(first.minimumWait, second.minimumWait),
    maximumWait: limits.length === 0 ? null : Math.min(...limits),
  }
}

interface Ordered {
  /** Keys in a valid order; where a clash leaves none, edges of the clash are left out of account. */
  readonly keys: readonly string[]
  readonly clashes: readonly Problem[]
}

/** How a clash names rules and steps to people. */
interface ClashNames {
  readonly rule: (ruleId: string) => string
  readonly step: (key: string) => string
}

const asTheyAre: ClashNames = { rule: (ruleId) => ruleId, step: (key) => key }

/**
 * Sorts keys so that every edge points forwards; ties go to the key listed first. A cycle is reported with the two rules that
 * clash on it and then set aside, so that all clashes are found.
 */
export function sortSteps(
  keys: readonly string[],
  edges: readonly Edge[],
  names: ClashNames = asTheyAre,
): Ordered {
  const clashes: Problem[] = []
  let kept = edges
  for (;;) {
    const sorted = kahn(keys, kept)
    if (sorted.length === keys.length) return { keys: sorted, clashes }
    const cycle = findCycle(keys, kept, new Set(sorted))
    const [first, second] = clashingEdges(cycle)
    clashes.push(orderClash(first, second, names))
    const dropped = new Set([first, second])
    kept = kept.filter((edge) => !dropped.has(edge))
  }
}

function kahn(keys: readonly string[], edges: readonly Edge[]): readonly string[] {
  const position = new Map(keys.map((key, index) => [key, index]))
  const open = new Map(keys.map((key) => [key, 0]))
  const following = new Map<string, string[]>()
  for (const { before, after } of edges) {
    open.set(after, (open.get(after) ?? 0) + 1)
    const list = following.get(before)
    if (list === undefined) following.set(before, [after])
    else list.push(after)
  }
  const ready = keys.filter((key) => open.get(key) === 0)
  const sorted: string[] = []
  while (ready.length > 0) {
    const key = takeFirst(ready, position)
    sorted.push(key)
    for (const next of following.get(key) ?? []) {
      const left = (open.get(next) ?? 0) - 1
      open.set(next, left)
      if (left === 0) ready.push(next)
    }
  }
  return sorted
}

function takeFirst(ready: string[], position: ReadonlyMap<string, number>): string {
  let best = 0
  for (let index = 1; index < ready.length; index += 1) {
    if ((position.get(ready[index] ?? '') ?? 0) < (position.get(ready[best] ?? '') ?? 0)) best = index
  }
  return ready.splice(best, 1)[0] as string
}

/** Edges around one cycle among the keys that could not be sorted. */
function findCycle(
  keys: readonly string[],
  edges: readonly Edge[],
  sorted: ReadonlySet<string>,
): readonly Edge[] {
  const stuck = edges.filter((edge) => !sorted.has(edge.before) && !sorted.has(edge.after))
  const incoming = new Map(stuck.map((edge) => [edge.after, edge]))
  const path: Edge[] = []
  const seen = new Map<string, number>()
  let at = keys.find((key) => incoming.has(key) && !sorted.has(key)) ?? ''
  for (;;) {
    const start = seen.get(at)
    if (start !== undefined) return path.slice(start)
    seen.set(at, path.length)
    const edge = incoming.get(at)
    if (edge === undefined) throw new Error(`step ${at} is stuck without anything before it`)
    path.push(edge)
    at = edge.before
  }
}

/** Two edges of the cycle from different rules, special ones first; from one rule where it contradicts itself. */
function clashingEdges(cycle: readonly Edge[]): readonly [Edge, Edge] {
  const ranked = cycle.toSorted((a, b) => Number(b.special) - Number(a.special))
  const first = ranked[0] as Edge
  const second = ranked.find((edge) => edge.ruleId !== first.ruleId) ?? ranked[1] ?? first
  return [first, second]
}

function orderClash(first: Edge, second: Edge, { rule, step }: ClashNames): Problem {
  const wants = (edge: Edge) => `“${step(edge.before)}” before “${step(edge.after)}” (${edge.reason})`
  return problem(
    'ruleClash',
    `The rules “${rule(first.ruleId)}” and “${rule(second.ruleId)}” contradict each other: the first wants ${wants(first)}, the second ${wants(second)}. Switch one of them off.`,
    [first.ruleId, second.ruleId, first.before, first.after],
  )
}

/** An edge between places in the sorted order. */
interface PlacedEdge {
  readonly edge: Edge
  readonly to: number
}

/**
 * Leaves out every edge that others already imply with at least its wait, so that what stays are true neighbours. Edges with a
 * longest wait always stay. `keys` are in a valid order.
 */
export function reduceOrder(keys: readonly string[], edges: readonly Edge[]): readonly Edge[] {
  const position = new Map(keys.map((key, index) => [key, index]))
  const outgoing: PlacedEdge[][] = keys.map(() => [])
  for (const edge of edges) {
    outgoing[position.get(edge.before) ?? 0]?.push({ edge, to: position.get(edge.after) ?? 0 })
  }
  const kept = new Set<Edge>()
  for (const [from, list] of outgoing.entries()) {
    const around = longestWaits(from, outgoing)
    for (const { edge, to } of list) {
      if (edge.maximumWait !== null || (around[to] ?? -1) < edge.minimumWait) kept.add(edge)
    }
  }
  return edges.filter((edge) => kept.has(edge))
}

/** The longest total wait to every later place over at least two edges; -1 where there is no such way. */
function longestWaits(from: number, outgoing: readonly (readonly PlacedEdge[])[]): readonly number[] {
  const overOne = outgoing.map(() => -1)
  const overMore = outgoing.map(() => -1)
  for (const { edge, to } of outgoing[from] ?? []) overOne[to] = Math.max(overOne[to] ?? -1, edge.minimumWait)
  for (let at = from + 1; at < outgoing.length; at += 1) {
    const reached = Math.max(overOne[at] ?? -1, overMore[at] ?? -1)
    if (reached < 0) continue
    for (const { edge, to } of outgoing[at] ?? []) {
      overMore[to] = Math.max(overMore[to] ?? -1, reached + edge.minimumWait)
    }
  }
  return overMore
}

export function stepOrder(edge: Edge): StepOrder {
  const { before, after, ruleId, reason, source } = edge
  return {
    before,
    after,
    minimumWait: elapsedMinutes(edge.minimumWait),
    maximumWait: edge.maximumWait === null ? null : elapsedMinutes(edge.maximumWait),
    ruleId,
    reason,
    source,
  }
}
