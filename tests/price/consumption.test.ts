import { expect, test } from 'vitest'
import { consumptionText, stepGallons } from '../../core/price/consumption.ts'
import { sundries } from '../../core/price/sundries.ts'
import type { Product } from '../../core/project/shop-records.ts'
import { squareFeet } from '../../core/units/area.ts'
import { feet } from '../../core/units/length.ts'
import { handStep, noAmounts, plainJob, plainSpecification, wallPaint } from '../fixtures/plain-room.ts'

function product(changes: Partial<Product>): Product {
  return { ...wallPaint, ...changes }
}

test('filler goes by crack length, patch area and holes: 231 cu in are a gallon', () => {
  const step = handStep('fill', {
    operation: 'fill',
    amounts: { ...noAmounts, length: feet(30), area: squareFeet(4), count: 6 },
  })
  const filler = product({ productClass: 'settingFiller' })
  expect(stepGallons(filler, step)).toBeCloseTo((30 * 1 + 4 * 9 + 6 * 0.5) / 231, 9)
  expect(consumptionText(filler, [step], stepGallons(filler, step), 'imperial')).toBe(
    `30 ft + 4 sq ft + 6 spots = 0.30 gal (shop assumption)`,
  )
})

test('spot priming over a crack wets a strip four inches wide', () => {
  const step = handStep('spot', { operation: 'spotPrime', amounts: { ...noAmounts, length: feet(30) } })
  expect(stepGallons(wallPaint, step)).toBeCloseTo((30 * 4) / 12 / (((1604.1666667 * 0.4) / 1.6) * 0.85), 6)
})

test('trim paint goes by developed area, not by the length of the run as well', () => {
  const run = handStep('base', {
    operation: 'coat',
    amounts: { ...noAmounts, length: feet(44), area: squareFeet(22) },
  })
  const flat = handStep('flat', { operation: 'coat', amounts: { ...noAmounts, area: squareFeet(22) } })
  expect(stepGallons(wallPaint, run)).toBe(stepGallons(wallPaint, flat))
})

test('a deglosser is wiped on and does not go by film thickness', () => {
  const step = handStep('wipe', { operation: 'degloss', amounts: { ...noAmounts, area: squareFeet(500) } })
  expect(stepGallons(product({ productClass: 'liquidDeglosser' }), step)).toBeCloseTo(2, 9)
})

test('tape is bought by whole rolls of masked length', () => {
  const mask = handStep('mask', { operation: 'maskOff', amounts: { ...noAmounts, length: feet(361) } })
  const lines = sundries(plainJob(), { ...plainSpecification, steps: [mask] }, 0)
  expect(lines).toHaveLength(1)
  expect(lines[0]).toMatchObject({ key: 'tape', pieces: 3, priceCents: 3 * 700 })
  expect(lines[0]?.derivation).toContain('shop assumption')
})
