import { expect, test } from 'vitest'
import { estimate } from '../../core/price/estimate.ts'
import { labour } from '../../core/price/labour.ts'
import { lastPaidDate, type PaidPlan, planPay, stepsNotPlanned } from '../../core/price/paid-plan.ts'
import type { CrewMemberId } from '../../core/project/shop-records.ts'
import { sumCents } from '../../core/units/money.ts'
import { plainJob, plainSpecification, plainTakeoff } from '../fixtures/plain-room.ts'

const [ada, ben] = ['ada', 'ben'] as readonly string[] as readonly [CrewMemberId, CrewMemberId]
const job = plainJob()
const keys = plainSpecification.steps.map(({ key }) => key)

/** Ada a whole day of 480 minutes and half a day, Ben half a day; both set up 15 and leave 15 minutes, Ada moves once. */
const plan: PaidPlan = {
  from: 'accepted',
  days: [
    {
      crewMemberId: ada,
      date: '2027-03-29',
      paidMinutes: 480,
      setUpMinutes: 15,
      leavingMinutes: 15,
      betweenMinutes: 10,
    },
    {
      crewMemberId: ada,
      date: '2027-03-29',
      paidMinutes: 240,
      setUpMinutes: 15,
      leavingMinutes: 15,
      betweenMinutes: 0,
    },
    {
      crewMemberId: ben,
      date: '2027-04-01',
      paidMinutes: 240,
      setUpMinutes: 15,
      leavingMinutes: 15,
      betweenMinutes: 0,
    },
  ],
  tasks: [
    { stepKeys: keys.slice(0, 2), crewMemberIds: [ada] },
    { stepKeys: keys.slice(2), crewMemberIds: [ada, ben] },
  ],
}

const priced = estimate(job, plainTakeoff, plainSpecification, plan)
const labourLines = priced.lines.filter(({ kind }) => kind === 'labour')

test('labor is what the plan pays, to the cent, and says so', () => {
  // Ada 720 min at $30, Ben 240 min at $20, with 25 % burden: 12 x 37.50 + 4 x 25.00.
  expect(planPay(job, plan)).toBe(45_000 + 10_000)
  expect(sumCents(labourLines.map(({ cents }) => cents))).toBe(planPay(job, plan))
  expect(priced.totals.labour).toBe(planPay(job, plan))
  expect(priced.totals.labourMinutes).toBe(960)
  expect(priced.basis).toBe('accepted')
  expect(estimate(job, plainTakeoff, plainSpecification).basis).toBe('hours')
})

test('nothing is priced twice: work at the wages of who does it, chores and moves of the plan, and the rest of the pay', () => {
  const centsOf = (key: string) => labourLines.find((line) => line.key === key)?.cents
  // Two days of Ada and one of Ben, 30 min each: 2 x 0.5 x 37.50 + 0.5 x 25.00.
  expect(centsOf('labour:daily')).toBe(3750 + 1250)
  // 10 minutes of Ada.
  expect(centsOf('labour:between')).toBe(625)
  const minutes = new Map(labour(job, plainSpecification).steps.map((line) => [line.stepKey, line.minutes]))
  const work = plainSpecification.steps.reduce((sum, { key }, index) => {
    const wage = index < 2 ? 3000 : 2500
    return sum + ((minutes.get(key) ?? 0) / 60) * wage * 1.25
  }, 0)
  const rooms = sumCents(labourLines.flatMap(({ roomId, cents }) => (roomId === null ? [] : [cents])))
  expect(Math.abs(rooms - work)).toBeLessThanOrEqual(3)
  expect(centsOf('labour:rest')).toBe(55_000 - 5000 - 625 - rooms)
  expect(new Set(labourLines.map(({ key }) => key)).size).toBe(labourLines.length)
})

test('what the plan does not have yet is priced by hours beside it, and said', () => {
  const older: PaidPlan = {
    ...plan,
    tasks: plan.tasks.map((task) => ({ ...task, stepKeys: task.stepKeys.slice(0, 1) })),
  }
  const missing = stepsNotPlanned(plainSpecification, older)
  expect(missing).toHaveLength(keys.length - 2)
  const again = estimate(job, plainTakeoff, plainSpecification, older)
  const unplanned = again.lines.filter(({ key }) => key.endsWith(':unplanned'))
  expect(again.totals.labour).toBe(planPay(job, older) + sumCents(unplanned.map(({ cents }) => cents)))
  expect(again.doubts.join(' ')).toContain(`${missing.length} steps are not in the plan`)
})

test('the last day of a plan is the last that somebody is paid for', () => {
  expect(lastPaidDate(plan)).toBe('2027-04-01')
  expect(lastPaidDate({ ...plan, days: [] })).toBeNull()
})
