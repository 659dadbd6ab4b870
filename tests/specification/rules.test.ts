import { expect, test } from 'vitest'
import { allRules } from '../../core/specification/rule-list.ts'
import { airAndSafetyCases } from './cases/air-and-safety.ts'
import { allowanceCases } from './cases/allowances.ts'
import { chalkAndPaperCases } from './cases/chalk-and-paper.ts'
import { coatsAndDustCases } from './cases/coats-and-dust.ts'
import { leadWorkCases } from './cases/lead-work.ts'
import { orderAndAmountsCases } from './cases/order-and-amounts.ts'
import { paintAndPlasterCases } from './cases/paint-and-plaster.ts'
import { roomCases } from './cases/room.ts'
import { stainsAndMetalCases } from './cases/stains-and-metal.ts'
import { trimAndSashCases } from './cases/trim-and-sash.ts'

const cases: Readonly<Record<string, () => void>> = {
  ...roomCases,
  ...paintAndPlasterCases,
  ...chalkAndPaperCases,
  ...stainsAndMetalCases,
  ...trimAndSashCases,
  ...coatsAndDustCases,
  ...orderAndAmountsCases,
  ...airAndSafetyCases,
  ...leadWorkCases,
  ...allowanceCases,
}

test.each(Object.entries(cases))('worked case: %s', (_, run) => {
  run()
})

test('every rule of the book has a worked case, and no case is without its rule', () => {
  expect(Object.keys(cases).toSorted()).toEqual(allRules.map((rule) => rule.id).toSorted())
})

test('every rule says why, where it comes from and when it applies', () => {
  for (const rule of allRules) {
    expect(rule.reason.length, rule.id).toBeGreaterThan(30)
    expect(rule.source, rule.id).not.toBe('')
    expect(rule.found, rule.id).not.toBe('')
    for (const each of Object.values(rule.numbers)) expect(each.source, rule.id).not.toBe('')
  }
})
