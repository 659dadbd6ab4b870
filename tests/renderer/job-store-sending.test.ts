import { beforeEach, expect, test } from 'vitest'
import type { Ask, RequestName } from '../../core/contract/requests.ts'
import type { Job } from '../../core/project/job.ts'
import { fail, type Outcome, type ProblemKind, succeed } from '../../core/project/problem.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { answerRequest } from '../../electron/handlers/answer.ts'
import { createHandlers } from '../../electron/handlers/handlers.ts'
import { keeperInMemory } from '../../electron/storage/keeper.ts'
import { createStore, type Store } from '../../electron/storage/store.ts'
import { longestPast } from '../../renderer/state/history.ts'
import { createJobStore, type JobStore } from '../../renderer/state/job-store.ts'
import { type SimulatedTime, simulatedTime } from '../faults/simulated-time.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'
import { quietHost, stoppedClock } from '../hosts/handler-parts.ts'
import { granted, migrations, steadyClock } from '../storage/books.ts'

/** A window on the one job of a book in memory, over a road that can be cut. */
interface Window {
  readonly jobs: JobStore
  readonly road: { cut: ProblemKind | null; isDeaf: boolean; drafts: boolean; asked: RequestName[] }
}

let book: Store
let time: SimulatedTime

beforeEach(() => {
  time = simulatedTime()
  book = granted(
    createStore(':memory:', { migrations, now: steadyClock(), newJobKey: () => `job-${Math.random()}` }),
  )
  granted(book.create(plainJob()))
})

function keyOfJob(): string {
  return granted(book.list())[0]?.jobKey ?? ''
}

function bookJob(): Job {
  return granted(book.open(keyOfJob())).job
}

function openWindow(): Window {
  const handlers = createHandlers({
    keeper: keeperInMemory(book),
    host: quietHost,
    clock: stoppedClock,
    readDemo: () => null,
  })
  const road: Window['road'] = { cut: null, isDeaf: false, drafts: false, asked: [] }
  const ask = (async (name: RequestName, argument: unknown) => {
    road.asked.push(name)
    if (road.cut !== null) return fail(road.cut, 'It cannot be written just now.')
    const answer = JSON.parse(JSON.stringify(await answerRequest(handlers, name, argument)))
    return road.isDeaf ? fail('hostFailed', 'The answer was lost.') : answer
  }) as Ask
  const jobs = createJobStore(ask, { timer: time, hasDrafts: () => road.drafts })
  jobs.show(JSON.parse(JSON.stringify(granted(book.open(keyOfJob())))))
  return { jobs, road }
}

function jobOf({ jobs }: Window): Job {
  return jobs.store.getState().job as Job
}

function change(window: Window, part: Partial<Job['header']>, name = 'change the header'): void {
  const job = jobOf(window)
  expect(window.jobs.perform(name, succeed({ ...job, header: { ...job.header, ...part } }))).toBe(true)
}

function changeRoom(window: Window, part: Partial<Room>, name = 'change the room'): boolean {
  const job = jobOf(window)
  const room = { ...(job.rooms[roomId] as Room), ...part }
  return window.jobs.perform(name, succeed({ ...job, rooms: { ...job.rooms, [roomId]: room } }))
}

async function looks({ jobs }: Window): Promise<void> {
  const answer: Outcome<{ revision: number }> = book.revision(keyOfJob())
  jobs.heard(granted(answer).revision)
  await time.pass(10)
}

test('an edit that fails is kept, is not called stored, and goes into the book with the next one', async () => {
  const window = openWindow()
  window.road.cut = 'storageFailed'
  change(window, { client: 'First' })
  await time.pass(1)
  expect(window.jobs.store.getState()).toMatchObject({
    stored: 'notStored',
    trouble: { problem: { kind: 'storageFailed' }, pause: 1000 },
  })
  expect(window.jobs.isEqual()).toBe(false)
  window.road.cut = null
  change(window, { site: 'Second' })
  await time.pass(1)
  expect(window.jobs.store.getState()).toMatchObject({ stored: 'stored', trouble: null })
  expect(bookJob().header).toMatchObject({ client: 'First', site: 'Second' })
})

