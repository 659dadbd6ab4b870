import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mergePrecedences, type Precedence, reduceOrder, sortSteps } from '../../core/specification/order.ts'

function precedence(before: string, after: string, changes: Partial<Precedence> = {}): Precedence {
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
    [precedence('sand', 'dust'), precedence('dust', 'coat')],
  )
  expect(keys).toEqual(['sand', 'dust', 'coat', 'putBack'])
  expect(clashes).toEqual([])
})

test('a contradiction is reported with the two rules, and every other edge still holds', () => {
  const precedences = [
    precedence('fill', 'seal', { ruleId: 'fill-first' }),
    precedence('seal', 'fill', { ruleId: 'seal-first' }),
    precedence('seal', 'coat'),
    precedence('fill', 'coat'),
  ]
  const { keys, clashes } = sortSteps(['coat', 'fill', 'seal'], precedences)
  expect(clashes).toHaveLength(1)
  expect(clashes[0]?.kind).toBe('ruleClash')
  expect(clashes[0]?.ids.slice(0, 2).toSorted()).toEqual(['fill-first', 'seal-first'])
  expect(keys.at(-1)).toBe('coat')
})

test('a longer cycle names two rules on it, never one that only leads there', () => {
  const precedences = [
    precedence('start', 'a'),
    precedence('a', 'b'),
    precedence('b', 'c'),
    precedence('c', 'a'),
    precedence('c', 'end'),
  ]
  const { clashes } = sortSteps(['start', 'a', 'b', 'c', 'end'], precedences)
  expect(clashes).toHaveLength(1)
  for (const id of clashes[0]?.ids.slice(0, 2) ?? []) expect(['a-b', 'b-c', 'c-a']).toContain(id)
})

test('two contradictions are both reported', () => {
  const precedences = [precedence('a', 'b'), precedence('b', 'a'), precedence('c', 'd'), precedence('d', 'c')]
  expect(sortSteps(['a', 'b', 'c', 'd'], precedences).clashes).toHaveLength(2)
})

test('of two edges between the same steps the longer wait and the shorter limit stand, with the more special reason', () => {
  const [merged] = mergePrecedences([
    precedence('a', 'b', { minimumWait: 60, maximumWait: 500, ruleId: 'general' }),
    precedence('a', 'b', { minimumWait: 30, maximumWait: 90, ruleId: 'special', special: true }),
  ])
  expect(merged).toMatchObject({ minimumWait: 60, maximumWait: 90, ruleId: 'special' })
})

test('an edge that others imply with the same wait is left out; one with a longer wait or a limit stays', () => {
  const chain = [precedence('a', 'b', { minimumWait: 60 }), precedence('b', 'c', { minimumWait: 60 })]
  const reduced = (extra: Precedence) => reduceOrder(['a', 'b', 'c'], [...chain, extra]).length
  expect(reduced(precedence('a', 'c', { minimumWait: 120 }))).toBe(2)
  expect(reduced(precedence('a', 'c', { minimumWait: 121 }))).toBe(3)
  expect(reduced(precedence('a', 'c', { maximumWait: 500 }))).toBe(3)
})

test('what is left of an order implies every edge and every wait that was in it', () => {
  const size = 7
  const names = Array.from({ length: size }, (_, index) => `s${index}`)
  const precedences = fc.array(fc.tuple(fc.nat(size - 1), fc.nat(size - 1), fc.integer({ min: 0, max: 9 })), {
    maxLength: 25,
  })
  fc.assert(
    fc.property(precedences, (list) => {
      const all = mergePrecedences(
        list.flatMap(([from, to, minimumWait]) =>
          from < to ? [precedence(names[from] ?? '', names[to] ?? '', { minimumWait })] : [],
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
function longestWays(names: readonly string[], precedences: readonly Precedence[]) {
  const longest = (from: string, to: string): number =>
    Math.max(
      -1,
      ...precedences
        .filter((each) => each.before === from)
        .map((each) => {
          if (each.after === to) return each.minimumWait
          const rest = names.indexOf(each.after) < names.indexOf(to) ? longest(each.after, to) : -1
          return rest < 0 ? -1 : each.minimumWait + rest
        }),
    )
  return longest
}
