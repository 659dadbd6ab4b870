import { expect, test } from 'vitest'
import { sameJob } from '../../core/project/graft.ts'
import type { Job } from '../../core/project/job.ts'
import { succeed } from '../../core/project/problem.ts'
import type { Mark, MarkId } from '../../core/project/progress-records.ts'
import { createHandlers } from '../../electron/handlers/handlers.ts'
import { keeperInMemory } from '../../electron/storage/keeper.ts'
import { createStore } from '../../electron/storage/store.ts'
import { createJobStore, type JobStore } from '../../renderer/state/job-store.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { quietHost, stoppedClock } from '../hosts/handler-parts.ts'
import { granted, migrations, steadyClock } from '../storage/books.ts'
import { faultyHost, placesToBeLost } from './faulty-host.ts'
import { simulatedTime } from './simulated-time.ts'

/** A predictable row of numbers from 0 to below 1, for each seed another one. */
function dice(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 4_294_967_296
    return state / 4_294_967_296
  }
}

function ticked(job: Job, id: string): Job {
  const mark: Mark = {
    id: id as MarkId,
    stepKey: 'study/step',
    mark: 'done',
    at: '2027-04-01T09:00',
    crewMemberIds: [],
    actualMinutes: null,
    note: '',
  }
  return { ...job, marks: { ...job.marks, [id]: mark } }
}

function jobOf(jobs: JobStore): Job {
  return jobs.store.getState().job as Job
}

/** Two windows work on one job over a bad road and look now and then; answers what the book has in the end and what was made. */
async function twoWindowsAtWork(seed: number) {
  const roll = dice(seed)
  const time = simulatedTime()
  const options = { migrations, now: steadyClock(), newJobKey: () => 'job-1' }
  const store = granted(createStore(':memory:', options))
  const opened = granted(store.create(plainJob()))
  const handlers = createHandlers({
    keeper: keeperInMemory(store),
    host: quietHost,
    clock: stoppedClock,
    readDemo: () => null,
  })
  const windows = ['left', 'right'].map((name) => {
    const first = Math.floor(roll() * 40)
    const lostAt = placesToBeLost[Math.floor(roll() * placesToBeLost.length)] ?? 'theWayBack'
    const host = faultyHost(handlers, time, { first, lostAt, lasts: { time: roll() * 90_000 } })
    const jobs = createJobStore(host.ask, { timer: time })
    jobs.show(JSON.parse(JSON.stringify(opened)))
    return { name, host, jobs, failed: host.failed }
  })
  const made: string[] = []
  let offers = 0

  async function looks({ host, jobs }: (typeof windows)[number]): Promise<void> {
    const asked = host.ask('jobRevision', { jobKey: opened.jobKey })
    void asked.then((answer) => answer.ok && jobs.heard(answer.value.revision))
    await time.pass(100)
    if (jobs.store.getState().stored !== 'behind') return
    offers++
    jobs.reapply()
    expect(jobs.store.getState().unfit).toBeNull()
  }

  for (let turn = 0; turn < 60; turn++) {
    const window = windows[Math.floor(roll() * 2)] as (typeof windows)[number]
    const id = `${window.name}-${turn}`
    window.jobs.perform('tick', succeed(ticked(jobOf(window.jobs), id)))
    made.push(id)
    await time.pass(roll() < 0.4 ? 5 : roll() * 20_000)
    if (roll() < 0.5) await looks(window)
  }
  for (let rounds = 0; rounds < 12; rounds++) {
    for (const window of windows) await looks(window)
    await time.pass(60_000)
  }
  const book = granted(store.open(opened.jobKey)).job
  store.close()
  return { book, made, offers, windows, failed: windows.reduce((sum, { failed }) => sum + failed(), 0) }
}

test('two windows at work on one job over a bad road lose nothing of each other', {
  timeout: 300_000,
}, async () => {
  const counts = { runs: 0, made: 0, failed: 0, offers: 0, lost: 0 }
  for (let seed = 1; seed <= 60; seed++) {
    const { book, made, offers, windows, failed } = await twoWindowsAtWork(seed)
    counts.runs++
    counts.made += made.length
    counts.failed += failed
    counts.offers += offers
    counts.lost += made.filter((id) => book.marks[id] === undefined).length
    expect(Object.keys(book.marks)).toHaveLength(made.length)
    for (const { jobs } of windows) {
      expect(jobs.store.getState().stored).toBe('stored')
      expect(sameJob(jobOf(jobs), book)).toBe(true)
    }
  }
  console.log(`two windows: ${JSON.stringify(counts)}`)
  expect(counts.failed).toBeGreaterThan(0)
  expect(counts.offers).toBeGreaterThan(0)
  expect(counts.lost).toBe(0)
})
