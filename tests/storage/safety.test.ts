import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import type { ColourId } from '../../core/project/survey-records.ts'
import { backupFolder, backupsKept } from '../../electron/storage/backups.ts'
import { linen, plainJob, roomId } from '../fixtures/plain-room.ts'
import { granted, openBook, problemOf, testFolder, tryBook } from './books.ts'

const migrationsFolder = join(import.meta.dirname, '..', '..', 'migrations')

/** Changes a closed book behind the program's back. */
function tamper(path: string, sql: string): void {
  const database = new Database(path)
  database.exec(sql)
  database.close()
}

function bookWithOneJob(): string {
  const path = join(testFolder(), 'book.sqlite')
  const book = openBook(path)
  granted(book.create(plainJob()))
  book.close()
  return path
}

/** Starts a second process that has the book and stores edit after edit. */
function startWriter(path: string): ChildProcess {
  const script = join(import.meta.dirname, 'writer.ts')
  const flags = ['--experimental-strip-types', '--no-warnings']
  const writer = spawn(process.execPath, [...flags, script, path, migrationsFolder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  onTestFinished(() => {
    writer.kill('SIGKILL')
  })
  return writer
}

/** The last revision the writer was told is stored, once it has been told of `count`. */
async function revisionsTold(writer: ChildProcess, count: number): Promise<number> {
  let last = 0
  for await (const line of createInterface({ input: writer.stdout as NodeJS.ReadableStream })) {
    last = Number(line)
    if (last > count) break
  }
  return last
}

test('a process killed in the middle of its work loses no edit it was told is stored', async () => {
  const path = join(testFolder(), 'book.sqlite')
  const writer = startWriter(path)
  const told = await revisionsTold(writer, 25)
  writer.kill('SIGKILL')
  await once(writer, 'exit')
  const { revision, job } = granted(openBook(path).open('job-1'))
  expect(told).toBeGreaterThan(25)
  expect(revision).toBeGreaterThanOrEqual(told)
  expect(job.rooms[roomId]?.name).toBe(`Study ${revision}`)
})

test('a second instance is told that the book is open, and gets it when the first one dies', async () => {
  const path = join(testFolder(), 'book.sqlite')
  const writer = startWriter(path)
  await revisionsTold(writer, 1)
  const refused = tryBook(path)
  expect(refused).toMatchObject({ ok: false, problem: { kind: 'alreadyOpen' } })
  expect(refused.ok ? '' : refused.problem.sentence).toContain('already open in another Coatwright')
  writer.kill('SIGKILL')
  await once(writer, 'exit')
  expect(problemOf(tryBook(path))).toBe('no problem')
})

test('an edit that fails half-way leaves nothing behind', () => {
  const path = bookWithOneJob()
  tamper(path, `CREATE TRIGGER planted BEFORE INSERT ON colours BEGIN SELECT RAISE(ABORT, 'planted'); END`)
  const book = openBook(path)
  const { job } = granted(book.open('job-1'))
  const room = job.rooms[roomId] as Room
  const next: Job = {
    ...job,
    rooms: { [roomId]: { ...room, name: 'Library' } },
    colours: { ...job.colours, chalk: { ...linen, id: 'chalk' as ColourId } },
  }
  expect(problemOf(book.storeEdit('job-1', 1, diffJobs(job, next)))).toBe('storageFailed')
  expect(granted(book.open('job-1'))).toEqual({ jobKey: 'job-1', revision: 1, job })
  book.close()
  expect(granted(openBook(path).open('job-1'))).toEqual({ jobKey: 'job-1', revision: 1, job: plainJob() })
})

test('the database itself refuses a reference that leads nowhere', () => {
  const path = bookWithOneJob()
  const database = new Database(path)
  onTestFinished(() => {
    database.close()
  })
  database.pragma('foreign_keys = ON')
  expect(() => database.exec(`DELETE FROM storeys WHERE id = 'ground'`)).toThrow(/FOREIGN KEY/)
  expect(() => database.exec(`UPDATE rooms SET body = json_set(body, '$.id', 'other')`)).toThrow(/CHECK/)
  expect(() => database.exec(`UPDATE rooms SET body = 'not JSON'`)).toThrow(/JSON|CHECK/i)
})

test('a book from the future is refused and not changed', () => {
  const path = bookWithOneJob()
  tamper(
    path,
    `INSERT INTO applied_migrations VALUES (9999, 'from-the-future', 'abc', '2099-01-01T00:00:00Z')`,
  )
  const before = readFileSync(path)
  const refused = tryBook(path)
  expect(refused).toMatchObject({ ok: false, problem: { kind: 'fileFromTheFuture' } })
  expect(refused.ok ? '' : refused.problem.sentence).toContain('written by a newer Coatwright')
  expect(readFileSync(path).equals(before)).toBe(true)
})

test('a book made by a migration with another text is refused', () => {
  const path = bookWithOneJob()
  tamper(path, `UPDATE applied_migrations SET sha256 = 'another' WHERE number = 1`)
  expect(problemOf(tryBook(path))).toBe('fileFromTheFuture')
})

test('a damaged book is refused in words and left as it is', () => {
  const path = bookWithOneJob()
  const bytes = readFileSync(path)
  // A page in the middle of the file, past the header and the schema's first page.
  bytes.fill(0x5a, 4096 * 3, 4096 * 8)
  writeFileSync(path, bytes)
  const refused = tryBook(path)
  expect(refused).toMatchObject({ ok: false, problem: { kind: 'fileDamaged' } })
  expect(readFileSync(path).equals(bytes)).toBe(true)
})

test('a file that is no database, and a database of another program, are refused', () => {
  const folder = testFolder()
  const note = join(folder, 'note.sqlite')
  writeFileSync(note, 'Buy two gallons of ceiling paint. '.repeat(100))
  expect(problemOf(tryBook(note))).toBe('fileDamaged')
  const foreign = join(folder, 'foreign.sqlite')
  tamper(foreign, 'CREATE TABLE recipes (name TEXT)')
  const refused = tryBook(foreign)
  expect(refused.ok ? '' : refused.problem.sentence).toContain('a database of another program')
})

test('a record that its schema does not know is reported, not half loaded', () => {
  const path = bookWithOneJob()
  tamper(path, `UPDATE rooms SET body = json_set(body, '$.use', 'ballroom')`)
  const refused = openBook(path).open('job-1')
  expect(refused).toMatchObject({ ok: false, problem: { kind: 'fileDamaged' } })
  expect(refused.ok ? '' : refused.problem.sentence).toContain(`rooms.${roomId}`)
})

test('opening makes a backup when something changed since the last one, and keeps the newest', () => {
  const path = bookWithOneJob()
  const backups = () => readdirSync(backupFolder(path)).length
  let opened = 0
  const reopen = (rename: boolean) => {
    // Each opening is made at another minute, so that no backup takes another one's name.
    const book = granted(tryBook(path, undefined, undefined, ++opened))
    if (rename) {
      const { job, revision } = granted(book.open('job-1'))
      const room = job.rooms[roomId] as Room
      const next = { ...job, rooms: { [roomId]: { ...room, name: `Study ${revision}` } } }
      granted(book.storeEdit('job-1', revision, diffJobs(job, next)))
    }
    book.close()
    return backups()
  }
  expect([reopen(false), reopen(false), reopen(true), reopen(false), reopen(false)]).toEqual([1, 1, 1, 2, 2])
  for (let times = 0; times < backupsKept + 3; times++) reopen(true)
  expect(backups()).toBe(backupsKept)
})

test('a backup is itself a book with the jobs in it', () => {
  const path = bookWithOneJob()
  openBook(path).close()
  const [name = ''] = readdirSync(backupFolder(path))
  expect(granted(openBook(join(backupFolder(path), name)).open('job-1')).job).toEqual(plainJob())
})
