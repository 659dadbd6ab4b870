import { expect, test } from 'vitest'
import { estimate } from '../../core/price/estimate.ts'
import type { EstimateLine } from '../../core/price/estimate-types.ts'
import type { Job } from '../../core/project/job.ts'
import type { Cents } from '../../core/units/money.ts'
import { handStep, plainJob, plainSpecification, plainSteps, plainTakeoff } from '../fixtures/plain-room.ts'

const priced = estimate(plainJob(), plainTakeoff, plainSpecification)

function cents(key: string, lines: readonly EstimateLine[] = priced.lines): number | undefined {
  return lines.find((line) => line.key === key)?.cents
}

// Both people can paint: (30.00 + 20.00) / 2 = 25.00 per hour, with 25% burden 31.25.
test('prices the hours of one plain room by hand', () => {
  expect(cents('labour:study:room')).toBe(Math.round((40 / 60) * 3125)) // 2083
  expect(cents('labour:study:ceiling')).toBe(Math.round(((36 + 22) / 60) * 3125)) // 3021
  expect(cents('labour:study:walls')).toBe(Math.round(((17.6 + 2 * (105.6 + 22)) / 60) * 3125)) // 14208
  expect(cents('labour:daily')).toBe(Math.round((30 / 60) * 3125)) // 1562.5 -> 1563
  expect(priced.totals.labour).toBe(2083 + 3021 + 14208 + 1563)
})

test('buys the paint of one plain room by hand', () => {
  // 1604.1667 x 0.40 / 1.6 = 401.04 sq ft per gal, less 15 % = 340.89. Walls: 2 x 352 / 340.89 = 2.065 gal,
  // and 3 % of it to keep for touching up = 2.127 gal. Linen is mixed: whole gallons of one batch, so three and no quart.
  const walls = priced.materials.find((line) => line.productName === 'Wall paint')
  expect(walls?.gallons).toBeCloseTo((2 * 352) / (((1604.1666667 * 0.4) / 1.6) * 0.85), 6)
  expect(walls?.containers.map((each) => [each.count, each.name])).toEqual([[3, 'gallon']])
  expect(walls?.spareGallons).toBeCloseTo(0.03 * 2.0652, 4)
  expect(walls?.priceCents).toBe(3 * 4500)
  expect(cents('material:ceiling-paint:uncoloured:flat')).toBe(3600)
})

test('adds sundries, overhead, contingency, a margin and tax in that order, each rounded once', () => {
  // One roll of tape; 2 x 352 + 120 = 824 sq ft rolled, one sleeve; 3 x 44 = 132 ft cut in, one brush; one room covered; the rest by the hour.
  expect(priced.totals.sundries).toBe(700 + 600 + 1600 + 1400 + Math.round(((370.8 + 30) / 60) * 100)) // 668
  // Paint: 3 x 45.00 for the walls and 36.00 for the ceiling.
  const cost = 20875 + 17100 + 4968
  expect(priced.totals.labour + priced.totals.materials + priced.totals.sundries).toBe(cost)
  expect(priced.totals.overhead).toBe(4294) // 10 % of 429.43
  expect(priced.totals.contingency).toBe(2362) // 5 % of 429.43 + 42.94
  expect(priced.totals.profit).toBe(12400) // 495.99 x 20 / 80
  expect(priced.totals.beforeTax).toBe(cost + 4294 + 2362 + 12400)
  expect(priced.totals.tax).toBe(1324) // 6 % of 171.00 + 49.68
  expect(priced.totals.total).toBe(63323)
})

test('a margin of 20 percent is a fifth of the price; a markup of 20 percent is a fifth of the cost', () => {
  expect(priced.totals.profit / priced.totals.beforeTax).toBeCloseTo(0.2, 4)
  const job = plainJob()
  const rules = { ...job.houseRules.price, profit: { basis: 'markup', percent: 20 } } as const
  const marked = estimate(
    { ...job, houseRules: { ...job.houseRules, price: rules } },
    plainTakeoff,
    plainSpecification,
  )
  expect(marked.totals.profit).toBe(9920) // 495.99 x 0.20
  expect(marked.lines.find((line) => line.kind === 'profit')?.label).toBe('Profit (markup)')
})

