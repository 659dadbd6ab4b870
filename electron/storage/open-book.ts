import { randomInt } from 'node:crypto'
import { existsSync, mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import BetterSqlite3, { type Database } from 'better-sqlite3'
import { type Outcome, succeed } from '../../core/project/problem.ts'
import { isInMemory, logOf } from './book-files.ts'
import { keepSums } from './content-sums.ts'
import { storageProblem } from './failures.ts'
import { applyMigration, type Migration, pendingMigrations } from './migrations.ts'
import { makePrivateFile } from './private-files.ts'

/**
 * Opens a book of jobs for this process alone, making it where there is none, and brings it to the newest form. Whether it is whole has
 * been looked at before, on a copy.
 *
 * @param now an ISO instant, for the record of migrations
 */
export function openBook(path: string, migrations: readonly Migration[], now: string): Outcome<Database> {
  let database: Database | undefined
  try {
    database = connect(path)
    const pending = pendingMigrations(database, migrations)
    const ready = pending.ok ? bringToNewestForm(database, pending.value, now) : pending
    if (!ready.ok) database.close()
    return ready.ok ? succeed(database) : ready
  } catch (error) {
    database?.close()
    return storageProblem(error, path)
  }
}

/** An open connection that no other process can share; nothing in the book is changed yet. */
export function connect(path: string): Database {
  if (!isInMemory(path)) makePrivate(path)
  const database = new BetterSqlite3(path, { timeout: 0 })
  try {
    // Held from the first read to the end of the process; the system drops it even when the process dies.
    database.pragma('locking_mode = EXCLUSIVE')
    database.pragma('journal_mode = WAL')
    database.pragma('synchronous = FULL')
    database.pragma('foreign_keys = ON')
    // The log is folded in when nothing else happens, and pages go into it only when an edit is whole: what a dead process leaves is plain then.
    database.pragma('wal_autocheckpoint = 0')
    database.pragma('cache_spill = OFF')
    return database
  } catch (error) {
    database.close()
    throw error
  }
}

function makePrivate(path: string): void {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 })
  makePrivateFile(path)
  if (existsSync(logOf(path))) makePrivateFile(logOf(path))
}

/** Applies what is pending, one by one; from then on the sums of the content are kept. */
export function bringToNewestForm(
  database: Database,
  pending: readonly Migration[],
  now: string,
): Outcome<null> {
  for (const migration of pending) {
    const applied = applyMigration(database, migration, now)
    if (!applied.ok) return applied
  }
  keepSums(database)
  return succeed(null)
}

/** Writes the log into the book and empties it, so that the one file is the one file. */
export function foldLog(database: Database): void {
  database.pragma('wal_checkpoint(TRUNCATE)')
}

/** The mark tells this book from every other one and stays with it and its copies: SQLite's user_version. 0 is a book without a mark. */
export function markOf(database: Database): number {
  return Number(database.pragma('user_version', { simple: true }))
}

/** Marks a book that has no mark yet; `known` is the mark of its backups where there are any. */
export function giveMark(database: Database, known: number): void {
  if (markOf(database) !== 0) return
  database.pragma(`user_version = ${known === 0 ? randomInt(1, 2 ** 31 - 1) : known}`)
}
