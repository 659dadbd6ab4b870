import { existsSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test, vi } from 'vitest'
import { diffJobs } from '../../core/project/diff.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { backupFolder, logOf } from '../../electron/storage/book-files.ts'
import type { Keeper } from '../../electron/storage/keeper.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'
import { quietHandlers } from '../hosts/handler-parts.ts'
import { bookWithOneJob, crashedBook } from './book-states.ts'
import { granted, handClock, openKeeper, problemOf, testFolder } from './books.ts'

function backupsOf(path: string): readonly string[] {
  return readdirSync(backupFolder(path)).filter((name) => name.endsWith('.sqlite'))
}

/** Renames the one room of the newest job, and answers the revision. */
function edit(keeper: Keeper): number {
  const store = granted(keeper.store())
  const { jobKey } = granted(store.list())[0] ?? { jobKey: '' }
  const { job, revision } = granted(store.open(jobKey))
  const room = job.rooms[roomId] as Room
  const next = { ...job, rooms: { ...job.rooms, [roomId]: { ...room, name: `Study ${revision}` } } }
  return granted(store.storeEdit(jobKey, revision, diffJobs(job, next))).revision
}

test('the first session ends with a backup, later ones only where something changed', async () => {
  const { now, pass } = handClock()
  const path = join(testFolder(), 'book.sqlite')
  const session = async (work: (keeper: Keeper) => void) => {
    pass(1)
    const keeper = await openKeeper(path, { now })
    work(keeper)
    await keeper.close()
    return backupsOf(path).length
  }
  const counts = [
    await session((keeper) => granted(granted(keeper.store()).create(plainJob()))),
    await session(() => undefined),
    await session(edit),
    await session(() => undefined),
  ]
  expect(counts).toEqual([1, 1, 2, 2])
})

test('a session that died without a backup gets one when the book is opened next', async () => {
  const path = await crashedBook()
  const before = backupsOf(path).length
  await openKeeper(path, { now: () => '2027-03-30T08:00:00.000Z' })
  expect(backupsOf(path)).toHaveLength(before + 1)
})

test('after hours of work the next edit brings a backup, while edits go on', async () => {
  const { now, pass } = handClock()
  const path = await bookWithOneJob()
  const keeper = await openKeeper(path, { now })
  const before = backupsOf(path).length
  pass(2)
  edit(keeper)
  await vi.waitFor(() =>
    expect(readdirSync(backupFolder(path)).some((name) => name.includes('.half'))).toBe(false),
  )
  expect(backupsOf(path)).toHaveLength(before)
  pass(2)
  edit(keeper)
  const last = edit(keeper)
  await vi.waitFor(() => expect(backupsOf(path)).toHaveLength(before + 1))
  expect(edit(keeper)).toBe(last + 1)
})

test('an hour of work brings no backup by itself', async () => {
  const { now, pass } = handClock()
  const path = await bookWithOneJob()
  const keeper = await openKeeper(path, { now })
  const kinds = async () => granted(await keeper.listBackups()).map(({ kind }) => kind)
  const before = await kinds()
  pass(1)
  edit(keeper)
  edit(keeper)
  // Backups are made one after the other, so that one asked for by the edits would be there before this one.
  const [listed] = granted(granted(keeper.store()).list())
  granted(await keeper.remove(listed?.jobKey ?? ''))
  expect((await kinds()).toSorted()).toEqual([...before, 'beforeRemoval'].toSorted())
})

test('the log is folded into the book when nothing happens for a while', async () => {
  const path = await bookWithOneJob()
  const keeper = await openKeeper(path, { foldAfter: 30 })
  edit(keeper)
  expect(statSync(logOf(path)).size).toBeGreaterThan(0)
  await vi.waitFor(() => expect(statSync(logOf(path)).size).toBe(0))
  expect(edit(keeper)).toBeGreaterThan(2)
})

