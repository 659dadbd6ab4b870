import { expect, test } from 'vitest'
import { lastAnswer } from '../../renderer/state/last-answer.ts'

test('what is asked again with the same values is the same answer, and anything else is worked out', () => {
  const pair = lastAnswer((one: object, other: number) => ({ one, other }))
  const thing = {}
  const first = pair(thing, 1)
  expect(pair(thing, 1)).toBe(first)
  expect(pair(thing, 2)).toEqual({ one: thing, other: 2 })
  expect(pair({}, 2).one).not.toBe(thing)
  expect(pair(thing, 1)).not.toBe(first)
})
