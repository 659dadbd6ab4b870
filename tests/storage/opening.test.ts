import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { marksOfBackups } from '../../electron/storage/backups.ts'
import { backupFolder, logOf } from '../../electron/storage/book-files.ts'
import type { Keeper } from '../../electron/storage/keeper.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { bookWithOneJob, crashedBook, tamper } from './book-states.ts'
import { granted, openKeeper, problemOf, testFolder, tryKeeper } from './books.ts'

/** Reason and ways out of a shut book; nothing of it when it is open. */
function shutOf(keeper: Keeper): {
  readonly reason?: string
  readonly sentence: string
  readonly ways: string
} {
  const { shut } = keeper.state()
  return shut === null
    ? { sentence: '', ways: '' }
    : { reason: shut.reason, sentence: shut.sentence, ways: shut.waysOut.join(' ') }
}

test('a new place gets a book, whole and folded, its file and folder of backups for the owner only', async () => {
  const path = join(testFolder(), 'new', 'book.sqlite')
  const keeper = await openKeeper(path)
  expect(shutOf(keeper)).toEqual({ sentence: '', ways: '' })
  granted(granted(keeper.store()).create(plainJob()))
  const rights = (file: string) => (statSync(file).mode & 0o777).toString(8)
  expect([path, logOf(path), dirname(path)].map(rights)).toEqual(['600', '600', '700'])
  await keeper.close()
  expect(existsSync(logOf(path))).toBe(false)
  const [backup = ''] = readdirSync(backupFolder(path))
  expect([backupFolder(path), join(backupFolder(path), backup)].map(rights)).toEqual(['700', '600'])
})

test('a book that others could read is closed to them when it is opened', async () => {
  const path = await bookWithOneJob()
  const { chmodSync } = await import('node:fs')
  chmodSync(path, 0o644)
  chmodSync(backupFolder(path), 0o755)
  await openKeeper(path)
  expect(statSync(path).mode & 0o777).toBe(0o600)
  expect(statSync(backupFolder(path)).mode & 0o777).toBe(0o700)
})

test('a damaged book is said to be, with the ways out, and neither file nor log is touched', async () => {
  const path = await crashedBook()
  const bytes = readFileSync(path)
  // Pages past the middle of the file, which the log has no newer copy of.
  bytes.fill(0x5a, 4096 * 20, 4096 * 56)
  writeFileSync(path, bytes)
  const log = readFileSync(logOf(path))
  const keeper = await openKeeper(path)
  expect(shutOf(keeper)).toMatchObject({ reason: 'damaged', ways: 'tryAgain startNew' })
  expect(shutOf(keeper).sentence).toContain('Go back to a backup')
  expect(problemOf(keeper.store())).toBe('bookShut')
  await keeper.close()
  expect(readFileSync(path).equals(bytes)).toBe(true)
  expect(readFileSync(logOf(path)).equals(log)).toBe(true)
})

test('what a process that died left in the log is read into the book', async () => {
  const path = await crashedBook()
  expect(statSync(logOf(path)).size).toBeGreaterThan(0)
  const keeper = await openKeeper(path)
  expect(granted(granted(keeper.store()).list()).map(({ title }) => title)).toEqual([
    'After the backup',
    'One plain room',
  ])
  expect(statSync(logOf(path)).size).toBe(0)
})

test('a log with a broken frame is not passed over in silence, and the part before it can be had', async () => {
  const path = await crashedBook()
  const log = readFileSync(logOf(path))
  const broken = Buffer.from(log)
  broken[log.length - 100] = (broken[log.length - 100] as number) ^ 1
  writeFileSync(logOf(path), broken)
  const keeper = await openKeeper(path)
  expect(shutOf(keeper)).toMatchObject({ reason: 'logDamaged', ways: 'openReadablePart tryAgain' })
  expect(readFileSync(logOf(path)).equals(broken)).toBe(true)
  granted(await keeper.leave('openReadablePart'))
  expect(granted(granted(keeper.store()).list()).map(({ title }) => title)).toEqual(['One plain room'])
  const aside = readdirSync(backupFolder(path)).filter((name) => /^set-aside.*-wal$/.test(name))
  expect(aside).toHaveLength(1)
  expect(readFileSync(join(backupFolder(path), aside[0] ?? '')).equals(broken)).toBe(true)
})