test('a backup is one whole file, and reading it leaves nothing beside it', async () => {
  const path = await bookWithOneJob()
  const keeper = await openKeeper(path)
  const [backup] = granted(await keeper.listBackups())
  expect(backup).toMatchObject({ kind: 'work', jobCount: 1 })
  expect(granted(await keeper.lookInto(backup?.name ?? ''))).toMatchObject([
    { title: 'One plain room', roomCount: 1 },
  ])
  expect(readdirSync(backupFolder(path))).toEqual([backup?.name])
})

test('a backup that fails warns, and the book opens and goes on', async () => {
  const path = await bookWithOneJob()
  rmSync(backupFolder(path), { recursive: true })
  // No file can be made where a folder lies, whoever asks.
  const keeper = await openKeeper(path)
  expect(keeper.state().warnings).toEqual([])
  edit(keeper)
  await keeper.close()
  const blocked = backupFolder(path)
  rmSync(blocked, { recursive: true })
  writeFileSync(blocked, 'not a folder')
  const again = await openKeeper(path)
  expect(again.state()).toMatchObject({
    shut: null,
    warnings: [expect.stringContaining('No backup could be made')],
  })
  expect(edit(again)).toBeGreaterThan(1)
})

test('a job taken out of the book is in a backup first and comes back from there', async () => {
  const path = await bookWithOneJob()
  const keeper = await openKeeper(path)
  edit(keeper)
  const store = granted(keeper.store())
  const [listed] = granted(store.list())
  const { job } = granted(store.open(listed?.jobKey ?? ''))
  granted(await keeper.remove(listed?.jobKey ?? ''))
  expect(granted(store.list())).toEqual([])
  const backup = granted(await keeper.listBackups()).find(({ kind }) => kind === 'beforeRemoval')
  expect(backup?.jobCount).toBe(1)
  const handlers = quietHandlers({ keeper })
  const wanted = { name: backup?.name ?? '', jobKey: listed?.jobKey ?? '' }
  const back = granted(await handlers.bringJobBack(wanted))
  expect(back.job).toEqual(job)
  expect(granted(await handlers.bringJobBack(wanted)).jobKey).not.toBe(back.jobKey)
  expect(granted(store.list())).toHaveLength(2)
})

test('a job that could not be backed up is not taken out', async () => {
  const path = await bookWithOneJob()
  const keeper = await openKeeper(path)
  rmSync(backupFolder(path), { recursive: true })
  writeFileSync(backupFolder(path), 'not a folder')
  const [listed] = granted(granted(keeper.store()).list())
  const refused = await keeper.remove(listed?.jobKey ?? '')
  expect(refused.ok ? '' : refused.problem.sentence).toContain('was not deleted')
  expect(granted(granted(keeper.store()).list())).toHaveLength(1)
  rmSync(backupFolder(path))
})

test('only what is in the list can be asked for', async () => {
  const path = await bookWithOneJob()
  const keeper = await openKeeper(path)
  for (const name of ['../book.sqlite', path, 'work-2000-01-01T00-00-00-000Z.sqlite', '']) {
    expect(problemOf(await keeper.lookInto(name))).toBe('notFound')
    expect(problemOf(await keeper.goBackTo(name))).toBe('notFound')
  }
  expect(existsSync(path)).toBe(true)
})

test('a job that is still in the book comes back beside it, and its title says that it is older', async () => {
  const path = await bookWithOneJob('Corner house')
  const keeper = await openKeeper(path)
  const [backup] = granted(await keeper.listBackups())
  const [listed] = granted(granted(keeper.store()).list())
  const handlers = quietHandlers({ keeper })
  const wanted = { name: backup?.name ?? '', jobKey: listed?.jobKey ?? '' }
  granted(await handlers.bringJobBack(wanted))
  const titles = granted(granted(keeper.store()).list()).map(({ title }) => title)
  expect(titles.sort()).toEqual(['Corner house', 'Corner house (from a backup)'])
})
