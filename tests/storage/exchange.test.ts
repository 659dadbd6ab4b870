import {
  copyFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { backupFolder, logOf } from '../../electron/storage/book-files.ts'
import type { Keeper } from '../../electron/storage/keeper.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'
import { bookWithOneJob, crashedBook } from './book-states.ts'
import { granted, handClock, openKeeper, problemOf, testFolder } from './books.ts'

function titlesOf(keeper: Keeper): readonly string[] {
  return granted(granted(keeper.store()).list())
    .map(({ title }) => title)
    .sort()
}

function namedJob(title: string): Job {
  const job = plainJob()
  return { ...job, header: { ...job.header, title } }
}

function renamed(job: Job, name: string): Job {
  return { ...job, rooms: { ...job.rooms, [roomId]: { ...(job.rooms[roomId] as Room), name } } }
}

async function backupsOf(keeper: Keeper, kind: string) {
  return granted(await keeper.listBackups()).filter((backup) => backup.kind === kind)
}

/** Until what was begun in the background is done. */
async function settled(keeper: Keeper): Promise<void> {
  await keeper.lookInto('none')
}

test('going back opens the backup and sets the book aside, from where it can come back again', async () => {
  const path = await bookWithOneJob('Before')
  const { now } = handClock()
  const keeper = await openKeeper(path, { now })
  const [backup] = await backupsOf(keeper, 'work')
  granted(granted(keeper.store()).create(namedJob('After')))
  const state = granted(await keeper.goBackTo(backup?.name ?? ''))
  expect(state.shut).toBeNull()
  expect(titlesOf(keeper)).toEqual(['Before'])
  const [aside] = await backupsOf(keeper, 'setAside')
  expect(aside?.jobCount).toBe(2)
  granted(await keeper.goBackTo(aside?.name ?? ''))
  expect(titlesOf(keeper)).toEqual(['After', 'Before'])
})

test('a crashed and damaged book gives way with its log, and nothing of either gets into the backup that comes back', async () => {
  const path = await crashedBook()
  const bytes = readFileSync(path)
  bytes.fill(0x5a, 4096 * 20, 4096 * 56)
  writeFileSync(path, bytes)
  const log = readFileSync(logOf(path))
  const keeper = await openKeeper(path)
  const [backup] = await backupsOf(keeper, 'work')
  granted(await keeper.goBackTo(backup?.name ?? ''))
  expect(titlesOf(keeper)).toEqual(['One plain room'])
  const [aside] = await backupsOf(keeper, 'setAside')
  const place = join(backupFolder(path), aside?.name ?? '')
  expect(readFileSync(place).equals(bytes)).toBe(true)
  expect(readFileSync(logOf(place)).equals(log)).toBe(true)
})

test('a backup that is damaged is not taken, and the book stays as it was', async () => {
  const path = await bookWithOneJob('Before')
  const keeper = await openKeeper(path)
  const [backup] = await backupsOf(keeper, 'work')
  const place = join(backupFolder(path), backup?.name ?? '')
  const bytes = readFileSync(place)
  bytes.fill(0x5a, 4096 * 5, 4096 * 30)
  writeFileSync(place, bytes)
  const refused = await keeper.goBackTo(backup?.name ?? '')
  expect(refused.ok ? '' : refused.problem.sentence).toContain('The book was not replaced')
  expect(titlesOf(keeper)).toEqual(['Before'])
  expect(await backupsOf(keeper, 'setAside')).toEqual([])
  expect(existsSync(`${path}.half`)).toBe(false)
})

test('an edit made to a later state than the one that came back is refused as stale', async () => {
  const path = await bookWithOneJob()
  const { now } = handClock()
  const keeper = await openKeeper(path, { now })
  const [backup] = await backupsOf(keeper, 'work')
  const store = granted(keeper.store())
  const { jobKey } = granted(store.list())[0] ?? { jobKey: '' }
  const first = granted(store.open(jobKey))
  const second = renamed(first.job, 'Library')
  granted(store.storeEdit(jobKey, first.revision, diffJobs(first.job, second)))
  granted(await keeper.goBackTo(backup?.name ?? ''))
  const now2 = granted(granted(keeper.store()).open(jobKey))
  expect(now2.job).toEqual(first.job)
  const late = diffJobs(second, renamed(second, 'Nursery'))
  expect(problemOf(granted(keeper.store()).storeEdit(jobKey, first.revision + 1, late))).toBe('staleEdit')
  const edit = diffJobs(now2.job, renamed(now2.job, 'Nursery'))
  expect(granted(granted(keeper.store()).storeEdit(jobKey, now2.revision, edit)).revision).toBe(
    now2.revision + 1,
  )
})

test('a log left alone by a setting aside that died goes after its file', async () => {
  const path = await crashedBook()
  const log = readFileSync(logOf(path))
  const aside = join(backupFolder(path), 'set-aside-2027-03-30T08-00-00-000Z.sqlite')
  renameSync(path, aside)
  const keeper = await openKeeper(path)
  expect(keeper.state().shut?.reason).toBe('missing')
  expect(existsSync(logOf(path))).toBe(false)
  expect(readFileSync(logOf(aside)).equals(log)).toBe(true)
  granted(await keeper.goBackTo('set-aside-2027-03-30T08-00-00-000Z.sqlite'))
  expect(titlesOf(keeper)).toEqual(['After the backup', 'One plain room'])
})

test('the file that was put there can be opened instead', async () => {
  const path = await bookWithOneJob('Before')
  const other = await bookWithOneJob('Somebody else’s')
  const keeper = await openKeeper(path)
  copyFileSync(other, path)
  expect(problemOf(granted(keeper.store()).list())).toBe('bookShut')
  granted(await keeper.leave('openAsItIs'))
  expect(titlesOf(keeper)).toEqual(['Somebody else’s'])
  expect((await backupsOf(keeper, 'exchanged'))[0]?.jobCount).toBe(1)
})

test('a book taken away while the program runs can be begun anew when the user says so', async () => {
  const path = await bookWithOneJob()
  const keeper = await openKeeper(path)
  rmSync(path)
  expect(problemOf(granted(keeper.store()).list())).toBe('bookShut')
  await settled(keeper)
  expect(keeper.state().shut?.waysOut).toEqual(['tryAgain', 'startNew'])
  granted(await keeper.leave('startNew'))
  expect(titlesOf(keeper)).toEqual([])
})

test('an exchange is noticed when the program ends, and what was stored is kept', async () => {
  const path = await bookWithOneJob('Before')
  const other = await bookWithOneJob('Somebody else’s')
  const { now } = handClock()
  const keeper = await openKeeper(path, { now })
  granted(granted(keeper.store()).create(namedJob('Of this session')))
  copyFileSync(other, path)
  const there = readFileSync(path)
  await keeper.close()
  expect(readFileSync(path).equals(there)).toBe(true)
  const [name = ''] = readdirSync(backupFolder(path)).filter((file) => file.startsWith('exchanged-'))
  const copy = join(testFolder(), 'book.sqlite')
  copyFileSync(join(backupFolder(path), name), copy)
  expect(titlesOf(await openKeeper(copy))).toHaveLength(2)
})
