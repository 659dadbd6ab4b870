import { type Arc, never, type SiteNet } from '../net/site-net.ts'

/**
 * Tasks that must be placed together because a maximum wait ties them, in an order that respects the minimum waits;
 * most blocks are a single task. `before` are the blocks that must be placed first.
 */
export interface Block {
  readonly members: readonly number[]
  readonly before: readonly number[]
}

/** Does the arc order its ends: may `to` be placed only after `from`? */
export function isOrdering(arc: Arc): boolean {
  return arc.atLeast >= 0
}

/** Groups of a directed graph that reach each other, each group after those it is reached from (Tarjan, without recursion). */
export function strongComponents(
  count: number,
  successors: readonly (readonly number[])[],
): readonly (readonly number[])[] {
  const order = new Int32Array(count).fill(-1)
  const low = new Int32Array(count)
  const onStack = new Uint8Array(count)
  const next = new Int32Array(count)
  const stack: number[] = []
  const found: number[][] = []
  let counter = 0
  for (let root = 0; root < count; root++) {
    if (order[root] !== -1) continue
    const path = [root]
    while (path.length > 0) {
      const node = path[path.length - 1] as number
      if (order[node] === -1) {
        order[node] = low[node] = counter++
        stack.push(node)
        onStack[node] = 1
      }
      const follower = successors[node]?.[next[node] as number]
      if (follower !== undefined) {
        next[node] = (next[node] as number) + 1
        if (order[follower] === -1) path.push(follower)
        else if (onStack[follower] === 1) low[node] = Math.min(low[node] as number, order[follower] as number)
        continue
      }
      path.pop()
      const parent = path[path.length - 1]
      if (parent !== undefined) low[parent] = Math.min(low[parent] as number, low[node] as number)
      if (low[node] !== order[node]) continue
      const group: number[] = []
      for (let member = -1; member !== node; ) {
        member = stack.pop() as number
        onStack[member] = 0
        group.push(member)
      }
      found.push(group)
    }
  }
  return found.reverse()
}

export function blocksOf(net: SiteNet): readonly Block[] {
  const count = net.tasks.length
  const forward: number[][] = Array.from({ length: count }, () => [])
  const both: number[][] = Array.from({ length: count }, () => [])
  for (const arc of net.arcs) {
    const early = isOrdering(arc) ? arc.from : arc.to
    const late = isOrdering(arc) ? arc.to : arc.from
    if (isOrdering(arc)) {
      forward[early]?.push(late)
      both[early]?.push(late)
    }
    if (arc.atMost < never) both[arc.to]?.push(arc.from)
    if (arc.atMost < never && !isOrdering(arc)) both[arc.from]?.push(arc.to)
  }
  const groups = strongComponents(count, both)
  const blockOf = new Int32Array(count)
  for (const [block, members] of groups.entries()) for (const member of members) blockOf[member] = block
  const before = groups.map(() => new Set<number>())
  for (const arc of net.arcs) {
    const early = blockOf[arc.from] as number
    const late = blockOf[arc.to] as number
    if (isOrdering(arc) && early !== late) before[late]?.add(early)
  }
  return groups.map((members, block) => ({
    members: orderInside(members, forward),
    before: [...(before[block] ?? [])],
  }))
}

function orderInside(members: readonly number[], forward: readonly (readonly number[])[]): readonly number[] {
  if (members.length === 1) return members
  const waiting = new Map(members.map((member) => [member, 0]))
  for (const member of members) {
    for (const follower of forward[member] ?? []) {
      if (waiting.has(follower)) waiting.set(follower, (waiting.get(follower) ?? 0) + 1)
    }
  }
  const ordered: number[] = []
  while (waiting.size > 0) {
    const least = [...waiting].reduce((best, entry) => (entry[1] < best[1] ? entry : best))
    waiting.delete(least[0])
    ordered.push(least[0])
    for (const follower of forward[least[0]] ?? []) {
      if (waiting.has(follower)) waiting.set(follower, (waiting.get(follower) ?? 0) - 1)
    }
  }
  return ordered
}
