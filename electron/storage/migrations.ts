import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Database } from 'better-sqlite3'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { rebuildSums } from './content-sums.ts'
import { describeFailure } from './failures.ts'

/** One numbered step of the schema. Its text never changes once released; the hash holds it to that. */
export interface Migration {
  readonly number: number
  /** What the file name says after the number, e.g. `book-of-jobs`. */
  readonly name: string
  readonly sql: string
  readonly sha256: string
}

interface AppliedMigration {
  readonly number: number
  readonly name: string
  readonly sha256: string
}

const fileName = /^(\d{4})-([a-z0-9-]+)\.sql$/

/** The migrations of a folder, 1, 2, 3 ... without gaps; throws where the folder breaks that, for it ships with the program. */
export function readMigrations(folder: string): readonly Migration[] {
  const files = readdirSync(folder).sort()
  return files.map((file, index) => {
    const [, number, name] = fileName.exec(file) ?? []
    if (name === undefined || Number(number) !== index + 1) {
      throw new Error(`migrations/${file} should be ${String(index + 1).padStart(4, '0')}-what-changes.sql`)
    }
    return migrationOf(index + 1, name, readFileSync(join(folder, file), 'utf8'))
  })
}

/** Line ends are made \n first: a checkout on Windows must not change the hash. */
export function migrationOf(number: number, name: string, text: string): Migration {
  const sql = text.replaceAll('\r\n', '\n')
  return { number, name, sql, sha256: createHash('sha256').update(sql).digest('hex') }
}

/** Which migrations a book still needs. Only reads; a book written by a newer program, or by a changed migration, is refused. */
export function pendingMigrations(
  database: Database,
  migrations: readonly Migration[],
): Outcome<readonly Migration[]> {
  for (const applied of appliedMigrations(database)) {
    const known = migrations[applied.number - 1]
    if (known === undefined) {
      return fail(
        'fileFromTheFuture',
        `This book of jobs was written by a newer Coatwright (its form ${applied.number}, ${applied.name}; this program knows up to ${migrations.length}). Nothing was changed. Open it with the newer program.`,
      )
    }
    if (known.sha256 !== applied.sha256) {
      return fail(
        'fileFromTheFuture',
        `This book of jobs was made by another build of Coatwright: its form ${applied.number} (${applied.name}) is not the one this program knows. Nothing was changed. Open it with the program that wrote it.`,
      )
    }
  }
  return succeed(migrations.slice(appliedMigrations(database).length))
}

function appliedMigrations(database: Database): readonly AppliedMigration[] {
  const table = database
    .prepare(`SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = 'applied_migrations'`)
    .pluck()
    .get()
  if (table === 0) return []
  return database
    .prepare<[], AppliedMigration>('SELECT number, name, sha256 FROM applied_migrations ORDER BY number')
    .all()
}

/**
 * Brings a book one step further in one transaction: whole or not at all. References are not enforced while it runs, because
 * a table that others point at can only be rebuilt so; instead all of them are checked before the transaction ends.
 */
export function applyMigration(database: Database, migration: Migration, appliedAt: string): Outcome<null> {
  database.pragma('foreign_keys = OFF')
  try {
    database.transaction(() => {
      database.exec(`CREATE TABLE IF NOT EXISTS applied_migrations (
        number INTEGER NOT NULL PRIMARY KEY, name TEXT NOT NULL, sha256 TEXT NOT NULL, applied_at TEXT NOT NULL
      ) STRICT`)
      database.exec(migration.sql)
      const broken = database.prepare('SELECT rowid FROM pragma_foreign_key_check').all()
      if (broken.length > 0) throw new Error(`${broken.length} references lead nowhere afterwards`)
      database
        .prepare('INSERT INTO applied_migrations (number, name, sha256, applied_at) VALUES (?, ?, ?, ?)')
        .run(migration.number, migration.name, migration.sha256, appliedAt)
      // In the same transaction: a process that dies in between would leave a book that looks damaged.
      rebuildSums(database)
    })()
    return succeed(null)
  } catch (error) {
    return fail(
      'storageFailed',
      `The book of jobs could not be updated to form ${migration.number} (${migration.name}) and was left as it was: ${describeFailure(error)}`,
    )
  } finally {
    database.pragma('foreign_keys = ON')
  }
}
