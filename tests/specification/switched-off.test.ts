import { expect, test } from 'vitest'
import { tableOf } from '../../core/project/empty-job.ts'
import type { RuleSetting } from '../../core/project/shop-records.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { allRules } from '../../core/specification/rule-list.ts'
import { specify } from '../../core/specification/specify.ts'
import { oldHouse } from '../../demo-data/old-house.ts'

test('with every rule switched off nothing is left but the coats that were chosen', () => {
  const job = oldHouse()
  const takeoff = takeOff(job)
  const rules = tableOf(allRules.map(({ id }) => ({ id: id as RuleSetting['id'], on: false, numbers: {} })))
  const { steps, order, holds } = specify({ ...job, rules }, takeoff)
  expect([...new Set(steps.flatMap(({ because }) => because.map(({ ruleId }) => ruleId)))]).toEqual([
    'finish-coat',
  ])
  expect([...new Set(steps.map(({ operation }) => operation))]).toEqual(['coat'])
  expect(order).toEqual([])
  expect(holds).toEqual([])
  // No edges and no people living there make it any harder.
  expect([...new Set(steps.map(({ difficulty }) => difficulty))]).toEqual([1])
  const chosen = new Set(
    specify(job, takeoff).steps.flatMap(({ operation, key }) => (operation === 'coat' ? [key] : [])),
  )
  expect(steps.filter(({ key }) => !chosen.has(key))).toEqual([])
})
