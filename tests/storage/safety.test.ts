import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import type { ColourId } from '../../core/project/survey-records.ts'
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

test('a record that its schema does not know is reported, not half loaded', () => {
  const path = bookWithOneJob()
  tamper(path, `UPDATE rooms SET body = json_set(body, '$.use', 'ballroom')`)
  const refused = openBook(path).open('job-1')
  expect(refused).toMatchObject({ ok: false, problem: { kind: 'fileDamaged' } })
  expect(refused.ok ? '' : refused.problem.sentence).toContain(`rooms.${roomId}`)
})