test('it is tried again by itself with growing pauses, which stay at half a minute', async () => {
  const window = openWindow()
  window.road.cut = 'hostFailed'
  change(window, { client: 'First' })
  const waits: number[] = []
  let last = time.now()
  for (let second = 0; second < 200; second++) {
    const before = window.road.asked.length
    await time.pass(1000)
    if (window.road.asked.length > before && second > 0) {
      waits.push((time.now() - last) / 1000)
      last = time.now()
    }
  }
  expect(waits.slice(0, 7)).toEqual([3, 4, 8, 15, 30, 30, 30])
  window.road.cut = null
  await time.pass(30_000)
  expect(window.jobs.store.getState().stored).toBe('stored')
  expect(bookJob().header.client).toBe('First')
})

test('it is tried at once when the user asks, without waiting for the pause', async () => {
  const window = openWindow()
  window.road.cut = 'storageFailed'
  change(window, { client: 'First' })
  await time.pass(100_000)
  window.road.cut = null
  await window.jobs.storeNow()
  expect(bookJob().header.client).toBe('First')
  expect(window.jobs.store.getState().stored).toBe('stored')
})

test('undo and redo go on while nothing can be stored, and the book gets where the page is in the end', async () => {
  const window = openWindow()
  const before = jobOf(window).header.client
  window.road.cut = 'storageFailed'
  for (const client of ['a', 'b', 'c']) change(window, { client })
  window.jobs.undo()
  window.jobs.undo()
  window.jobs.redo()
  await time.pass(5000)
  expect(jobOf(window).header.client).toBe('b')
  window.road.cut = null
  await time.pass(60_000)
  expect(bookJob().header.client).toBe('b')
  window.jobs.undo()
  window.jobs.undo()
  await time.pass(1)
  expect(bookJob().header.client).toBe(before)
})

test('what is undone before it could be stored leaves nothing to store', async () => {
  const window = openWindow()
  window.road.cut = 'storageFailed'
  change(window, { client: 'a' })
  await time.pass(1)
  window.jobs.undo()
  await time.pass(1)
  expect(window.jobs.store.getState()).toMatchObject({ stored: 'stored', trouble: null })
  expect(window.jobs.isEqual()).toBe(true)
})

test('an edit whose answer was lost is not called stored when undone, until the book was looked into', async () => {
  const window = openWindow()
  change(window, { client: 'a' })
  await time.pass(1)
  window.road.cut = 'hostFailed'
  change(window, { client: 'b' })
  await time.pass(1)
  window.jobs.undo()
  await time.pass(1)
  expect(window.jobs.store.getState().stored).not.toBe('stored')
  expect(window.jobs.isEqual()).toBe(false)
  window.road.cut = null
  await time.pass(5000)
  expect(window.jobs.store.getState().stored).toBe('stored')
})

test('an edit whose answer was lost is known again in the book, though the page has gone on since', async () => {
  const window = openWindow()
  window.road.isDeaf = true
  change(window, { client: 'a' })
  await time.pass(1)
  expect(bookJob().header.client).toBe('a')
  change(window, { client: 'ab' })
  changeRoom(window, { note: 'b' })
  await time.pass(1)
  window.road.isDeaf = false
  await time.pass(5000)
  expect(window.jobs.store.getState()).toMatchObject({ stored: 'stored', newer: null, unfit: null })
  expect(bookJob()).toEqual(jobOf(window))
  expect(window.jobs.store.getState().past).toHaveLength(3)
})

