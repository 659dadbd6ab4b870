import fc from 'fast-check'
import { expect, test } from 'vitest'
import { equalParts, openTimeBatches } from '../../core/specification/open-time.ts'
import { feet } from '../../core/units/length.ts'
import { notices, specifyOne, stepOf } from './one-surface.ts'

test('one batch is enough when all of it is wiped and coated inside the window', () => {
  // Wiping 10 min, coating 20 min, window 5 to 30: coating takes 20 of the 25 minutes left.
  const batches = openTimeBatches({ wipeMinutes: 10, coatMinutes: 20, openMinimum: 5, openMaximum: 30 })
  expect(batches).toEqual({ count: 1, minimumGap: 5, maximumGap: 30 - 20 })
})

test('where wiping is the slower of the two it sets the batches', () => {
  // 100 min of wiping in windows of 25: 4 batches of 25 min, coated right after 5 min.
  const batches = openTimeBatches({ wipeMinutes: 100, coatMinutes: 40, openMinimum: 5, openMaximum: 30 })
  expect(batches).toEqual({ count: 4, minimumGap: 5, maximumGap: 5 })
})

test('a label whose least wait is as long as its longest leaves no window', () => {
  expect(openTimeBatches({ wipeMinutes: 5, coatMinutes: 5, openMinimum: 30, openMaximum: 30 })).toBeNull()
})

test('every foot of every batch waits inside the window, at either end of the gap, and one batch fewer would not do', () => {
  const work = fc.record({
    wipeMinutes: fc.integer({ min: 1, max: 600 }),
    coatMinutes: fc.integer({ min: 1, max: 600 }),
    openMinimum: fc.integer({ min: 0, max: 30 }),
    openMaximum: fc.integer({ min: 31, max: 240 }),
  })
  fc.assert(
    fc.property(work, (each) => {
      const batches = openTimeBatches(each)
      if (batches === null) throw new Error('there is a window')
      const wipe = each.wipeMinutes / batches.count
      const coat = each.coatMinutes / batches.count
      for (const gap of [batches.minimumGap, batches.maximumGap]) {
        // Wiped at x of the wiping, coated at x of the coating, which starts `gap` after the wiping ends.
        for (const x of [0, 0.25, 0.5, 0.75, 1]) {
          const waited = wipe * (1 - x) + gap + coat * x
          expect(waited).toBeGreaterThanOrEqual(each.openMinimum - 1e-6)
          expect(waited).toBeLessThanOrEqual(each.openMaximum + 1e-6)
        }
      }
      if (batches.count > 1) {
        const longest = Math.max(each.wipeMinutes, each.coatMinutes) / (batches.count - 1)
        expect(longest + each.openMinimum).toBeGreaterThan(each.openMaximum)
      }
    }),
  )
})

test('equal parts sum to the whole and differ by at most one', () => {
  expect(equalParts(100, 3)).toEqual([33, 33, 34])
  expect(equalParts(2, 3)).toEqual([0, 1, 1])
})

test('the shop’s own rates set the batches, and the step says how many feet each takes', () => {
  const rates = [
    { id: 'degloss' as never, basis: 'area' as const, perHour: 120, source: 'own' },
    { id: 'prime-trim' as never, basis: 'area' as const, perHour: 60, source: 'own' },
  ]
  const specification = specifyOne({
    surfaceClass: 'trim',
    coat: 'oilPaint',
    quantity: { area: 75, length: 150 },
    rules: [['oil-deglosser', true]],
    job: { rates },
  })
  // Priming 75 sq ft at 60 an hour takes 75 min; 75 / (30 - 5) = 3 batches of 50 ft, before the bonding primer.
  const wipes = specification.steps.filter((step) => step.operation === 'degloss')
  expect(wipes.map((step) => step.amounts.length)).toEqual([feet(50), feet(50), feet(50)])
  expect(wipes[0]?.because.at(-1)?.reason).toContain(`3 batches of 50' 0"`)
  expect(stepOf(specification, 'trim/prime/1.3').splittable).toBe('no')
})

test('a deglosser without a window is said to be of no use, as a hold', () => {
  const specification = specifyOne({
    surfaceClass: 'trim',
    coat: 'oilPaint',
    rules: [['oil-deglosser', true]],
    job: { products: [deglosser] },
  })
  expect(notices(specification, 'compatibility')[0]).toMatchObject({ hold: true })
})

const deglosser = {
  id: 'slow' as never,
  name: 'Slow deglosser',
  brand: '',
  productClass: 'liquidDeglosser',
  base: 'oil',
  sheens: [],
  volumeSolidsPercent: 100,
  dryFilmMils: 1,
  lossPercent: 0,
  minimumTemperatureC: 10,
  touchDryMinutes: 5,
  recoatMinimumMinutes: 60,
  recoatMaximumMinutes: null,
  openTimeMinimumMinutes: 60,
  openTimeMaximumMinutes: 30,
  fumes: true,
  containers: [{ name: 'quart', gallons: 0.25, priceCents: 1 as never }],
  source: 'test',
} as const
