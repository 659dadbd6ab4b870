import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import BetterSqlite3, { type Database } from 'better-sqlite3'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { backUpBeforeMigration, rotateBackups } from './backups.ts'
import { damagedBook, storageProblem } from './failures.ts'
import { applyMigration, type Migration, pendingMigrations } from './migrations.ts'

/** `Coat` in ASCII, written into the file's header by the first migration. */
const applicationId = 0x436f6174

/**
 * Opens a book of jobs for this process alone, making it where there is none. Looks before it writes: a book that is damaged,
 * foreign, from the future or open elsewhere is refused before anything in it is changed.
 *
 * @param now an ISO instant, for the names of backups and the record of migrations
 */
export function openBook(path: string, migrations: readonly Migration[], now: string): Outcome<Database> {
  let database: Database | undefined
  try {
    mkdirSync(dirname(path), { recursive: true })
    // Waiting would not help against another instance: it keeps the book for as long as it runs.
    database = new BetterSqlite3(path, { timeout: 0 })
    const ready = prepareBook(database, path, migrations, now)
    if (!ready.ok) database.close()
    return ready.ok ? succeed(database) : ready
  } catch (error) {
    database?.close()
    return storageProblem(error, path)
  }
}

function prepareBook(
  database: Database,
  path: string,
  migrations: readonly Migration[],
  now: string,
): Outcome<null> {
  // Held from the first read to the end of the process; the system drops it even when the process dies.
  database.pragma('locking_mode = EXCLUSIVE')
  const damage = findDamage(database, path)
  if (!damage.ok) return damage
  const pending = pendingMigrations(database, migrations)
  if (!pending.ok) return pending
  database.pragma('journal_mode = WAL')
  database.pragma('synchronous = FULL')
  database.pragma('foreign_keys = ON')
  const fresh = pending.value.length === migrations.length
  for (const migration of pending.value) {
    if (!fresh) backUpBeforeMigration(database, path, migration.number, now)
    const applied = applyMigration(database, migration, now)
    if (!applied.ok) return applied
  }
  if (!fresh) rotateBackups(database, path, now)
  return succeed(null)
}

function findDamage(database: Database, path: string): Outcome<null> {
  const empty = database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() === 0
  if (!empty && database.pragma('application_id', { simple: true }) !== applicationId) {
    return fail(
      'notValid',
      `${path} is a database of another program, not a book of jobs. It was left as it is.`,
    )
  }
  const integrity = database.pragma('integrity_check(1)', { simple: true })
  if (integrity !== 'ok') return damagedBook(path, String(integrity))
  const broken = database.pragma('foreign_key_check') as readonly { readonly table: string }[]
  const first = broken[0]
  return first === undefined
    ? succeed(null)
    : damagedBook(path, `a record of ${first.table} points at one that is not there`)
}
