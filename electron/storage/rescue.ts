import { rmSync } from 'node:fs'
import { join } from 'node:path'
import type { Database } from 'better-sqlite3'
import { newestBackup, writeBackup } from './backups.ts'
import { backupFolder, halfEnding, logIndexOf, logOf } from './book-files.ts'
import { prepareJob } from './job-bodies.ts'
import { insertJobRows, type JobRow } from './job-rows.ts'
import { copyPrivately } from './look-over.ts'
import type { Migration } from './migrations.ts'
import { giveMark, openBook } from './open-book.ts'
import { makePrivateFolder } from './private-files.ts'

interface RescueParts {
  readonly path: string
  readonly migrations: readonly Migration[]
  readonly now: string
  readonly name: string
  /** The jobs of this session as they were stored last; every job that was changed since the program began is among them. */
  readonly jobs: readonly JobRow[]
  readonly mark: number
}

/**
 * Keeps what the program had as a backup when the bytes of the open file have been changed by others and nothing can be read from it any
 * more: the newest backup, which has all that was there when the session began, and over it the jobs of this session from memory.
 */
export async function rescueFromMemory(parts: RescueParts): Promise<void> {
  const folder = backupFolder(parts.path)
  makePrivateFolder(folder)
  const draft = join(folder, `${parts.name}.draft${halfEnding}`)
  const newest = newestBackup(parts.path)
  if (newest !== undefined) await copyPrivately(join(folder, newest.name), draft)
  const opened = openBook(draft, parts.migrations, parts.now)
  if (!opened.ok) throw new Error(opened.problem.sentence)
  const database = opened.value
  try {
    database.transaction(() => {
      for (const row of parts.jobs) replaceJob(database, row, parts.now)
    })()
    giveMark(database, parts.mark)
    await writeBackup(database, parts.path, parts.name)
  } finally {
    database.close()
    for (const path of [draft, logOf(draft), logIndexOf(draft)]) rmSync(path, { force: true })
  }
}

function replaceJob(database: Database, { jobKey, job, revision }: JobRow, now: string): void {
  database.prepare('DELETE FROM jobs WHERE job_key = ?').run(jobKey)
  const prepared = prepareJob(job)
  if (!prepared.ok) throw new Error(prepared.problem.sentence)
  insertJobRows(database, jobKey, prepared.value, now)
  database.prepare('UPDATE jobs SET revision = ? WHERE job_key = ?').run(revision, jobKey)
}
