import { expect, test } from 'vitest'
import { workOrder } from '../../core/work-order/work-order.ts'
import { plainPlan } from '../fixtures/plain-plan.ts'
import { sampleInput } from './sample-order.ts'

const input = sampleInput()

/** How often the cautions of a step are looked up, and how often an order is looked at, while the papers of so many days are made. */
function workOf(days: number) {
  const work = { lookups: 0, orders: 0 }
  const steps = input.specification.steps.map((step) => ({
    ...step,
    get cautions() {
      work.lookups++
      return step.cautions
    },
  }))
  const order = Array.from({ length: days }, () => input.specification.order)
    .flat()
    .map((each) => ({
      ...each,
      get after() {
        work.orders++
        return each.after
      },
    }))
  const [task] = plainPlan.tasks.slice(1)
  if (task === undefined) throw new Error('the plan has tasks')
  const tasks = Array.from({ length: days }, (_, index) => {
    const day = new Date(Date.UTC(2027, 2, 29 + index)).toISOString().slice(0, 10)
    const segment = { startsAt: `${day}T08:00`, endsAt: `${day}T16:00` }
    return { ...task, key: `task-${index}`, ...segment, segments: [segment] }
  })
  const plan = { ...plainPlan, tasks }
  const papers = workOrder(
    input.job,
    input.takeoff,
    { ...input.specification, steps, order },
    input.estimate,
    plan,
  )
  expect([papers.days.length, papers.cover.rooms.length]).toEqual([days, 2])
  return work
}

test('the papers of four times as many days look up four times as much, not sixteen', () => {
  const [few, many] = [workOf(10), workOf(40)]
  expect(many.lookups).toBeGreaterThan(few.lookups)
  expect(many.lookups / few.lookups).toBeLessThan(5)
  // However many steps there are, each order is looked at so many times.
  expect(many.orders / few.orders).toBeLessThan(5)
})
