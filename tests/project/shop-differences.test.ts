import { expect, test } from 'vitest'
import { starterShop } from '../../core/price/starter-shop.ts'
import type { Job } from '../../core/project/job.ts'
import { shopDifferences, withLines } from '../../core/project/shop-differences.ts'
import { plainJob } from '../fixtures/plain-room.ts'

const plain = plainJob()
const { business, houseRules } = plain
const shop: Job = {
  ...plain,
  crew: {},
  rates: starterShop.rates,
  houseRules: { ...houseRules, price: { ...houseRules.price, overheadPercent: 11 } },
  business: {
    ...business,
    phone: '555 0100',
    paymentSteps: [{ name: 'At the end', percent: 100 }],
    nextNumbers: { ...business.nextNumbers, invoice: 40 },
  },
  rules: { 'lead-safe': { id: 'lead-safe' as never, on: true, numbers: { builtBefore: 1990 } } },
}

test('fields of the business and house rules and records of the lists are lines; counted numbers and safety rules are none', () => {
  const lines = shopDifferences(plain, shop)
  expect(lines.map(({ key }) => key)).toEqual([
    'business/phone',
    'business/paymentSteps',
    'houseRules/price/overheadPercent',
    'crew/ada',
    'crew/ben',
  ])
  expect(lines[2]).toMatchObject({ here: 10, there: 11 })
})

test('only the ticked lines are taken over, and taking all leaves no line', () => {
  const lines = shopDifferences(plain, shop)
  const some = withLines(
    plain,
    lines.filter(({ key }) => key === 'business/phone' || key === 'crew/ben'),
  )
  if (!some.ok) throw new Error(some.problem.sentence)
  expect(some.value.business).toEqual({ ...business, phone: '555 0100' })
  expect(Object.keys(some.value.crew)).toEqual(['ada'])
  expect(some.value.houseRules).toBe(houseRules)
  const all = withLines(plain, lines)
  expect(all.ok && shopDifferences(all.value, shop)).toEqual([])
  expect(all.ok && all.value.business.nextNumbers).toEqual(business.nextNumbers)
})
