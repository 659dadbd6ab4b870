import { expect, test } from 'vitest'
import { estimate } from '../../core/price/estimate.ts'
import { stepMinutes } from '../../core/price/labour.ts'
import { planPay } from '../../core/price/paid-plan.ts'
import type { Job } from '../../core/project/job.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { planJob } from '../../core/schedule/plan-job.ts'
import { planToPay } from '../../core/schedule/plan-to-pay.ts'
import { specify } from '../../core/specification/specify.ts'
import { lShapedRoom } from '../../demo-data/l-shaped-room.ts'
import { plainRoom } from '../../demo-data/plain-room.ts'
import { planBody } from '../../renderer/state/planner-accepted.ts'

function chainOf(job: Job) {
  const takeoff = takeOff(job)
  const specification = specify(job, takeoff)
  const minutes = new Map(specification.steps.map((step) => [step.key, stepMinutes(job, step)]))
  return { takeoff, specification, minutes }
}

test.each([
  ['plain room', plainRoom()],
  ['room with a corner', lShapedRoom()],
])('on an accepted plan of the %s nothing lies between priced and planned pay', (_name, job) => {
  const { takeoff, specification, minutes } = chainOf(job)
  const plan = planJob(job, specification, minutes, { seed: 3, iterations: 200 })
  if (!plan.ok) throw new Error(plan.problem.sentence)
  const body = planBody(plan.value, null)
  const id = 'accepted' as Job['issued'][string]['id']
  const accepted = {
    id,
    kind: 'plan',
    issuedAt: '2027-03-29T08:00',
    note: '',
    body,
  } as unknown as Job['issued'][string]
  const paid = planToPay({ ...job, issued: { [id]: accepted } }, specification, minutes)
  expect(paid?.from).toBe('accepted')
  const priced = estimate(job, takeoff, specification, paid)
  expect(priced.basis).toBe('accepted')
  expect(priced.totals.labour - plan.value.cost.pay).toBe(0)
})

test('before a plan is accepted a first plan stands in, the same one each time', () => {
  const job = plainRoom()
  const { takeoff, specification, minutes } = chainOf(job)
  const [one, other] = [planToPay(job, specification, minutes), planToPay(job, specification, minutes)]
  expect(one).toEqual(other)
  if (one === null) throw new Error('a plain room has a first plan')
  const priced = estimate(job, takeoff, specification, one)
  expect(priced.basis).toBe('first')
  expect(priced.totals.labour).toBe(planPay(job, one))
})
