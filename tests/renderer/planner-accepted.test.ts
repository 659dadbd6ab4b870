import { expect, test } from 'vitest'
import { type Issued, type IssuedId, issuedSchema } from '../../core/project/issued-records.ts'
import type { Job } from '../../core/project/job.ts'
import type { JobPlan } from '../../core/schedule/job-plan.ts'
import { acceptedPlan, planBody, sealedPlanAt } from '../../renderer/state/planner-accepted.ts'
import { plainPlan } from '../fixtures/plain-plan.ts'
import { plainJob } from '../fixtures/plain-room.ts'

const jobPlan: JobPlan = {
  ...plainPlan,
  tasks: plainPlan.tasks.map((task) => ({
    ...task,
    passKey: task.key,
    name: 'Walls',
    roomSetId: task.roomId,
    dryUntil: null,
    state: 'open',
  })),
  days: [],
  roomsOutOfUse: [],
  cost: { pay: 9, siteDays: 5, roomDays: 4, handOvers: 1, total: 19, lateDays: 0, movedTasks: 0 },
  roomDays: 2,
  violations: [],
  bound: { finishesOn: '2027-03-30', gapDays: 0, cents: 10, gapCents: 9 },
  relaxed: [],
}

function accepted(id: string, issuedAt: string, body: Issued['body']): Issued {
  return { id: id as IssuedId, kind: 'plan', issuedAt, body } as Issued
}

function jobWith(...given: readonly Issued[]): Job {
  return { ...plainJob(), issued: Object.fromEntries(given.map((each) => [each.id, each])) }
}

test('an accepted plan is frozen in a form that may be stored, and is the plan again', () => {
  const record = accepted('first', '2027-03-20T17:00', planBody(jobPlan, 0))
  const stored = issuedSchema.parse(issuedSchema.encode(record as never))
  expect(stored).toEqual(record)
  expect(acceptedPlan(jobWith(record))).toMatchObject({
    id: 'first',
    acceptedAt: '2027-03-20T17:00',
    plan: { startsOn: '2027-03-29', finishesOn: '2027-03-30' },
  })
  expect(acceptedPlan(jobWith(record))?.plan.tasks.map(({ key }) => key)).toEqual(
    plainPlan.tasks.map(({ key }) => key),
  )
})

test('when the plan accepted last cannot be opened no older one stands in for it, and that is said', () => {
  const older = accepted('older', '2027-03-20T17:00', planBody(jobPlan, null))
  const newest = accepted('newest', '2027-03-21T17:00', { version: null, kept: { version: 9 } })
  expect(acceptedPlan(jobWith(newest, older))).toBe(null)
  expect(sealedPlanAt(jobWith(newest, older))).toBe('2027-03-21T17:00')
  expect(sealedPlanAt(jobWith(older))).toBe(null)
})

test('of several accepted plans the newest counts, whatever their place in the book; of two in one minute the later record', () => {
  const at = (id: string, moment: string) => accepted(id, moment, planBody(jobPlan, null))
  const [march, april, may] = [
    at('march', '2027-03-20T17:00'),
    at('april', '2027-04-20T17:00'),
    at('may', '2027-05-20T17:00'),
  ]
  for (const order of [
    [march, april, may],
    [may, april, march],
    [april, may, march],
  ]) {
    expect(acceptedPlan(jobWith(...order))?.id).toBe('may')
  }
  expect(acceptedPlan(jobWith(at('one', '2027-05-20T17:00'), at('other', '2027-05-20T17:00')))?.id).toBe(
    'other',
  )
  expect(acceptedPlan(jobWith())).toBe(null)
})