test('a book of a newer program, of another build and of another program are refused and not changed', async () => {
  const future = `INSERT INTO applied_migrations VALUES (9999, 'from-the-future', 'abc', '2099-01-01T00:00:00Z')`
  for (const [sql, reason, words] of [
    [future, 'newer', 'written by a newer Coatwright'],
    [`UPDATE applied_migrations SET sha256 = 'another' WHERE number = 1`, 'newer', 'another build'],
    ['PRAGMA application_id = 7', 'foreign', 'a database of another program'],
  ] as const) {
    const path = await bookWithOneJob()
    tamper(path, sql)
    const before = readFileSync(path)
    const keeper = await openKeeper(path)
    expect(shutOf(keeper)).toMatchObject({ reason, sentence: expect.stringContaining(words) })
    await keeper.close()
    expect(readFileSync(path).equals(before)).toBe(true)
  }
})

test('a file that is no database is damaged', async () => {
  const note = join(testFolder(), 'note.sqlite')
  writeFileSync(note, 'Buy two gallons of ceiling paint. '.repeat(100))
  expect(shutOf(await openKeeper(note)).reason).toBe('damaged')
})

test('a missing or empty book with backups beside it asks before a new one is made', async () => {
  for (const [reason, make] of [
    ['missing', () => undefined],
    ['empty', (path: string) => writeFileSync(path, '')],
    ['empty', (path: string) => new Database(path).exec('PRAGMA user_version = 7').close()],
  ] as const) {
    const path = await bookWithOneJob()
    const kept = join(testFolder(), 'kept.sqlite')
    copyFileSync(path, kept)
    rmSync(path)
    make(path)
    const keeper = await openKeeper(path)
    expect(shutOf(keeper)).toMatchObject({ reason, ways: 'tryAgain startNew' })
    expect(
      problemOf(
        granted(await keeper.leave('tryAgain')).shut === null ? keeper.store() : { ok: true, value: 0 },
      ),
    ).toBe('no problem')
    expect(keeper.state().shut?.reason).toBe(reason)
    granted(await keeper.leave('startNew'))
    expect(granted(granted(keeper.store()).list())).toEqual([])
    await keeper.close()
    expect(shutOf(await openKeeper(path))).toMatchObject({ sentence: '' })
  }
})

test('a book begun anew is not taken for the one whose backups lie beside it, and has a backup of its own at once', async () => {
  const path = await bookWithOneJob()
  const marks = new Set(marksOfBackups(path))
  rmSync(path)
  const keeper = await openKeeper(path)
  granted(await keeper.leave('startNew'))
  expect(new Set(marksOfBackups(path)).size).toBe(marks.size + 1)
})

test('an empty file with nothing beside it becomes a book', async () => {
  const path = join(testFolder(), 'book.sqlite')
  writeFileSync(path, '')
  expect(granted(granted((await openKeeper(path)).store()).list())).toEqual([])
})

test('an empty file whose log is not empty is damaged, for the log has what the file lacks', async () => {
  const path = await crashedBook()
  writeFileSync(path, '')
  expect(shutOf(await openKeeper(path)).reason).toBe('damaged')
  expect(statSync(logOf(path)).size).toBeGreaterThan(0)
})

test('another book at the place is asked about, and taken when the user says so', async () => {
  const path = await bookWithOneJob()
  const other = await bookWithOneJob('Somebody else’s')
  copyFileSync(other, path)
  const keeper = await openKeeper(path)
  expect(shutOf(keeper)).toMatchObject({ reason: 'replaced', ways: 'openAsItIs tryAgain' })
  granted(await keeper.leave('openAsItIs'))
  expect(granted(granted(keeper.store()).list()).map(({ title }) => title)).toEqual(['Somebody else’s'])
  await keeper.close()
  expect(shutOf(await openKeeper(path)).sentence).toBe('')
})

