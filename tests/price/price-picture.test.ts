import fc from 'fast-check'
import { expect, test } from 'vitest'
import { quoteLines } from '../../core/agreement/quote.ts'
import { defaultRates } from '../../core/price/default-rates.ts'
import { estimate } from '../../core/price/estimate.ts'
import { minutesByStep } from '../../core/price/labour.ts'
import { priceBars, priceGroupings } from '../../core/price/price-picture.ts'
import type { Job } from '../../core/project/job.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { firstPlanToPay } from '../../core/schedule/plan-to-pay.ts'
import { specify } from '../../core/specification/specify.ts'
import { sumCents } from '../../core/units/money.ts'
import { buildJob, existingOn, finishFor, rectangularRoom } from '../fixtures/job-builder.ts'

const percent = fc.integer({ min: 0, max: 40 })
const rules = fc.record({
  burdenPercent: percent,
  overheadPercent: percent,
  profit: fc.record({ basis: fc.constantFrom('margin' as const, 'markup' as const), percent }),
  contingencyPercent: percent,
  materialsTaxPercent: percent,
  labourTaxPercent: percent,
  sundriesCentsPerHour: fc.integer({ min: 0, max: 300 }),
})
const sizes = fc.array(fc.tuple(fc.integer({ min: 4, max: 20 }), fc.integer({ min: 4, max: 20 })), {
  minLength: 0,
  maxLength: 4,
})

function jobOf(rooms: readonly (readonly [number, number])[], price: object): Job {
  const job = buildJob({
    rooms: rooms.map(([width, depth], index) => rectangularRoom(`room-${index}`, width, depth)),
    existing: [
      existingOn('walls', 'gypsumBoard', 'latexFlat'),
      existingOn('ceiling', 'gypsumBoard', 'latexFlat'),
    ],
    finishes: [
      finishFor('walls', 'latexWall', 'sage', 'eggshell'),
      finishFor('ceiling', 'latexCeiling', 'white', 'flat'),
    ],
    rates: defaultRates,
  })
  return { ...job, houseRules: { ...job.houseRules, price: { ...job.houseRules.price, ...price } } }
}

const sum = (all: readonly { readonly cents: Parameters<typeof sumCents>[0][number] }[]) =>
  sumCents(all.map(({ cents }) => cents))

test('the bars of a price, the lines they open into, the rooms, the lines of a quote and the total are one sum', () => {
  fc.assert(
    fc.property(sizes, rules, fc.boolean(), (rooms, price, isPlanned) => {
      const job = jobOf(rooms, price)
      const takeoff = takeOff(job)
      const specification = specify(job, takeoff)
      const plan = isPlanned ? firstPlanToPay(job, specification, minutesByStep(job, specification)) : null
      const whole = estimate(job, takeoff, specification, plan)
      const { totals } = whole
      expect(sum(whole.lines)).toBe(totals.total)
      for (const grouping of priceGroupings) {
        const bars = priceBars(job, specification, whole, grouping)
        expect(sum(bars)).toBe(totals.total)
        for (const bar of bars) {
          expect(sum(bar.parts)).toBe(bar.cents)
          expect(bar.parts.every(({ cents }) => Number.isInteger(cents))).toBe(true)
        }
        expect(new Set(bars.map(({ key }) => key)).size).toBe(bars.length)
      }
      const quoted = quoteLines(whole)
      expect(quoted.reduce((all, line) => all + line.beforeTaxCents + line.taxCents, 0)).toBe(totals.total)
      if (rooms.length > 0) expect(sum(whole.rooms)).toBe(totals.beforeTax)
    }),
    { numRuns: 15 },
  )
})