test('a request without any answer counts as lost after a while and is made again', async () => {
  const window = openWindow()
  let isSilent = true
  const first = createJobStore(
    ((name: RequestName, argument: never) =>
      isSilent
        ? new Promise(() => undefined)
        : answerRequest(
            createHandlers({
              keeper: keeperInMemory(book),
              host: quietHost,
              clock: stoppedClock,
              readDemo: () => null,
            }),
            name,
            argument,
          )) as unknown as Ask,
    { timer: time },
  )
  first.show(granted(book.open(keyOfJob())))
  const job = jobOf(window)
  first.perform('change', succeed({ ...job, header: { ...job.header, client: 'Late' } }))
  await time.pass(29_000)
  expect(first.store.getState().stored).toBe('storing')
  await time.pass(1001)
  expect(first.store.getState().stored).toBe('notStored')
  isSilent = false
  await time.pass(5000)
  expect(first.store.getState().stored).toBe('stored')
  expect(bookJob().header.client).toBe('Late')
})

test('an action the book refuses is named, never sent again by itself, and undone like any other', async () => {
  const window = openWindow()
  changeRoom(window, { name: '' }, 'take the name away')
  await time.pass(1)
  expect(window.jobs.store.getState()).toMatchObject({
    stored: 'refused',
    refused: { name: 'take the name away', problem: { kind: 'notValid' } },
  })
  const { length } = window.road.asked
  await time.pass(1_000_000)
  await window.jobs.storeNow()
  await looks(window)
  expect(window.road.asked).toHaveLength(length)
  window.jobs.undo()
  await time.pass(1)
  expect(window.jobs.store.getState()).toMatchObject({ stored: 'stored', refused: null })
  expect(bookJob()).toEqual(jobOf(window))
})

test('of many edits that waited, those before the refused one are stored, and those after it once it is taken back', async () => {
  const window = openWindow()
  window.road.cut = 'storageFailed'
  change(window, { client: 'Before' }, 'before')
  changeRoom(window, { name: '' }, 'take the name away')
  change(window, { site: 'After' }, 'after')
  await time.pass(1)
  window.road.cut = null
  await time.pass(5000)
  expect(window.jobs.store.getState()).toMatchObject({
    stored: 'refused',
    refused: { name: 'take the name away' },
  })
  expect(bookJob().header).toMatchObject({ client: 'Before', site: '1 Example Lane' })
  window.jobs.takeBackRefused()
  await time.pass(1)
  expect(window.jobs.store.getState()).toMatchObject({ stored: 'stored', refused: null, unfit: null })
  expect(bookJob().header).toMatchObject({ client: 'Before', site: 'After' })
  expect(bookJob().rooms[roomId]?.name).toBe('Study')
  expect(jobOf(window)).toEqual(bookJob())
  expect(window.jobs.store.getState().past.map((action) => action.name)).not.toContain('take the name away')
})

test('a window with nothing of its own takes over the newer state, and what it may still undo stays undoable', async () => {
  const [left, right] = [openWindow(), openWindow()]
  changeRoom(left, { note: 'Left' })
  await time.pass(1)
  await looks(right)
  expect(jobOf(right).rooms[roomId]?.note).toBe('Left')
  change(right, { client: 'Right' })
  await time.pass(1)
  await looks(left)
  expect(left.jobs.store.getState()).toMatchObject({ stored: 'stored', hasTakenOver: true, newer: null })
  expect(jobOf(left)).toEqual(bookJob())
  left.jobs.undo()
  await time.pass(1)
  expect(bookJob().rooms[roomId]?.note).toBe('')
  expect(bookJob().header.client).toBe('Right')
})

test('what another window changed since cannot be undone over its head', async () => {
  const [left, right] = [openWindow(), openWindow()]
  change(left, { client: 'Left' })
  await time.pass(1)
  await looks(right)
  change(right, { client: 'Right' })
  await time.pass(1)
  await looks(left)
  expect(left.jobs.store.getState().past).toEqual([])
})

test('records that did not change are the same objects after taking over', async () => {
  const [left, right] = [openWindow(), openWindow()]
  const before = jobOf(left)
  change(right, { client: 'Right' })
  await time.pass(1)
  await looks(left)
  expect(jobOf(left).header).not.toBe(before.header)
  expect(jobOf(left).rooms).toBe(before.rooms)
  expect(jobOf(left).products).toBe(before.products)
})

