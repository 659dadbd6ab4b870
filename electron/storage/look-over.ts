import { closeSync, constants, mkdtempSync, openSync, readFileSync, readSync, rmSync } from 'node:fs'
import { copyFile, readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import BetterSqlite3, { type Database } from 'better-sqlite3'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { halfEnding, hasLog, logOf } from './book-files.ts'
import { findDamage, isEmptyDatabase } from './damage.ts'
import { storageProblem } from './failures.ts'
import { readLog } from './log-file.ts'
import { type Migration, pendingMigrations } from './migrations.ts'
import { markOf } from './open-book.ts'
import { makePrivateFile, makePrivateFolder } from './private-files.ts'

/**
 * Opens a copy of a book with its log and hands it to `use`. The book itself is not touched: merely opening a database can write to
 * it, when SQLite folds in a log that was left behind.
 *
 * @param folder for the copy, on the same disk as the book, so that its bytes can be shared
 */
export async function onCopy<Value>(
  path: string,
  folder: string,
  use: (copy: Database) => Promise<Outcome<Value>> | Outcome<Value>,
): Promise<Outcome<Value>> {
  let work: string | undefined
  let copy: Database | undefined
  try {
    work = makeWorkFolder(folder)
    const place = join(work, `copy${halfEnding}`)
    await copyPrivately(path, place)
    if (hasLog(path)) await copyPrivately(logOf(path), logOf(place))
    copy = new BetterSqlite3(place, { timeout: 0 })
    // Alone with it, SQLite needs no file for the index of the log.
    copy.pragma('locking_mode = EXCLUSIVE')
    return await use(copy)
  } catch (error) {
    return storageProblem(error, path)
  } finally {
    copy?.close()
    if (work !== undefined) rmSync(work, { recursive: true, force: true })
  }
}

/** A folder of its own for one copy; among the temporary files where nothing may be written in the usual one. */
function makeWorkFolder(folder: string): string {
  try {
    makePrivateFolder(folder)
    return mkdtempSync(join(folder, 'look-'))
  } catch {
    return mkdtempSync(join(tmpdir(), 'coatwright-look-'))
  }
}

/** The copy shares the bytes of the original where the system can do that. */
export async function copyPrivately(from: string, to: string): Promise<void> {
  makePrivateFile(to)
  await copyFile(from, to, constants.COPYFILE_FICLONE)
}

interface LookedOver {
  /** False for a database that nobody has written anything into yet. */
  readonly hasTables: boolean
  readonly mark: number
}

/** Whether a file is a whole book that this program can open; says in words what is wrong otherwise, and changes nothing. */
export function lookOver(
  path: string,
  folder: string,
  migrations: readonly Migration[],
  othersWait: boolean,
): Promise<Outcome<LookedOver>> {
  const isClosed = !hasLog(path)
  return onCopy(path, folder, async (copy) => {
    // A book that was closed properly is looked over in parts; whatever a dead process left behind is checked whole.
    const damage = await findDamage(copy, path, othersWait || isClosed)
    if (!damage.ok) return damage
    const pending = pendingMigrations(copy, migrations)
    if (!pending.ok) return pending
    return succeed({ hasTables: !isEmptyDatabase(copy), mark: markOf(copy) })
  })
}

/** Whether the log holds edits that SQLite would pass over in silence. */
export async function lookOverLog(path: string): Promise<Outcome<null>> {
  if (!hasLog(path)) return succeed(null)
  const { losesFrames } = readLog(await readFile(logOf(path)))
  if (!losesFrames) return succeed(null)
  return fail(
    'fileDamaged',
    `The log of the book of jobs is damaged (${logOf(path)}): the last edits before the program ended cannot be read. Nothing was changed. Open the book as far as it can be read, or go back to a backup; file and log are set aside as they are.`,
  )
}

/** Reads a whole database that nobody writes to, leaving no trace beside it; null where it cannot be read. */
export function readQuietly<Value>(path: string, read: (database: Database) => Value): Value | null {
  let database: Database | undefined
  try {
    database = needsLog(path) ? openInMemory(path) : new BetterSqlite3(path, { readonly: true, timeout: 0 })
    return read(database)
  } catch {
    return null
  } finally {
    database?.close()
  }
}

/** Places in the header: how the file is written and read (2 with a log, 1 without), and the mark of the book. */
const [writeVersion, readVersion, mark] = [18, 19, 60] as const

/** A book set aside as it was; merely reading it would put an empty log beside it. */
function needsLog(path: string): boolean {
  return readHeader(path)[readVersion] === 2
}

/** What `markOf` would answer, without opening the database. */
export function readMark(path: string): number {
  return readHeader(path).readUInt32BE(mark)
}

/** Not for the open book: closing a handle of its file would drop the lock on it. */
function readHeader(path: string): Buffer {
  const header = Buffer.alloc(100)
  const file = openSync(path, 'r')
  try {
    readSync(file, header, 0, header.length, 0)
  } finally {
    closeSync(file)
  }
  return header
}

function openInMemory(path: string): Database {
  const bytes = readFileSync(path)
  bytes[writeVersion] = 1
  bytes[readVersion] = 1
  return new BetterSqlite3(bytes)
}