test('taxes labour on its share of the price where labour is taxed', () => {
  const job = plainJob()
  const price = { ...job.houseRules.price, labourTaxPercent: 10 }
  const taxed = estimate(
    { ...job, houseRules: { ...job.houseRules, price } },
    plainTakeoff,
    plainSpecification,
  )
  expect(cents('labourTax', taxed.lines)).toBe(Math.round(Math.round((61999 * 20875) / 42943) * 0.1))
})

test('the total is the sum of the lines shown, and rooms share everything before tax', () => {
  expect(priced.lines.reduce((total, line) => total + line.cents, 0)).toBe(priced.totals.total)
  expect(priced.rooms).toEqual([{ roomId: 'study', name: 'Study', cents: priced.totals.beforeTax }])
})

test('every line says how it came about', () => {
  expect(priced.lines.filter((line) => line.derivation.length < 8)).toEqual([])
  expect(priced.lines.find((line) => line.key === 'labour:study:ceiling')?.derivation).toBe(
    '(58 min x $25.00 per hour) x 1.25 with 25% burden',
  )
  expect(priced.lines.find((line) => line.key === 'material:wall-paint:linen:eggshell')?.derivation).toBe(
    '704 sq ft over all coats / 341 sq ft per gal = 2.07 gal (theory 401 sq ft per gal at 40% solids and 1.6 mil dry, less 15% loss); and 8 fl oz to keep for touching up (3%, shop assumption); cans that hold it: 3 x gallon, from one batch',
  )
})

test('a fine-brush step is priced by those who can do it', () => {
  const steps = plainSteps.map((step) => ({ ...step, skill: 'fineBrush' as const }))
  const fine = estimate(plainJob(), plainTakeoff, { ...plainSpecification, steps })
  expect(cents('labour:study:ceiling', fine.lines)).toBe(Math.round((58 / 60) * 3000 * 1.25))
})

test('a missing product, an empty crew list, a stale specification and a step without amount are said, not hidden', () => {
  const sealer = handStep('seal', {
    operation: 'sealChalk',
    productClass: 'calcimineSealer',
    surfaceKeys: ['ceiling:gone'],
  })
  const doubtful = estimate(plainJob({ crew: {} }), plainTakeoff, {
    ...plainSpecification,
    steps: [...plainSteps, sealer],
  })
  expect(doubtful.doubts).toHaveLength(4)
  expect(doubtful.doubts[3]).toBe('1 step has no amount to count hours by: seal.')
  expect(doubtful.doubts[0]).toContain('no calcimine sealer:')
  expect(doubtful.totals.labour).toBe(0 as Cents)
  expect(priced.doubts).toEqual([])
})

test('hours counted by default rates because the job has none of its own are said', () => {
  const rateDoubts = (rates: Job['rates']) =>
    estimate(plainJob({ rates }), plainTakeoff, plainSpecification).doubts
  const { coat, cutIn, ...rest } = plainJob().rates
  expect([coat?.perHour, cutIn?.perHour]).toEqual([200, 120])
  expect(rateDoubts({ ...rest, cutIn } as Job['rates'])).toEqual([
    'The job has no rate for “Coat”: these hours are counted by the default rate. Set its own at Figures, Rates.',
  ])
  expect(rateDoubts(rest)).toEqual([
    'The job has no rate for “Coat”, “Cut in along an edge”: these hours are counted by the default rates. Set its own at Figures, Rates.',
  ])
  expect(rateDoubts({})).toEqual([
    'The job has none of the rates it needs: all hours are counted by the default rates. Set its own at Figures, Rates.',
  ])
})

test('a job without work costs nothing', () => {
  const nothing = estimate(plainJob(), plainTakeoff, { ...plainSpecification, steps: [] })
  expect(nothing.totals.total).toBe(0)
  expect(nothing.lines).toEqual([])
})