test('a window with edits of its own is offered the newer state, and puts its edits on top of it', async () => {
  const [left, right] = [openWindow(), openWindow()]
  right.road.cut = 'storageFailed'
  changeRoom(right, { note: 'mine' })
  change(right, { client: 'mine' })
  await time.pass(1)
  changeRoom(left, { name: 'Library' })
  await time.pass(1)
  right.road.cut = null
  await time.pass(5000)
  expect(right.jobs.store.getState()).toMatchObject({ stored: 'behind' })
  expect(right.jobs.store.getState().newer?.rooms[roomId]?.name).toBe('Library')
  expect(bookJob().header.client).toBe('A. Client')
  change(right, { site: 'still at work' })
  right.jobs.reapply()
  await time.pass(1)
  expect(right.jobs.store.getState()).toMatchObject({ stored: 'stored', newer: null, unfit: null })
  expect(bookJob().rooms[roomId]).toMatchObject({ name: 'Library', note: 'mine' })
  expect(bookJob().header).toMatchObject({ client: 'mine', site: 'still at work' })
  await looks(left)
  expect(jobOf(left)).toEqual(jobOf(right))
})

test('own edits that no longer fit are told and kept, the others are stored', async () => {
  const [left, right] = [openWindow(), openWindow()]
  right.road.cut = 'storageFailed'
  changeRoom(right, { name: 'My study' })
  change(right, { client: 'mine' })
  await time.pass(1)
  changeRoom(left, { name: 'Library' })
  await time.pass(1)
  right.road.cut = null
  await time.pass(5000)
  right.jobs.reapply()
  await time.pass(1)
  const { unfit } = right.jobs.store.getState()
  expect(unfit?.clashes.map(({ change, why }) => [change.part, change.id, why])).toEqual([
    ['rooms', roomId, 'changedThere'],
  ])
  expect(unfit?.job.rooms[roomId]?.name).toBe('My study')
  expect(bookJob().rooms[roomId]?.name).toBe('Library')
  expect(bookJob().header.client).toBe('mine')
  right.jobs.dismissUnfit()
  expect(right.jobs.store.getState().unfit).toBeNull()
})

test('own edits may be left for the newer state, and stay to be copied', async () => {
  const [left, right] = [openWindow(), openWindow()]
  right.road.cut = 'storageFailed'
  change(right, { client: 'mine' })
  await time.pass(1)
  change(left, { site: 'elsewhere' })
  await time.pass(1)
  right.road.cut = null
  await time.pass(5000)
  right.jobs.takeNewer()
  await time.pass(1)
  expect(jobOf(right)).toEqual(bookJob())
  expect(right.jobs.store.getState()).toMatchObject({ stored: 'stored', unfit: { isByChoice: true } })
})

test('text that is typed and not taken counts as something of its own', async () => {
  const [left, right] = [openWindow(), openWindow()]
  right.road.drafts = true
  change(left, { client: 'Left' })
  await time.pass(1)
  await looks(right)
  expect(right.jobs.store.getState().stored).toBe('behind')
  expect(jobOf(right).header.client).toBe('A. Client')
  right.road.drafts = false
  await looks(right)
  expect(right.jobs.store.getState().stored).toBe('stored')
  expect(jobOf(right).header.client).toBe('Left')
})

test('a job taken out of the book elsewhere stays on the page and says so', async () => {
  const window = openWindow()
  granted(book.delete(keyOfJob()))
  change(window, { client: 'kept' })
  await time.pass(1)
  expect(window.jobs.store.getState().stored).toBe('gone')
  expect(jobOf(window).header.client).toBe('kept')
})

test('so many actions can be undone and no more', async () => {
  const window = openWindow()
  for (let number = 0; number < longestPast + 20; number++) change(window, { client: `${number}` })
  expect(window.jobs.store.getState().past).toHaveLength(longestPast)
  await time.pass(1)
  for (let number = 0; number < longestPast + 20; number++) window.jobs.undo()
  await time.pass(1)
  expect(bookJob().header.client).toBe('19')
})