test('an older copy of the same book put there by hand is opened', async () => {
  const path = await bookWithOneJob()
  const older = join(testFolder(), 'older.sqlite')
  copyFileSync(path, older)
  const keeper = await openKeeper(path)
  granted(granted(keeper.store()).create(plainJob()))
  await keeper.close()
  copyFileSync(older, path)
  expect(granted(granted((await openKeeper(path)).store()).list())).toHaveLength(1)
})

test('a folder, a link to nowhere, a link in a circle and a path through a file are said in words', async () => {
  const folder = testFolder()
  mkdirSync(join(folder, 'folder.sqlite'))
  symlinkSync(join(folder, 'unplugged', 'book.sqlite'), join(folder, 'lost.sqlite'))
  symlinkSync(join(folder, 'circle.sqlite'), join(folder, 'circle.sqlite'))
  writeFileSync(join(folder, 'file'), '')
  for (const [name, words] of [
    ['folder.sqlite', 'There is a folder at'],
    ['lost.sqlite', 'is a link to'],
    ['circle.sqlite', 'leads back to itself'],
    [join('file', 'book.sqlite'), 'a part of that path is a file'],
  ] as const) {
    const keeper = await openKeeper(join(folder, name))
    expect(shutOf(keeper)).toMatchObject({ reason: 'unreachable', ways: 'tryAgain' })
    expect(shutOf(keeper).sentence).toContain(words)
    expect(shutOf(keeper).sentence).toContain('try again')
  }
  expect(existsSync(join(folder, 'unplugged'))).toBe(false)
})

test('a link is followed: log, lock and backups lie beside the file itself', async () => {
  const path = await bookWithOneJob()
  const link = join(testFolder(), 'book.sqlite')
  symlinkSync(path, link)
  const keeper = await openKeeper(link)
  expect(keeper.state().bookPath).toBe(path)
  granted(granted(keeper.store()).create(plainJob()))
  await keeper.close()
  expect(readdirSync(dirname(link))).toEqual(['book.sqlite'])
})

test('once the place is free again, trying again opens the book', async () => {
  const folder = testFolder()
  symlinkSync(join(folder, 'drive', 'book.sqlite'), join(folder, 'book.sqlite'))
  const keeper = await openKeeper(join(folder, 'book.sqlite'))
  expect(shutOf(keeper).reason).toBe('unreachable')
  mkdirSync(join(folder, 'drive'))
  copyFileSync(await bookWithOneJob(), join(folder, 'drive', 'book.sqlite'))
  granted(await keeper.leave('tryAgain'))
  expect(granted(granted(keeper.store()).list())).toHaveLength(1)
})

test('two keepers of one book: the second is told that it is open', async () => {
  const path = await bookWithOneJob()
  await openKeeper(path)
  const second = await tryKeeper(path)
  expect(second).toMatchObject({ ok: false, problem: { kind: 'alreadyOpen' } })
})

test('half copies that a dead process left are taken away', async () => {
  const path = await bookWithOneJob()
  const left = [
    `${path}.half`,
    join(backupFolder(path), 'work-x.sqlite.half'),
    join(backupFolder(path), 'look-a1b2'),
  ]
  for (const place of left) writeFileSync(place, 'half')
  await openKeeper(path)
  expect(left.filter((place) => existsSync(place))).toEqual([])
})

test('one reference that leads nowhere is damage, said with the kind of record it lies in', async () => {
  const path = await bookWithOneJob()
  tamper(path, `PRAGMA foreign_keys = OFF; DELETE FROM storeys WHERE id = 'ground'`)
  const shut = shutOf(granted(await tryKeeper(path)))
  expect(shut.reason).toBe('damaged')
  expect(shut.sentence).toContain('a record of rooms points at one that is not there')
})
