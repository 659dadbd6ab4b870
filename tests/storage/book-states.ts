import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import type { Job } from '../../core/project/job.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { granted, openKeeper, testFolder } from './books.ts'

/** Changes a closed book behind the program's back. */
export function tamper(path: string, sql: string): void {
  const database = new Database(path)
  database.exec(sql)
  database.close()
}

/** A closed book with one job in it and one backup beside it. */
export async function bookWithOneJob(title = plainJob().header.title): Promise<string> {
  const path = join(testFolder(), 'book.sqlite')
  const keeper = await openKeeper(path)
  const job = plainJob()
  granted(granted(keeper.store()).create({ ...job, header: { ...job.header, title } }))
  await keeper.close()
  return path
}

/** A book whose process died after it had stored one more job, which is in the log only. */
export async function crashedBook(first: Job = plainJob()): Promise<string> {
  const path = join(testFolder(), 'book.sqlite')
  const keeper = await openKeeper(path)
  granted(granted(keeper.store()).create(first))
  await keeper.close()
  const script = join(import.meta.dirname, 'crash.ts')
  const flags = ['--experimental-strip-types', '--no-warnings']
  const died = spawnSync(process.execPath, [...flags, script, path], { encoding: 'utf8' })
  if (died.signal !== 'SIGKILL') throw new Error(`the process did not die as it should: ${died.stderr}`)
  return path
}
