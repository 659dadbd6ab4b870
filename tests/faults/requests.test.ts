import { expect, test } from 'vitest'
import { sameJob } from '../../core/project/graft.ts'
import type { Job } from '../../core/project/job.ts'
import { createHandlers } from '../../electron/handlers/handlers.ts'
import { keeperInMemory } from '../../electron/storage/keeper.ts'
import { createStore, type Store } from '../../electron/storage/store.ts'
import { createJobStore, type JobStore } from '../../renderer/state/job-store.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { quietHost, stoppedClock } from '../hosts/handler-parts.ts'
import { granted, migrations, steadyClock } from '../storage/books.ts'
import { type Fault, type FaultyHost, faultyHost, type LostAt, placesToBeLost } from './faulty-host.ts'
import { hourOfWork } from './hour-of-work.ts'
import { type SimulatedTime, simulatedTime } from './simulated-time.ts'

/** How often the page asks what the book has (ms). */
const betweenLooks = 120_000
const minute = 60_000

interface Hour {
  readonly page: Job
  readonly book: Job
  readonly host: FaultyHost
  readonly stored: string
  /** Moments at which the page said "stored" and the book had something else. */
  readonly lies: number
}

/** The hour of work on a book in memory, with a fault on the road to it, until everything has been sent. */
async function worked(fault: Fault | null): Promise<Hour> {
  const time = simulatedTime()
  const store = bookInMemory()
  const { jobKey } = granted(store.create(plainJob()))
  const handlers = createHandlers({
    keeper: keeperInMemory(store),
    host: quietHost,
    clock: stoppedClock,
    readDemo: () => null,
  })
  const host = faultyHost(handlers, time, fault)
  const jobs = createJobStore(host.ask, { timer: time })
  await opened(jobs, host, time, jobKey)
  look(jobs, host, time, jobKey)
  let lies = 0
  for (const { after, act } of hourOfWork) {
    await time.pass(after * 1000)
    act(jobs)
    lies += isLying(jobs, store, jobKey) ? 1 : 0
    await time.pass(1)
    lies += isLying(jobs, store, jobKey) ? 1 : 0
  }
  await time.pass(10 * minute)
  const { job: page, stored } = jobs.store.getState()
  const book = granted(store.open(jobKey)).job
  store.close()
  return { page: page as Job, book, host, stored, lies }
}

function bookInMemory(): Store {
  const options = { migrations, now: steadyClock(), newJobKey: () => 'job-1' }
  return granted(createStore(':memory:', options))
}

/** Opening fails in words and is asked again, as a user would. */
async function opened(jobs: JobStore, host: FaultyHost, time: SimulatedTime, jobKey: string): Promise<void> {
  for (;;) {
    let isDone = false
    void host.ask('openJob', { jobKey }).then((answer) => {
      if (answer.ok && jobs.store.getState().job === null) jobs.show(answer.value)
      isDone = answer.ok
    })
    await time.pass(5000)
    if (isDone) return
  }
}

function look(jobs: JobStore, host: FaultyHost, time: SimulatedTime, jobKey: string): void {
  time.after(betweenLooks, () => {
    void host.ask('jobRevision', { jobKey }).then((answer) => {
      if (answer.ok) jobs.heard(answer.value.revision)
    })
    look(jobs, host, time, jobKey)
  })
}

function isLying(jobs: JobStore, store: Store, jobKey: string): boolean {
  const { job, stored } = jobs.store.getState()
  return stored === 'stored' && !sameJob(job as Job, granted(store.open(jobKey)).job)
}

const silences: readonly LostAt[] = ['thereInSilence', 'backInSilence']
const lengths: readonly (readonly [string, Fault['lasts'], readonly LostAt[]])[] = [
  ['once', { requests: 1 }, [...placesToBeLost, ...silences]],
  ['twice', { requests: 2 }, placesToBeLost],
  ['for a minute', { time: minute }, placesToBeLost],
]

const sound = await worked(null)

test('an hour of work without a fault ends with page and book equal', () => {
  expect(sound).toMatchObject({ stored: 'stored', lies: 0 })
  expect(sameJob(sound.page, sound.book)).toBe(true)
  // The last tick was undone.
  expect(Object.keys(sound.book.marks)).toHaveLength(23)
  expect(sound.host.asked.filter((name) => name === 'storeEdit').length).toBeGreaterThan(40)
})

for (const [words, lasts, places] of lengths) {
  test(`no edit is lost, doubled or called stored when any request fails ${words}`, {
    timeout: 300_000,
  }, async () => {
    const counts = { hours: 0, failed: 0, lost: 0, lies: 0 }
    for (const lostAt of places) {
      for (let first = 0; first < sound.host.asked.length; first++) {
        const hour = await worked({ first, lostAt, lasts })
        counts.hours++
        counts.failed += hour.host.failed()
        counts.lies += hour.lies
        const isWhole = hour.stored === 'stored' && sameJob(hour.page, hour.book)
        if (!isWhole || !sameJob(hour.book, sound.book)) {
          counts.lost++
          console.warn(
            `lost: request ${first} (${sound.host.asked[first]}) ${lostAt} ${words}: ${hour.stored}`,
          )
        }
      }
    }
    console.log(`requests failing ${words}: ${JSON.stringify(counts)}`)
    expect(counts.failed).toBeGreaterThanOrEqual(counts.hours)
    expect(counts).toMatchObject({ lost: 0, lies: 0 })
  })
}
