import { expect, test } from 'vitest'
import type { Handlers, OpenedJob } from '../../core/contract/requests.ts'
import type { Dealing } from '../../core/project/agreement-records.ts'
import { diffJobs } from '../../core/project/diff.ts'
import type { Issued } from '../../core/project/issued-records.ts'
import type { Job } from '../../core/project/job.ts'
import { answerRequest } from '../../electron/handlers/answer.ts'
import { granted } from '../storage/books.ts'
import { quietHandlers, quietHost } from './handler-parts.ts'

/** Ada is at the plain room on the 29th of March 2027, 8:00 to 10:15 in New York with setting up and leaving; a plan of its time. */
function accepted(id: string, issuedAt: string, begins: string, ends: string): Issued {
  const task = {
    key: 'study/walls/1',
    roomId: 'study',
    stepKeys: ['study/walls/coat-1'],
    startsAt: `2027-03-29T${begins}`,
    endsAt: `2027-03-29T${ends}`,
    segments: [{ startsAt: `2027-03-29T${begins}`, endsAt: `2027-03-29T${ends}` }],
    crewMemberIds: ['ada'],
    dryUntil: null,
  }
  const day = {
    crewMemberId: 'ada',
    date: '2027-03-29',
    paidMinutes: 240,
    setUpMinutes: 15,
    leavingMinutes: 15,
  }
  return {
    id,
    kind: 'plan',
    issuedAt,
    body: {
      version: 1,
      plan: {
        tasks: [task],
        days: [{ ...day, betweenMinutes: 0 }],
        startsOn: '2027-03-29',
        finishesOn: '2027-03-29',
        roomsOutOfUse: [],
        bound: null,
      },
      judged: {},
    },
  } as unknown as Issued
}

async function withPlans(handlers: Handlers, opened: OpenedJob, ...plans: readonly Issued[]): Promise<void> {
  const issued = { ...opened.job.issued, ...Object.fromEntries(plans.map((plan) => [plan.id, plan])) }
  const diff = diffJobs(opened.job, { ...opened.job, issued } as Job)
  granted(await handlers.storeEdit({ jobKey: opened.jobKey, revision: opened.revision, diff }))
}

async function elsewhere(handlers: Handlers, { jobKey }: OpenedJob): Promise<unknown> {
  return granted(await answerRequest(handlers, 'workElsewhere', { jobKey }))
}

const minute = (time: string) => Date.parse(`2027-03-29T${time}:00-04:00`) / 60_000
const adaThere = { crewMemberId: 'ada', name: 'Ada', from: minute('08:00'), to: minute('10:15') }
const adaElsewhere = ({ jobKey, job }: OpenedJob) => ({ ...adaThere, jobKey, jobTitle: job.header.title })

test.each(['desktop', 'loopback', 'headless'] as const)(
  'a job hears when its people are on another one by the plan accepted last, and not of itself (%s)',
  async (host) => {
    const handlers = quietHandlers({ host: { ...quietHost, facts: { ...quietHost.facts, host } } })
    const first = granted(await handlers.openDemo({}))
    const second = granted(await handlers.createJob({ title: 'Next one', unitSystem: 'imperial' }))
    expect(await elsewhere(handlers, second)).toEqual([])
    await withPlans(
      handlers,
      first,
      accepted('later', '2027-03-21T08:00', '08:15', '10:00'),
      accepted('sooner', '2027-03-20T08:00', '13:00', '15:00'),
    )
    expect(await elsewhere(handlers, second)).toEqual([adaElsewhere(first)])
    expect(await elsewhere(handlers, first)).toEqual([])
  },
)

test('a copy of a job keeps nobody from it, and what is over when a job begins keeps nobody from that', async () => {
  const handlers = quietHandlers()
  const first = granted(await handlers.openDemo({}))
  const second = granted(await handlers.createJob({ title: 'Next one', unitSystem: 'imperial' }))
  await withPlans(handlers, first, accepted('plan', '2027-03-21T08:00', '08:15', '10:00'))
  const { text } = granted(await handlers.exportJob({ jobKey: first.jobKey }))
  const copy = granted(await handlers.importJob({ text }))
  expect(await elsewhere(handlers, first)).toEqual([])
  expect(await elsewhere(handlers, copy)).toEqual([])
  const later = { ...second.job, header: { ...second.job.header, startsOn: '2027-03-30' } }
  const diff = diffJobs(second.job, later)
  granted(await handlers.storeEdit({ jobKey: second.jobKey, revision: 1, diff }))
  expect(await elsewhere(handlers, second)).toEqual([])
})

test('a plan that this program cannot open keeps nobody', async () => {
  const handlers = quietHandlers()
  const first = granted(await handlers.openDemo({}))
  const second = granted(await handlers.createJob({ title: 'Next one', unitSystem: 'imperial' }))
  const plan = accepted('plan', '2027-03-21T08:00', '08:15', '10:00')
  const newer = { version: null, kept: { version: 2, plan: { finishesOn: '2027-04-30' } } }
  await withPlans(handlers, first, { ...plan, body: newer } as Issued)
  expect(await elsewhere(handlers, second)).toEqual([])
})

test('the book says when people are on each of its jobs, until one is lost or finished', async () => {
  const handlers = quietHandlers()
  const first = granted(await handlers.openDemo({}))
  const second = granted(await handlers.createJob({ title: 'Next one', unitSystem: 'imperial' }))
  await withPlans(handlers, first, accepted('plan', '2027-03-21T08:00', '08:15', '10:00'))
  const { jobKey, job } = first
  const onIt = {
    jobKey,
    jobId: job.header.id,
    title: job.header.title,
    startsOn: '2027-03-29',
    finishesOn: '2027-03-29',
    work: [adaThere],
  }
  const ofBook = async () => granted(await answerRequest(handlers, 'workOfBook', {}))
  expect(await ofBook()).toEqual([onIt])
  const opened = granted(await handlers.openJob({ jobKey }))
  const lost = { id: 'lost', kind: 'lost', on: '2027-03-22', why: '' } as Dealing
  const diff = diffJobs(opened.job, { ...opened.job, dealings: { [lost.id]: lost } })
  granted(await handlers.storeEdit({ jobKey, revision: opened.revision, diff }))
  expect([await ofBook(), await elsewhere(handlers, second)]).toEqual([[], []])
})
