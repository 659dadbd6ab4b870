import BetterSqlite3, { type Database } from 'better-sqlite3'
import type { JobSummary } from '../../core/contract/requests.ts'
import type { BookPicture } from '../../core/pictures/picture-bounds.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { backupFolder } from './book-files.ts'
import { findDamage } from './damage.ts'
import { storageProblem } from './failures.ts'
import { listJobRows, type RawJob, readRawJob } from './job-rows.ts'
import { lookOverLog, onCopy } from './look-over.ts'
import { type Migration, pendingMigrations } from './migrations.ts'
import { bringToNewestForm } from './open-book.ts'
import { picturesOfJob } from './picture-rows.ts'

interface InsideParts {
  readonly bookPath: string
  readonly migrations: readonly Migration[]
  /** ISO instant. */
  readonly now: string
}

/** The jobs in a backup, the one edited last first. */
export function jobsOfBackup(source: string, parts: InsideParts): Promise<Outcome<readonly JobSummary[]>> {
  return insideInNewestForm(source, parts, (copy) => succeed(listJobRows(copy)))
}

/** A job of a backup, not read yet, with its pictures. */
export interface JobOfBackup extends RawJob {
  readonly pictures: readonly BookPicture[]
}

/** One job of a backup in the newest form. */
export function jobOfBackup(
  source: string,
  jobKey: string,
  parts: InsideParts,
): Promise<Outcome<JobOfBackup>> {
  return insideInNewestForm(source, parts, (copy) => {
    const raw = readRawJob(copy, jobKey)
    if (raw === undefined) return fail('notFound', 'That backup has no such job.', [jobKey])
    return succeed({ ...raw, pictures: picturesOfJob(copy, jobKey) })
  })
}

/** A backup of an older form is read through a copy that is brought to the newest one; the backup stays as it is. */
async function insideInNewestForm<Value>(
  source: string,
  parts: InsideParts,
  use: (copy: Database) => Outcome<Value>,
): Promise<Outcome<Value>> {
  const log = await lookOverLog(source)
  if (!log.ok) return log
  return onCopy(source, backupFolder(parts.bookPath), async (copy) => {
    const damage = await findDamage(copy, source, true)
    if (!damage.ok) return damage
    const pending = pendingMigrations(copy, parts.migrations)
    if (!pending.ok) return pending
    const brought = bringToNewestForm(copy, pending.value, parts.now)
    return brought.ok ? use(copy) : brought
  })
}

/** Whether a copy of a backup can take the book's place; folds the copy's log into it, for the copy is ours to write. */
export async function checkCopy(
  half: string,
  source: string,
  migrations: readonly Migration[],
): Promise<Outcome<null>> {
  const log = await lookOverLog(half)
  if (!log.ok) return log
  let database: Database | undefined
  try {
    database = new BetterSqlite3(half, { timeout: 0 })
    const damage = await findDamage(database, source, true)
    if (!damage.ok) return damage
    const pending = pendingMigrations(database, migrations)
    return pending.ok ? succeed(null) : pending
  } catch (error) {
    return storageProblem(error, source)
  } finally {
    database?.close()
  }
}
