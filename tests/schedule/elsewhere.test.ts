import { expect, test } from 'vitest'
import { tableOf } from '../../core/project/empty-job.ts'
import type { PlanBody } from '../../core/project/issued-records.ts'
import type { Job } from '../../core/project/job.ts'
import type { CrewMember, CrewMemberId } from '../../core/project/shop-records.ts'
import { busyOf, type NamedPresence, presencesOf } from '../../core/schedule/job/elsewhere.ts'
import { nothingHappened, type PlanningFacts } from '../../core/schedule/job/problem-of-job.ts'
import { planJob } from '../../core/schedule/plan-job.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { instantOf } from '../../core/time/site-moment.ts'
import { plainRoom } from '../../demo-data/plain-room.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { gathered } from '../passes/gathered.ts'

const zone = 'America/New_York'

function planOf(
  tasks: readonly (readonly [
    people: readonly string[],
    ...segments: readonly (readonly [string, string])[],
  ])[],
  days: PlanBody['plan']['days'] = [],
): PlanBody['plan'] {
  return {
    tasks: tasks.map(([people, ...segments], index) => ({
      key: `task-${index}`,
      roomId: 'study' as PlanBody['plan']['tasks'][number]['roomId'],
      stepKeys: [],
      startsAt: segments[0]?.[0] ?? '',
      endsAt: segments.at(-1)?.[1] ?? '',
      segments: segments.map(([startsAt, endsAt]) => ({ startsAt, endsAt })),
      crewMemberIds: people as readonly CrewMemberId[],
      dryUntil: null,
    })),
    days,
    startsOn: '2027-03-29',
    finishesOn: '2027-03-30',
    roomsOutOfUse: [],
    bound: null,
  }
}

const at = (moment: string) => instantOf(moment, zone)

test('somebody is there from the first to the last work of a day, with setting up and leaving where it was kept', () => {
  const tasks = [
    [
      ['ada', 'ben'],
      ['2027-03-29T09:00', '2027-03-29T12:00'],
      ['2027-03-30T08:00', '2027-03-30T09:00'],
    ],
    [['ada'], ['2027-03-29T13:00', '2027-03-29T15:00']],
  ] as const
  const day = { crewMemberId: 'ada' as CrewMemberId, date: '2027-03-29', paidMinutes: 420, betweenMinutes: 0 }
  const there = presencesOf(planOf(tasks, [{ ...day, setUpMinutes: 15, leavingMinutes: 20 }]), zone)
  expect(there).toEqual([
    { crewMemberId: 'ada', from: at('2027-03-29T08:45'), to: at('2027-03-29T15:20') },
    { crewMemberId: 'ben', from: at('2027-03-29T09:00'), to: at('2027-03-29T12:00') },
    { crewMemberId: 'ada', from: at('2027-03-30T08:00'), to: at('2027-03-30T09:00') },
    { crewMemberId: 'ben', from: at('2027-03-30T08:00'), to: at('2027-03-30T09:00') },
  ])
})

const job = plainJob()
const [ada, ben] = ['ada', 'ben'].map((id) => job.crew[id]) as [CrewMember, CrewMember]

function work(crewMemberId: string, name: string, from: number, to: number): NamedPresence {
  return { crewMemberId, name, from: epochMinutes(from), to: epochMinutes(to) }
}

test('the same id is the same person whatever the name; where the id is not known the name decides', () => {
  const crew = tableOf([ada, { ...ben, name: 'Ben Blue' }])
  expect(busyOf(crew, [work('ada', 'Renamed since', 10, 20)])).toEqual({ ada: [{ start: 10, end: 20 }] })
  expect(busyOf(crew, [work('crew-7', ' ben blue', 10, 20)])).toEqual({ ben: [{ start: 10, end: 20 }] })
  expect(busyOf(crew, [work('ada', 'Ben Blue', 10, 20)])).toEqual({ ada: [{ start: 10, end: 20 }] })
  expect(busyOf(crew, [work('crew-7', 'Somebody else', 10, 20)])).toEqual({})
})

test('stretches of several jobs are one where they touch', () => {
  const crew = tableOf([ada])
  const stretches = [
    work('ada', '', 30, 40),
    work('ada', '', 10, 20),
    work('ada', '', 15, 30),
    work('ada', '', 60, 70),
  ]
  expect(busyOf(crew, stretches)).toEqual({
    ada: [
      { start: 10, end: 40 },
      { start: 60, end: 70 },
    ],
  })
})

/** The worked room with two of its painters, or the first of them alone. */
function room(people: 1 | 2): Job {
  const worked = plainRoom()
  return { ...worked, crew: tableOf(Object.values(worked.crew).slice(0, people)) }
}

function planned(changed: Job, busy: PlanningFacts['busy'] = {}) {
  const { specification, minutes } = gathered(changed)
  const outcome = planJob(changed, specification, minutes, {
    seed: 1,
    iterations: 60,
    planning: { ...nothingHappened, busy },
  })
  if (!outcome.ok) throw new Error(outcome.problem.sentence)
  return outcome.value
}

test('who is on another job is planned around it', () => {
  const alone = room(1)
  const [painter] = Object.keys(alone.crew) as [string]
  const free = planned(alone)
  const day = { start: at(`${free.startsOn}T00:00`), end: at(`${free.startsOn}T23:55`) }
  const later = planned(alone, { [painter]: [day] })
  expect(later.violations).toEqual([])
  expect(later.startsOn > free.startsOn).toBe(true)
})

test('nobody is planned while on another job for weeks', () => {
  const both = room(2)
  const first = at(`${both.header.startsOn}T00:00`)
  const [busy = ''] = planned(both).tasks[0]?.crewMemberIds ?? []
  const weeks = { start: first, end: epochMinutes(first + 60 * 1440) }
  const plan = planned(both, { [busy]: [weeks] })
  const own = plan.tasks.filter(({ crewMemberIds }) => crewMemberIds.some((id) => id === busy))
  expect(plan.violations).toEqual([])
  expect(own.filter(({ startsAt }) => at(startsAt) < weeks.end)).toEqual([])
})
