import { groupedBy, present } from '../lists/lists.ts'
import { type Problem, problem } from '../project/problem.ts'
import { elapsedMinutes } from '../units/duration.ts'
import type { StepOrder } from './types.ts'

/** An order precedence in the making; where two rules give one, the longer wait and the more special reason stand. */
export interface Precedence {
  readonly before: string
  readonly after: string
  readonly minimumWait: number
  readonly maximumWait: number | null
  readonly ruleId: string
  readonly reason: string
  readonly source: string
  readonly special: boolean
}

/**
 * One precedence for each pair of steps: the longer of two least waits, the shorter of two greatest ones. A step before itself
 * is left out.
 */
export function mergePrecedences(precedences: readonly Precedence[]): readonly Precedence[] {
  const byPair = new Map<string, Precedence>()
  for (const precedence of precedences) {
    if (precedence.before === precedence.after) continue
    const pair = `${precedence.before}\n${precedence.after}`
    const found = byPair.get(pair)
    byPair.set(pair, found === undefined ? precedence : mergeTwo(found, precedence))
  }
  return [...byPair.values()]
}

function mergeTwo(first: Precedence, second: Precedence): Precedence {
  const lead = !first.special && second.special ? second : first
  const limits = [first.maximumWait, second.maximumWait].filter((wait) => wait !== null)
  return {
    ...lead,
    minimumWait: Math.max(first.minimumWait, second.minimumWait),
    maximumWait: limits.length === 0 ? null : Math.min(...limits),
  }
}

interface Ordered {
  /** Keys in a valid order; where a clash leaves none, precedences of the clash are left out of account. */
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
 * Sorts keys so that every precedence points forwards; ties go to the key listed first. A cycle is reported with the two rules that
 * clash on it and then set aside, so that all clashes are found.
 */
export function sortSteps(
  keys: readonly string[],
  precedences: readonly Precedence[],
  names: ClashNames = asTheyAre,
): Ordered {
  const clashes: Problem[] = []
  let kept = precedences
  for (;;) {
    const sorted = kahn(keys, kept)
    if (sorted.length === keys.length) return { keys: sorted, clashes }
    const cycle = findCycle(keys, kept, new Set(sorted))
    const [first, second] = clashingPrecedences(cycle)
    clashes.push(orderClash(first, second, names))
    const dropped = new Set([first, second])
    kept = kept.filter((precedence) => !dropped.has(precedence))
  }
}

function kahn(keys: readonly string[], precedences: readonly Precedence[]): readonly string[] {
  const position = new Map(keys.map((key, index) => [key, index]))
  const open = new Map(keys.map((key) => [key, 0]))
  const following = groupedBy(precedences, ({ before }) => before)
  for (const { after } of precedences) open.set(after, (open.get(after) ?? 0) + 1)
  const ready = keys.filter((key) => open.get(key) === 0)
  const sorted: string[] = []
  while (ready.length > 0) {
    const key = takeFirst(ready, position)
    sorted.push(key)
    for (const { after: next } of following.get(key) ?? []) {
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
  return present(ready.splice(best, 1)[0])
}

/** Precedences around one cycle among the keys that could not be sorted. */
function findCycle(
  keys: readonly string[],
  precedences: readonly Precedence[],
  sorted: ReadonlySet<string>,
): readonly Precedence[] {
  const stuck = precedences.filter(
    (precedence) => !sorted.has(precedence.before) && !sorted.has(precedence.after),
  )
  const incoming = new Map(stuck.map((precedence) => [precedence.after, precedence]))
  const path: Precedence[] = []
  const seen = new Map<string, number>()
  let at = keys.find((key) => incoming.has(key) && !sorted.has(key)) ?? ''
  for (;;) {
    const start = seen.get(at)
    if (start !== undefined) return path.slice(start)
    seen.set(at, path.length)
    const precedence = incoming.get(at)
    if (precedence === undefined) throw new Error(`step ${at} is stuck without anything before it`)
    path.push(precedence)
    at = precedence.before
  }
}

/** Two precedences of the cycle from different rules, special ones first; from one rule where it contradicts itself. */
function clashingPrecedences(cycle: readonly Precedence[]): readonly [Precedence, Precedence] {
  const ranked = cycle.toSorted((a, b) => Number(b.special) - Number(a.special))
  const first = present(ranked[0])
  const second = ranked.find((precedence) => precedence.ruleId !== first.ruleId) ?? ranked[1] ?? first
  return [first, second]
}

function orderClash(first: Precedence, second: Precedence, { rule, step }: ClashNames): Problem {
  const wants = (precedence: Precedence) =>
    `“${step(precedence.before)}” before “${step(precedence.after)}” (${precedence.reason})`
  return problem(
    'ruleClash',
    `The rules “${rule(first.ruleId)}” and “${rule(second.ruleId)}” contradict each other: the first wants ${wants(first)}, the second ${wants(second)}. Switch one of them off.`,
    [first.ruleId, second.ruleId, first.before, first.after],
  )
}

/** An precedence between places in the sorted order. */
interface PlacedPrecedence {
  readonly precedence: Precedence
  readonly to: number
}

/**
 * Leaves out every precedence that others already imply with at least its wait, so that what stays are true neighbours. Precedences with a
 * longest wait always stay. `keys` are in a valid order.
 */
export function reduceOrder(
  keys: readonly string[],
  precedences: readonly Precedence[],
): readonly Precedence[] {
  const position = new Map(keys.map((key, index) => [key, index]))
  const outgoing: PlacedPrecedence[][] = keys.map(() => [])
  for (const precedence of precedences) {
    outgoing[position.get(precedence.before) ?? 0]?.push({
      precedence,
      to: position.get(precedence.after) ?? 0,
    })
  }
  const kept = new Set<Precedence>()
  for (const [from, list] of outgoing.entries()) {
    const around = longestWaits(from, outgoing)
    for (const { precedence, to } of list) {
      if (precedence.maximumWait !== null || (around[to] ?? -1) < precedence.minimumWait) kept.add(precedence)
    }
  }
  return precedences.filter((precedence) => kept.has(precedence))
}

/** The longest total wait to every later place over at least two precedences; -1 where there is no such way. */
function longestWaits(from: number, outgoing: readonly (readonly PlacedPrecedence[])[]): readonly number[] {
  const overOne = outgoing.map(() => -1)
  const overMore = outgoing.map(() => -1)
  for (const { precedence, to } of outgoing[from] ?? [])
    overOne[to] = Math.max(overOne[to] ?? -1, precedence.minimumWait)
  for (let at = from + 1; at < outgoing.length; at += 1) {
    const reached = Math.max(overOne[at] ?? -1, overMore[at] ?? -1)
    if (reached < 0) continue
    for (const { precedence, to } of outgoing[at] ?? []) {
      overMore[to] = Math.max(overMore[to] ?? -1, reached + precedence.minimumWait)
    }
  }
  return overMore
}

/** A precedence as the specification gives it out, its waits in minutes on the clock. */
export function stepOrder(precedence: Precedence): StepOrder {
  const { before, after, ruleId, reason, source } = precedence
  return {
    before,
    after,
    minimumWait: elapsedMinutes(precedence.minimumWait),
    maximumWait: precedence.maximumWait === null ? null : elapsedMinutes(precedence.maximumWait),
    ruleId,
    reason,
    source,
  }
}
