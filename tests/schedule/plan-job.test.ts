import { expect, test } from 'vitest'
import { gatherPasses } from '../../core/passes/gather.ts'
import type { MinutesByStep } from '../../core/passes/pass-types.ts'
import { labour } from '../../core/price/labour.ts'
import { forecastInputs } from '../../core/progress/forecast-inputs.ts'
import type { Job } from '../../core/project/job.ts'
import type { Mark, MarkId } from '../../core/project/progress-records.ts'
import type { CrewMemberId } from '../../core/project/shop-records.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { changedSiteRule } from '../../core/schedule/job/changed-site-rule.ts'
import { nothingHappened } from '../../core/schedule/job/problem-of-job.ts'
import { pricesOf, siteRules } from '../../core/schedule/job/site-rules.ts'
import type { JobPlan } from '../../core/schedule/job-plan.ts'
import { planJob, startPlanning } from '../../core/schedule/plan-job.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Specification } from '../../core/specification/types.ts'
import { workingMinutes } from '../../core/units/duration.ts'
import { oldHouse } from '../../demo-data/old-house.ts'
import { plainRoom } from '../../demo-data/plain-room.ts'
import { plainJob, plainSpecification } from '../fixtures/plain-room.ts'

function minutesOf(job: Job, specification: Specification): MinutesByStep {
  return new Map(labour(job, specification).steps.map((step) => [step.stepKey, step.minutes]))
}

function planned(job: Job, iterations: number, planning = nothingHappened) {
  const specification = specify(job, takeOff(job))
  const outcome = planJob(job, specification, minutesOf(job, specification), {
    seed: 7,
    iterations,
    planning,
  })
  if (!outcome.ok) throw new Error(outcome.problem.sentence)
  return { specification, plan: outcome.value }
}

function startOf(plan: JobPlan, stepKey: string): string {
  return plan.tasks.find((task) => task.stepKeys.includes(stepKey))?.startsAt ?? ''
}

function endOf(plan: JobPlan, stepKey: string): string {
  return plan.tasks.find((task) => task.stepKeys.includes(stepKey))?.endsAt ?? ''
}

function minutesBetween(from: string, to: string): number {
  return (Date.parse(`${to}Z`) - Date.parse(`${from}Z`)) / 60_000
}

test('one plain room: the second coat waits for the label, over the night', () => {
  const job = plainJob()
  const outcome = planJob(job, plainSpecification, minutesOf(job, plainSpecification), {
    seed: 1,
    iterations: 100,
  })
  if (!outcome.ok) throw new Error(outcome.problem.sentence)
  const plan = outcome.value
  expect(plan.violations).toEqual([])
  // 8:00 and 15 min of setting up; 40 min of protecting, 58 min of ceiling, an hour of drying, masking, two hours of walls:
  // four hours later the day is over, so the second coat is on Tuesday, and no plan can finish sooner.
  expect(startOf(plan, 'study/protect')).toBe('2027-03-29T08:15')
  expect(plan.startsOn).toBe('2027-03-29')
  expect(plan.finishesOn).toBe('2027-03-30')
  expect(plan.bound).toMatchObject({ finishesOn: '2027-03-30', gapDays: 0 })
  // Until 14:20 with half an hour of lunch: 15 + 15 min of chores, 10 for another paint, an hour of waiting, the rest is work.
  const chores = { setUpMinutes: 15, leavingMinutes: 15 }
  expect(plan.days).toMatchObject([
    {
      date: '2027-03-29',
      from: '2027-03-29T08:15',
      to: '2027-03-29T14:05',
      paidMinutes: 350,
      ...chores,
      betweenMinutes: 10,
      workMinutes: 250,
    },
    {
      date: '2027-03-30',
      to: '2027-03-30T10:25',
      paidMinutes: 240,
      ...chores,
      betweenMinutes: 0,
      workMinutes: 130,
    },
  ])
  expect(
    minutesBetween(endOf(plan, 'study/walls/coat-1'), startOf(plan, 'study/walls/coat-2')),
  ).toBeGreaterThanOrEqual(240)
  expect(plan.roomsOutOfUse.map((out) => out.roomId)).toEqual(['study'])
})

