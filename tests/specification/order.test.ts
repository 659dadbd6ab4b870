import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Edge, mergeEdges, reduceOrder, sortSteps } from '../../core/specification/order.ts'

function edge(before: string, after: string, changes: Partial<Edge> = {}): Edge {
  return {
    before,
    after,
    minimumWait: 0,
    maximumWait: null,
    ruleId: `${before}-${after}`,
    reason: `${before} first`,
    source: 'test',
    special: false,
    ...changes,
  }
}

test('steps are sorted by their edges, ties in the order listed', () => {
  const { keys, clashes } = sortSteps(
    ['coat', 'sand', 'dust', 'putBack'],
    [edge('sand', 'dust'), edge('dust', 'coat')],
  )
  expect(keys).toEqual(['sand', 'dust', 'coat', 'putBack'])
  expect(clashes).toEqual([])
})

test('a contradiction is reported with the two rules, and every other edge still holds', () => {
  const edges = [
    edge('fill', 'seal', { ruleId: 'fill-first' }),
    edge('seal', 'fill', { ruleId: 'seal-first' }),
    edge('seal', 'coat'),
    edge('fill', 'coat'),
  ]
  const { keys, clashes } = sortSteps(['coat', 'fill', 'seal'], edges)
  expect(clashes).toHaveLength(1)
  expect(clashes[0]?.kind).toBe('ruleClash')
  expect(clashes[0]?.ids.slice(0, 2).toSorted()).toEqual(['fill-first', 'seal-first'])
  expect(keys.at(-1)).toBe('coat')
})

test('a longer cycle names two rules on it, never one that only leads there', () => {
  const edges = [edge('start', 'a'), edge('a', 'b'), edge('b', 'c'), edge('c', 'a'), edge('c', 'end')]
  const { clashes } = sortSteps(['start', 'a', 'b', 'c', 'end'], edges)
  expect(clashes).toHaveLength(1)
  for (const id of clashes[0]?.ids.slice(0, 2) ?? []) expect(['a-b', 'b-c', 'c-a']).toContain(id)
})

test('two contradictions are both reported', () => {
  const edges = [edge('a', 'b'), edge('b', 'a'), edge('c', 'd'), edge('d', 'c')]
  expect(sortSteps(['a', 'b', 'c', 'd'], edges).clashes).toHaveLength(2)
})

test('of two edges between the same steps the longer wait and the shorter limit stand, with the more special reason', () => {
  const [merged] = mergeEdges([
    edge('a', 'b', { minimumWait: 60, maximumWait: 500, ruleId: 'general' }),
    edge('a', 'b', { minimumWait: 30, maximumWait: 90, ruleId: 'special', special: true }),
  ])
  expect(merged).toMatchObject({ minimumWait: 60, maximumWait: 90, ruleId: 'special' })
})

test('an edge that others imply with the same wait is left out; one with a longer wait or a limit stays', () => {
  const chain = [edge('a', 'b', { minimumWait: 60 }), edge('b', 'c', { minimumWait: 60 })]
  const reduced = (extra: Edge) => reduceOrder(['a', 'b', 'c'], [...chain, extra]).length
  expect(reduced(edge('a', 'c', { minimumWait: 120 }))).toBe(2)
  expect(reduced(edge('a', 'c', { minimumWait: 121 }))).toBe(3)
  expect(reduced(edge('a', 'c', { maximumWait: 500 }))).toBe(3)
})

test('what is left of an order implies every edge and every wait that was in it', () => {
  const size = 7
  const names = Array.from({ length: size }, (_, index) => `s${index}`)
  const edges = fc.array(fc.tuple(fc.nat(size - 1), fc.nat(size - 1), fc.integer({ min: 0, max: 9 })), {
    maxLength: 25,
  })
  fc.assert(
    fc.property(edges, (list) => {
      const all = mergeEdges(
        list.flatMap(([from, to, minimumWait]) =>
          from < to ? [edge(names[from] ?? '', names[to] ?? '', { minimumWait })] : [],
        ),
      )
      const longest = longestWays(names, reduceOrder(names, all))
      for (const { before, after, minimumWait } of all) {
        expect(longest(before, after)).toBeGreaterThanOrEqual(minimumWait)
      }
    }),
  )
})

/** Longest total wait from one step to another by trying every way; -1 where there is none. */
function longestWays(names: readonly string[], edges: readonly Edge[]) {
  const longest = (from: string, to: string): number =>
    Math.max(
      -1,
      ...edges
        .filter((each) => each.before === from)
        .map((each) => {
          if (each.after === to) return each.minimumWait
          const rest = names.indexOf(each.after) < names.indexOf(to) ? longest(each.after, to) : -1
          return rest < 0 ? -1 : each.minimumWait + rest
        }),
    )
  return longest
}
