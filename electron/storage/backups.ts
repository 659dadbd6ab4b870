import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type { Database } from 'better-sqlite3'

/** How many backups made on opening are kept. Those made before a migration stay. */
export const backupsKept = 10

export function backupFolder(bookPath: string): string {
  return join(dirname(bookPath), `${basename(bookPath, '.sqlite')}-backups`)
}

/** Copies the book as it is now; `at` is an ISO instant and becomes part of the file's name. */
export function backUpBeforeMigration(
  database: Database,
  bookPath: string,
  number: number,
  at: string,
): string {
  return writeBackup(database, bookPath, `before-${String(number).padStart(4, '0')}-${stamp(at)}.sqlite`)
}

/** Copies the book on opening unless nothing changed since the newest copy; answers the copy's path, or null where none was needed. */
export function rotateBackups(database: Database, bookPath: string, at: string): string | null {
  const newest = openingBackups(bookPath).at(-1)
  const made = writeBackup(database, bookPath, `opened-${stamp(at)}.sqlite`)
  if (newest !== undefined && newest !== made && sameBytes(newest, made)) {
    rmSync(made)
    return null
  }
  for (const old of openingBackups(bookPath).slice(0, -backupsKept)) rmSync(old)
  return made
}

function openingBackups(bookPath: string): readonly string[] {
  const folder = backupFolder(bookPath)
  mkdirSync(folder, { recursive: true })
  const names = readdirSync(folder).filter((name) => /^opened-.*\.sqlite$/.test(name))
  return names.sort().map((name) => join(folder, name))
}

/** VACUUM INTO writes a whole, clean database in one statement; the same content gives the same bytes. */
function writeBackup(database: Database, bookPath: string, name: string): string {
  const folder = backupFolder(bookPath)
  mkdirSync(folder, { recursive: true })
  const path = join(folder, name)
  rmSync(`${path}.half`, { force: true })
  database.prepare('VACUUM INTO ?').run(`${path}.half`)
  renameSync(`${path}.half`, path)
  return path
}

/** `2027-03-31T08:30:05.123Z` as a file name that sorts by time. */
function stamp(at: string): string {
  return at.replaceAll(/[:.]/g, '-')
}

function sameBytes(one: string, other: string): boolean {
  return readFileSync(one).equals(readFileSync(other))
}
