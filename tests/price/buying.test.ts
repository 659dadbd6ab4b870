import { expect, test } from 'vitest'
import { cansFor, isMixed, savingWorthIt, spareOf } from '../../core/price/buying.ts'
import type { ContainerSize } from '../../core/price/containers.ts'
import type { Cents } from '../../core/units/money.ts'
import { handStep, linen } from '../fixtures/plain-room.ts'

function size(gallons: number, priceCents: number): ContainerSize {
  return { name: `${gallons} gal`, gallons, priceCents: priceCents as Cents }
}
const shelf = [size(0.25, 1900), size(1, 4500), size(5, 19500)]

function counts(needed: number, mixed: boolean, sizes = shelf) {
  return cansFor(needed, sizes, mixed).containers.map((each) => [each.count, each.gallons])
}

test('a mixed color comes in whole gallons of one batch', () => {
  // 2.2 gal: two gallons and a quart would do, and do for a color that is not mixed.
  expect(counts(2.2, true)).toEqual([[3, 1]])
  expect(counts(2.2, false)).toEqual([
    [2, 1],
    [1, 0.25],
  ])
})

test('a mixed color that fits one small can comes in it; two small cans are a gallon', () => {
  expect(counts(0.2, true)).toEqual([[1, 0.25]])
  expect(counts(0.3, true)).toEqual([[1, 1]])
  expect(counts(0.2, true, [size(0.125, 300), size(0.25, 1900)])).toEqual([[1, 0.25]])
})

test('a product that comes in no gallon is bought in what there is', () => {
  expect(counts(0.6, true, [size(0.25, 1900)])).toEqual([[3, 0.25]])
})

test('small cans are bought only where they save enough', () => {
  // 0.5 gal: two quarts 38.00, a gallon 45.00; 7.00 saved are less than 10.00, so one gallon.
  expect(savingWorthIt).toBe(1000)
  expect(counts(0.5, false)).toEqual([[1, 1]])
  // At 49.00 a gallon the two quarts save 11.00.
  expect(counts(0.5, false, [size(0.25, 1900), size(1, 4900)])).toEqual([[2, 0.25]])
  // 9.3 gal: a pail, four gallons and two quarts 195 + 180 + 38 = 413; two pails cost 390 and are cheapest anyway.
  expect(counts(9.3, false)).toEqual([[2, 5]])
  // Exactly 10.00 saved is worth it.
  expect(counts(0.5, false, [size(0.25, 1900), size(1, 4800)])).toEqual([[2, 0.25]])
})

test('nothing needed buys nothing', () => {
  expect(counts(0, true)).toEqual([])
})

test('finish coats leave 3 percent for touching up, primers nothing', () => {
  expect(spareOf(2, [handStep('coat', { operation: 'coat' })])).toBeCloseTo(0.06, 12)
  expect(spareOf(2, [handStep('prime', { operation: 'prime' })])).toBe(0)
})

test('every color but white is mixed to order', () => {
  expect(isMixed(linen)).toBe(true)
  expect(isMixed({ ...linen, depth: 'white' })).toBe(false)
  expect(isMixed(undefined)).toBe(false)
})