test('the worked room is planned from its own steps, every one of them in one pass, which may go over night', () => {
  const { specification, plan } = planned(plainRoom(), 50)
  const stepsOfPasses = new Set(
    plan.tasks.flatMap(({ passKey, stepKeys }) => stepKeys.map((key) => `${passKey} ${key}`)),
  )
  expect([...stepsOfPasses].map((each) => each.split(' ')[1]).sort()).toEqual(
    specification.steps
      .filter((step) => !step.daily)
      .map((step) => step.key)
      .sort(),
  )
  expect(plan.violations).toEqual([])
  const { order } = gatherPasses(plainRoom(), specification, minutesOf(plainRoom(), specification))
  expect(order.length).toBeGreaterThan(3)
  for (const { before, after, atLeast } of order) {
    const [last] = plan.tasks.filter(({ passKey }) => passKey === before).toReversed()
    const first = plan.tasks.find(({ passKey }) => passKey === after)
    expect(minutesBetween(last?.endsAt ?? '', first?.startsAt ?? '')).toBeGreaterThanOrEqual(atLeast)
  }
})

test('the same job and seed give the same plan, in whatever order its crew was entered', () => {
  const job = plainRoom()
  const { plan } = planned(job, 30)
  expect(planned(plainRoom(), 30).plan).toEqual(plan)
  const crew = Object.fromEntries(Object.entries(job.crew).toReversed())
  expect(planned({ ...job, crew }, 30).plan).toEqual(plan)
})

test('the old house gets a plan that the judge accepts and that keeps its promise for the dining room', () => {
  const { specification, plan } = planned(oldHouse(), 300)
  expect(plan.violations).toEqual([])
  // A coat that goes on the next day is a task of its own with the same steps.
  expect(new Set(plan.tasks.flatMap((task) => task.stepKeys))).toEqual(
    new Set(specification.steps.map((step) => step.key)),
  )
  expect(plan.bound && plan.finishesOn >= plan.bound.finishesOn).toBe(true)
  const dining = plan.tasks.filter((task) => task.roomId === 'dining')
  expect(dining.length).toBeGreaterThan(0)
  for (const task of dining) expect((task.dryUntil ?? task.endsAt) <= '2027-05-04T17:00').toBe(true)
  // The holiday, and a day off and the Fridays of one person.
  expect(
    plan.tasks.some((task) => task.segments.some((segment) => segment.startsAt.startsWith('2027-04-02'))),
  ).toBe(false)
  const kit = 'kit' as CrewMemberId
  const kitDays = new Set(
    plan.tasks
      .filter((task) => task.crewMemberIds.includes(kit))
      .flatMap((task) => task.segments.map(({ startsAt }) => startsAt.slice(0, 10))),
  )
  expect(kitDays.has('2027-04-14')).toBe(false)
  expect([...kitDays].filter((day) => new Date(`${day}T00:00Z`).getUTCDay() === 5)).toEqual([])
})

test('where there is a crown the trim of the room comes before its ceiling, and the ceiling before the walls', () => {
  const { plan } = planned(oldHouse(), 300)
  const first = (part: string) =>
    plan.tasks
      .filter((task) => task.stepKeys.some((key) => key.startsWith(`living/${part}/coat/`)))
      .map((task) => task.startsAt)
      .sort()
  const [trim, ceiling, walls] = [first('trim'), first('ceiling'), first('walls')]
  expect(trim.length * ceiling.length * walls.length).toBeGreaterThan(0)
  expect((trim.at(-1) ?? '') < (ceiling[0] ?? '')).toBe(true)
  expect((ceiling.at(-1) ?? '') < (walls[0] ?? '')).toBe(true)
})

test('what is done stays where it was, and the rest follows it', () => {
  const job = plainRoom()
  const before = planned(job, 20)
  const [firstTask] = before.plan.tasks
  if (!firstTask) throw new Error('the plan is empty')
  const facts = firstTask.stepKeys.map((stepKey) => ({
    kind: 'done' as const,
    stepKey,
    startedAt: firstTask.startsAt,
    endedAt: '2027-04-06T10:00',
    crewMemberIds: firstTask.crewMemberIds,
  }))
  const { plan } = planned(job, 20, { now: '2027-04-06T10:00', facts, keeps: null, busy: {} })
  expect(plan.violations).toEqual([])
  const done = plan.tasks.filter((task) => task.state === 'done')
  expect(done.map((task) => task.startsAt)).toEqual([firstTask.startsAt])
  expect(
    plan.tasks.filter((task) => task.state === 'open').every((task) => task.startsAt >= '2027-04-06T10:00'),
  ).toBe(true)
})

