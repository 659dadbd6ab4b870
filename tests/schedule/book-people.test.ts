import { expect, test } from 'vitest'
import { tableOf } from '../../core/project/empty-job.ts'
import type { Job } from '../../core/project/job.ts'
import {
  busyOf,
  type NamedPresence,
  presencesOf,
  sharedWithOthers,
} from '../../core/schedule/job/elsewhere.ts'
import { nothingHappened } from '../../core/schedule/job/problem-of-job.ts'
import { doubleBookings, type JobAtWork, peopleOfBook } from '../../core/schedule/jobs/book-people.ts'
import { planJob } from '../../core/schedule/plan-job.ts'
import { randomStream } from '../../core/schedule/random.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { addDays } from '../../core/time/local-date.ts'
import { plainRoom } from '../../demo-data/plain-room.ts'
import { planBody } from '../../renderer/state/planner-accepted.ts'
import { gathered } from '../passes/gathered.ts'

function at(crewMemberId: string, name: string, from: number, to: number): NamedPresence {
  return { crewMemberId, name, from: epochMinutes(from), to: epochMinutes(to) }
}

function jobAtWork(jobKey: string, work: readonly NamedPresence[], jobId = jobKey): JobAtWork {
  return { jobKey, jobId, title: jobKey, startsOn: '2027-03-29', finishesOn: '2027-03-30', work }
}

test('the shop’s people come first and by id; a stranger’s id goes by the name', () => {
  const people = peopleOfBook(
    [
      { id: 'ada', name: 'Ada' },
      { id: 'ben', name: 'Ben' },
    ],
    [
      jobAtWork('elm', [at('ada', 'Ada Amber', 10, 20), at('crew-9', 'Zoe', 10, 20)]),
      jobAtWork('oak', [at('crew-1', 'ada amber ', 20, 30), at('crew-2', 'Max', 5, 6)]),
    ],
  )
  expect(people.map(({ name, stays }) => [name, stays.map(({ jobKey }) => jobKey)])).toEqual([
    ['Ada', ['elm', 'oak']],
    ['Ben', []],
    ['Max', ['oak']],
    ['Zoe', ['elm']],
  ])
})

test('two jobs that have one person at once are named once, with every stretch; copies of one job are not', () => {
  const twice = [at('ada', 'Ada', 10, 20), at('ada', 'Ada', 40, 50)]
  const jobs = [
    jobAtWork('oak', twice),
    jobAtWork('oak again', twice, 'oak'),
    jobAtWork('elm', [at('ada', 'Ada', 15, 45)]),
  ]
  expect(
    doubleBookings(
      peopleOfBook(
        [],
        jobs.filter(({ jobKey }) => jobKey !== 'oak again'),
      ),
    ),
  ).toEqual([
    {
      name: 'Ada',
      jobKeys: ['elm', 'oak'],
      stretches: [
        { from: 15, to: 20 },
        { from: 40, to: 45 },
      ],
    },
  ])
  expect(doubleBookings(peopleOfBook([], jobs.slice(0, 2)))).toEqual([])
})

test('who only goes from one job to the other is not at two', () => {
  const crew = plainRoom().crew
  const [ada = ''] = Object.keys(crew)
  const elsewhere = [{ ...at(ada, '', 20, 30), jobKey: 'elm', jobTitle: 'Elm Street' }]
  const shared = (from: number, to: number) => sharedWithOthers(crew, [at(ada, '', from, to)], elsewhere)
  expect([shared(10, 20), shared(30, 40)]).toEqual([[], []])
  expect(shared(25, 40)).toEqual([
    { name: crew[ada]?.name, jobKey: 'elm', jobTitle: 'Elm Street', from: 25, to: 30 },
  ])
})

/** A room that begins on some day with some of the people, by ids of its own or by those of the shop. */
function randomJob(number: number, random: () => number): Job {
  const worked = plainRoom()
  const people = Object.values(worked.crew).slice(0, 1 + Math.floor(random() * 3))
  const own = random() < 0.5
  const crew = people.map((member) => (own ? { ...member, id: `own-${number}-${member.id}` } : member))
  const startsOn = addDays(worked.header.startsOn, Math.floor(random() * 4))
  return { ...worked, header: { ...worked.header, startsOn }, crew: tableOf(crew) as Job['crew'] }
}

test('jobs that are planned one around the other never share an hour of a person', () => {
  const random = randomStream(7)
  for (let book = 0; book < 4; book++) {
    const jobs: JobAtWork[] = []
    let moved = 0
    for (let number = 0; number < 4; number++) {
      const job = randomJob(number, random)
      const { specification, minutes } = gathered(job)
      const plan = (busy: ReturnType<typeof busyOf>) => {
        const outcome = planJob(job, specification, minutes, {
          seed: number,
          iterations: 12,
          planning: { ...nothingHappened, busy },
        })
        if (!outcome.ok) throw new Error(outcome.problem.sentence)
        expect(outcome.value.violations).toEqual([])
        return presencesOf(planBody(outcome.value, null).plan, job.header.timeZone).map((presence) => ({
          ...presence,
          name: job.crew[presence.crewMemberId]?.name ?? '',
        }))
      }
      const elsewhere = jobs.flatMap(({ jobKey, work }) =>
        work.map((each) => ({ ...each, jobKey, jobTitle: jobKey })),
      )
      if (sharedWithOthers(job.crew, plan({}), elsewhere).length > 0) moved++
      const work = plan(busyOf(job.crew, elsewhere))
      expect(sharedWithOthers(job.crew, work, elsewhere)).toEqual([])
      jobs.push(jobAtWork(`job ${number}`, work))
    }
    expect(moved).toBeGreaterThan(0)
    expect(doubleBookings(peopleOfBook([], jobs))).toEqual([])
  }
})
