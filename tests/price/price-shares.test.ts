import fc from 'fast-check'
import { expect, test } from 'vitest'
import { shareCents } from '../../core/price/price-shares.ts'
import type { Cents } from '../../core/units/money.ts'

test('ten cents over three equal rooms are 4, 3 and 3', () => {
  expect(shareCents(10 as Cents, [1, 1, 1])).toEqual([4, 3, 3])
})

test('nothing to weigh by gives everything to the first', () => {
  expect(shareCents(10 as Cents, [0, 0])).toEqual([10, 0])
  expect(shareCents(10 as Cents, [])).toEqual([])
})

test('shares sum to the whole and lie within a cent of exact', () => {
  const weights = fc.array(fc.integer({ min: 0, max: 100_000 }), { minLength: 1, maxLength: 30 })
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 10_000_000 }), weights, (total, parts) => {
      const shares = shareCents(total as Cents, parts)
      const sum = parts.reduce((all, part) => all + part, 0)
      expect(shares.reduce((all, share) => all + share, 0)).toBe(total)
      if (sum === 0) return
      for (const [index, share] of shares.entries()) {
        expect(Math.abs(share - (total * (parts[index] ?? 0)) / sum)).toBeLessThan(1)
      }
    }),
    { seed: 7 },
  )
})
