import { expect, test } from 'vitest'
import { groupedBy, isGroup, isOneOf, keysOf, present, tableByKey } from '../../core/lists/lists.ts'

test('what has to be there is given back, zero and the empty text too, and else stops the program', () => {
  expect([present(0), present(''), present(false)]).toEqual([0, '', false])
  expect(() => present([1][1])).toThrow('missing')
  expect(() => present(null)).toThrow('missing')
})

test('items are grouped in the order in which their keys are come upon', () => {
  const groups = groupedBy(['door', 'wall', 'deck', 'window'], (word) => word.charAt(0))
  expect([...groups]).toEqual([
    ['d', ['door', 'deck']],
    ['w', ['wall', 'window']],
  ])
})

test('a table is made of keys, and its keys are those', () => {
  const lengths = tableByKey(['sill', 'jamb'], (word) => word.length + 1)
  expect(lengths).toEqual({ sill: 5, jamb: 5 })
  expect(keysOf(lengths)).toEqual(['sill', 'jamb'])
})

test('a word is one of some words only where it stands among them', () => {
  expect([isOneOf(['a', 'b'], 'b'), isOneOf(['a', 'b'], 'c')]).toEqual([true, false])
})

test('objects and lists have parts, texts and nothing have none', () => {
  expect([{}, [], null, 'text', undefined].map(isGroup)).toEqual([true, true, false, false, false])
})
