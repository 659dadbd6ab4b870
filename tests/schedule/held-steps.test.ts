import { expect, test } from 'vitest'
import { gatherPasses } from '../../core/passes/gather.ts'
import type { MinutesByStep } from '../../core/passes/pass-types.ts'
import { labour } from '../../core/price/labour.ts'
import type { HoldRecord } from '../../core/project/hold-records.ts'
import type { Job } from '../../core/project/job.ts'
import type { Pin } from '../../core/project/progress-records.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { heldSteps } from '../../core/schedule/job/held-steps.ts'
import { problemOfJob } from '../../core/schedule/job/problem-of-job.ts'
import { verifyPlan } from '../../core/schedule/judge/verify.ts'
import { planJob } from '../../core/schedule/plan-job.ts'
import { heldUntil } from '../../core/specification/holds.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Hold, Specification } from '../../core/specification/types.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { instantOf } from '../../core/time/site-moment.ts'
import { oldHouse } from '../../demo-data/old-house.ts'

function minutesOf(job: Job, specification: Specification): MinutesByStep {
  return new Map(labour(job, specification).steps.map((step) => [step.stepKey, step.minutes]))
}

function holdOn(stepKeys: readonly string[], changes: Partial<Hold> = {}): Hold {
  return {
    key: 'r/leak/x',
    roomId: 'r' as Hold['roomId'],
    surfaceKeys: ['x'],
    kind: 'leak',
    reason: '',
    whoSeesToIt: 'The roofer',
    expectedOn: '2027-04-05',
    expectedIsAssumed: false,
    usualDays: 14,
    cleared: null,
    stepKeys,
    source: 'common practice',
    ...changes,
  }
}

test('a step under two holds waits for the later one; what is cleared holds nothing', () => {
  const late = holdOn(['a'], { key: 'late', expectedOn: '2027-04-20' })
  const cleared = holdOn(['c'], { key: 'cleared', cleared: { on: '2027-03-30', by: 'x' } })
  const { from, relaxed } = heldSteps([holdOn(['a', 'b']), late, cleared], '2027-03-29')
  expect([...from]).toEqual([
    ['a', '2027-04-20'],
    ['b', '2027-04-05'],
  ])
  expect(relaxed).toEqual([])
})

test('a day that is not known, or has passed, is assumed and said', () => {
  const holds = [
    holdOn(['a'], { key: 'unknown', expectedOn: null }),
    holdOn(['b'], { key: 'passed', expectedOn: '2027-04-01' }),
  ]
  const { from, relaxed } = heldSteps(holds, '2027-04-03')
  // The usual 14 days from today, and tomorrow.
  expect([...from]).toEqual([
    ['a', '2027-04-17'],
    ['b', '2027-04-04'],
  ])
  expect(relaxed).toEqual([
    { what: 'holdNoDate', id: 'unknown' },
    { what: 'holdOverdue', id: 'passed' },
  ])
})

const house = oldHouse()
const specification = specify(house, takeOff(house))
const minutes = minutesOf(house, specification)

function asked(job: Job, given: Specification = specification) {
  return problemOfJob(job, given, gatherPasses(job, given, minutes), minutes)
}

test('the old house: no task that disturbs or coats a held surface starts before its hold, and other work goes on', () => {
  const outcome = planJob(house, specification, minutes, { seed: 3, iterations: 30 })
  if (!outcome.ok) throw new Error(outcome.problem.sentence)
  const plan = outcome.value
  expect(plan.violations).toEqual([])
  expect(specification.holds.length).toBeGreaterThan(5)
  for (const hold of specification.holds) {
    const held = heldUntil(hold, house.header.startsOn)
    if (held.kind !== 'until') throw new Error(`${hold.key} is ${held.kind}`)
    const tasks = plan.tasks.filter((task) => task.stepKeys.some((key) => hold.stepKeys.includes(key)))
    expect(tasks.length).toBeGreaterThan(0)
    for (const task of tasks) expect(task.startsAt >= held.on, `${task.key} under ${hold.key}`).toBe(true)
  }
  expect(plan.startsOn).toBe(house.header.startsOn)
})

test('the judge refuses a plan that touches a held surface before its day', () => {
  const { problem } = asked(house)
  const held = problem.tasks.find((task) => task.earliestStart !== null)
  if (held?.earliestStart == null) throw new Error('nothing is held')
  const start = epochMinutes(held.earliestStart - 600)
  const end = epochMinutes(start + 60)
  const early = { task: held.id, start, end, segments: [{ start, end }], people: ['ada'] }
  const alone = { ...problem, tasks: [held], links: [] }
  const found = verifyPlan(alone, { tasks: [early] })
  expect(found).toContainEqual({ rule: 'notBefore', tasks: [held.id], at: held.earliestStart })
})

test('a hold that was cleared lets its steps go, one without a day keeps them and says so', () => {
  const hold = specification.holds[0]
  if (hold === undefined) throw new Error('the old house has no holds')
  const said = (changes: Partial<HoldRecord>): Job => ({
    ...house,
    holds: {
      h: {
        id: 'h' as HoldRecord['id'],
        holdKey: hold.key,
        whoSeesToIt: '',
        expectedOn: null,
        clearedOn: null,
        clearedBy: '',
        note: '',
        ...changes,
      },
    },
  })
  const tasksWith = (job: Job) => asked(job, specify(job, takeOff(job)))
  const startOf = ({ problem, tasks }: ReturnType<typeof tasksWith>) => {
    const part = [...tasks.values()].find(({ stepKeys }) => stepKeys.includes(hold.stepKeys[0] ?? ''))
    return problem.tasks.find((task) => task.id === part?.id)?.earliestStart
  }
  const cleared = tasksWith(said({ clearedOn: '2027-03-29', clearedBy: 'A. Painter' }))
  expect(startOf(cleared)).toBeNull()
  const unknown = tasksWith(said({}))
  expect(unknown.relaxed).toContainEqual({ what: 'holdNoDate', id: hold.key })
  expect(startOf(unknown)).toBeGreaterThan(instantOf('2027-03-29T00:00', house.header.timeZone))
})

test('a pin before the day of a hold is lost, one after it is kept', () => {
  const { problem } = asked(house)
  const held = problem.tasks.find((task) => task.earliestStart !== null)
  const pin = (startsAt: string): Job => ({
    ...house,
    pins: { p: { id: 'p' as Pin['id'], passKey: held?.id ?? '', startsAt, crewMemberIds: [] } },
  })
  const tasksWith = (job: Job) => asked(job)
  expect(tasksWith(pin('2027-03-29T09:00')).relaxed).toContainEqual({ what: 'pinLost', id: 'p' })
  expect(tasksWith(pin('2027-06-01T09:00')).relaxed.filter((each) => each.what === 'pinLost')).toEqual([])
})
