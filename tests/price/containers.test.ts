import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type ContainerSize, cheapestContainers } from '../../core/price/containers.ts'
import type { Cents } from '../../core/units/money.ts'

function size(gallons: number, priceCents: number): ContainerSize {
  return { name: `${gallons} gal`, gallons, priceCents: priceCents as Cents }
}
const shelf = [size(0.25, 1900), size(1, 4500), size(5, 19500)]

function counts(needed: number, sizes = shelf) {
  return cheapestContainers(needed, sizes).containers.map((each) => [each.count, each.gallons])
}

test('buys nothing for nothing', () => {
  expect(cheapestContainers(0, shelf)).toEqual({ containers: [], gallons: 0, priceCents: 0 })
})

test('buys one gallon rather than three quarts, because 3 x 19.00 is more than 45.00', () => {
  expect(counts(0.75)).toEqual([[1, 1]])
  expect(counts(0.5)).toEqual([[2, 0.25]])
})

test('buys a pail rather than four gallons and three quarts', () => {
  // 4 x 45 + 3 x 19 = 237; 5 x 45 = 225; the pail is 195.
  expect(counts(4.75)).toEqual([[1, 5]])
  // 4 x 45 = 180 is less than the pail.
  expect(counts(4)).toEqual([[4, 1]])
})

test('adds a quart to whole gallons where that is all that is missing', () => {
  expect(cheapestContainers(2.2, shelf)).toMatchObject({ gallons: 2.25, priceCents: 2 * 4500 + 1900 })
})

test('an amount that exactly fills the tins needs no further tin', () => {
  expect(cheapestContainers(0.1 + 0.2, [size(0.1, 500)]).containers[0]?.count).toBe(3)
})

test('among equal prices leaves the least over', () => {
  expect(counts(1.5, [size(2, 1000), size(3, 1000)])).toEqual([[1, 2]])
})

test('among equal prices and contents takes the fewest tins', () => {
  expect(counts(4, [size(1, 1000), size(2, 2000), size(4, 4000)])).toEqual([[1, 4]])
})

test('a size that costs nothing is used for everything', () => {
  expect(cheapestContainers(2.5, [size(1, 0), size(5, 100)])).toMatchObject({ gallons: 3, priceCents: 0 })
})

test('a product without containers is a broken promise', () => {
  expect(() => cheapestContainers(1, [])).toThrow(RangeError)
})

/** Tries every count of every size up to what one size alone would need. Quarters are exact in doubles. */
function byTryingEverything(
  needed: number,
  sizes: readonly ContainerSize[],
): { price: number; surplus: number; tins: number } {
  let best = { price: Number.POSITIVE_INFINITY, surplus: 0, tins: 0 }
  const walk = (index: number, held: number, price: number, tins: number): void => {
    const each = sizes[index]
    if (each === undefined) {
      if (held < needed) return
      const found = { price, surplus: held - needed, tins }
      const better = found.price - best.price || found.surplus - best.surplus || found.tins - best.tins
      if (best.price === Number.POSITIVE_INFINITY || better < 0) best = found
      return
    }
    for (let count = 0; count <= Math.ceil(needed / each.gallons); count++) {
      walk(index + 1, held + count * each.gallons, price + count * each.priceCents, tins + count)
    }
  }
  walk(0, 0, 0, 0)
  return best
}

test('agrees with trying every count, on 400 random shelves', () => {
  const quarters = fc.integer({ min: 1, max: 24 })
  const shelves = fc.array(fc.record({ quarters, price: fc.integer({ min: 1, max: 40 }) }), {
    minLength: 1,
    maxLength: 4,
  })
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 48 }), shelves, (neededQuarters, entries) => {
      const sizes = entries.map((entry) => size(entry.quarters / 4, entry.price * 50))
      const needed = neededQuarters / 4
      const mix = cheapestContainers(needed, sizes)
      const expected = byTryingEverything(needed, sizes)
      const tins = mix.containers.reduce((total, each) => total + each.count, 0)
      expect({ price: mix.priceCents, surplus: mix.gallons - needed, tins }).toEqual(expected)
    }),
    { numRuns: 400, seed: 20270329 },
  )
})
