import { expect, test } from 'vitest'
import { boundOf } from '../../../core/schedule/bound/bound.ts'
import { figuresOf } from '../../../core/schedule/judge/plan-costs.ts'
import { verifyPlan } from '../../../core/schedule/judge/verify.ts'
import type { ScheduleProblem } from '../../../core/schedule/model.ts'
import { createSearch } from '../../../core/schedule/tries/search.ts'
import { validateProblem } from '../../../core/schedule/validate.ts'
import { bestPlan } from './oracle.ts'
import { smallHouse } from './small-house.ts'
import { statementOf } from './statement.ts'

const secondsToProve = 100

/** The cost of the plan that the search finds, in cents; it breaks no rule. */
function searched(house: ScheduleProblem): number {
  const search = createSearch(house, 1)
  search.step(40_000)
  const plan = search.best()
  if (plan === undefined) throw new Error(JSON.stringify(search.clash()))
  expect(verifyPlan(house, plan)).toEqual([])
  return figuresOf(house, plan).cost.total
}

// A room for one person and a late comer; drying to be waited for within a day; three people.
test.each([
  { seed: 7, people: 2 },
  { seed: 11, people: 2 },
  { seed: 5, people: 3 },
] as const)(
  'the judge counts the best plan of house $seed for $people people as the solver does, and the search finds it within 1 %',
  async ({ seed, people }) => {
    const house = smallHouse(seed, { passes: 8, people })
    expect(validateProblem(house)).toEqual([])
    const found = searched(house)
    // The solver has to take the search's plan as possible, and its own best has to be one for the judge.
    const verdict = await bestPlan(house, found, secondsToProve)
    expect(verdict).toMatchObject({ status: 'proved', violations: [] })
    expect(verdict.judged).toBe(verdict.cents)
    expect(boundOf(house).cents).toBeLessThanOrEqual(verdict.cents)
    expect(found).toBeGreaterThanOrEqual(verdict.cents)
    expect(found).toBeLessThanOrEqual(1.01 * verdict.cents)
  },
  120_000,
)

test('the model refuses what it does not know', () => {
  const house = smallHouse(1, { passes: 6, people: 2 })
  const [first, ...others] = house.tasks
  if (first === undefined) throw new Error('a house without passes')
  const broken = {
    ...house,
    tasks: [{ ...first, breaking: 'natural' as const, work: 240 as never }, ...others],
  }
  expect(() => statementOf(house, 4, 500_000)).not.toThrow()
  expect(() => statementOf(broken, 4, 500_000)).toThrow('does not know')
})