test('a plan is there before its bound, a search can be stopped and gone on with, and says in words when there is none', () => {
  const job = plainJob()
  const minutes = minutesOf(job, plainSpecification)
  const passes = gatherPasses(job, plainSpecification, minutes)
  const started = startPlanning(job, plainSpecification, passes, minutes, 1)
  if (!started.ok) throw new Error(started.problem.sentence)
  expect(started.value.step(1)).toBe(true)
  const early = started.value.current()
  expect(early).toMatchObject({ ok: true, value: { bound: null, violations: [] } })
  started.value.prove()
  expect(started.value.current()).toMatchObject({
    value: { bound: { finishesOn: '2027-03-30', gapDays: 0 } },
  })
  started.value.step(50)
  const late = started.value.current()
  expect(early.ok && late.ok && late.value.cost.total <= early.value.cost.total).toBe(true)
  const none = planJob(plainJob({ crew: {} }), plainSpecification, minutes, { seed: 1, iterations: 1 })
  expect(none).toMatchObject({ ok: false, problem: { kind: 'noPlan' } })
  const early8 = '2027-03-29T08:30'
  const rooms = Object.fromEntries(
    Object.entries(job.rooms).map(([id, room]) => [id, { ...room, backBy: early8 }]),
  )
  const late8 = planJob({ ...job, rooms }, plainSpecification, minutes, { seed: 1, iterations: 5 })
  expect(late8.ok).toBe(false)
  if (!late8.ok) expect(late8.problem.sentence).toContain('Study')
})

test('nothing left to do is said, not planned', () => {
  const nothing: Specification = { steps: [], order: [], holds: [], notices: [], clashes: [] }
  expect(
    planJob(plainJob(), nothing, new Map([['x', workingMinutes(1)]]), { seed: 1, iterations: 1 }),
  ).toMatchObject({
    ok: false,
    problem: { kind: 'noPlan' },
  })
})

test('marks on site go straight into a new plan: done, begun and skipped', () => {
  const job = plainRoom()
  const robin = 'robin' as CrewMemberId
  const mark = (id: string, stepKey: string, kind: Mark['mark'], at: string): Mark => ({
    id: id as MarkId,
    stepKey,
    mark: kind,
    at,
    crewMemberIds: [robin],
    actualMinutes: kind === 'done' ? 40 : null,
    note: '',
  })
  const marks = {
    a: mark('a', 'room/room/protectRoom/1', 'done', '2027-04-05T09:00'),
    b: mark('b', 'room/room/dustDown/1', 'started', '2027-04-05T09:00'),
    c: mark('c', 'room/doors/sand/2', 'skipped', '2027-04-05T09:01'),
  }
  const marked = { ...job, marks }
  const facts = forecastInputs(marked, specify(marked, takeOff(marked)))
  const { plan } = planned(marked, 20, { now: '2027-04-05T09:05', facts, keeps: null, busy: {} })
  expect(plan.violations).toEqual([])
  const state = (key: string) => plan.tasks.find((task) => task.stepKeys.includes(key))?.state
  expect(state('room/room/protectRoom/1')).toBe('done')
  expect(startOf(plan, 'room/room/protectRoom/1')).toBe('2027-04-05T08:20')
  expect(state('room/room/dustDown/1')).toBe('started')
  expect(state('room/doors/sand/2')).toBeUndefined()
  expect(startOf(plan, 'room/ceiling/coat/1') > '2027-04-05T09:05').toBe(true)
})

test('what a day on site is worth can be the job’s own, and the other numbers stay', () => {
  const job = plainJob()
  const setting = changedSiteRule(job, siteRules.dayCosts, 'siteDay', 350)
  const changed = { ...job, rules: { ...job.rules, [setting.id]: setting } }
  expect(pricesOf(changed)).toEqual({ ...pricesOf(job), siteDay: 35_000 })
  const again = changedSiteRule(changed, siteRules.dayCosts, 'takeUp', 0)
  expect(again.numbers).toEqual({ siteDay: 350, takeUp: 0 })
})
