import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite3, { type Database } from 'better-sqlite3'
import type { BackupKind, BackupSummary } from '../../core/contract/book.ts'
import { shopKey } from '../../core/contract/requests.ts'
import { compareText } from '../../core/words/text.ts'
import { backupsToRemove } from './backup-keeping.ts'
import { type BackupName, nameBackup, readBackupName } from './backup-names.ts'
import { backupFolder, halfEnding, hasLog, isInMemory } from './book-files.ts'
import { findDamage } from './damage.ts'
import { readMark, readQuietly } from './look-over.ts'
import { makePrivateFile, makePrivateFolder, settleFile, settleFolder, turn } from './private-files.ts'

/** So many pages are copied before others have their turn; 4 megabytes. */
const pagesAtOnce = 1000

/** What the folder holds, the newest first, books set aside among them. */
export function backupNames(bookPath: string): readonly BackupName[] {
  const folder = backupFolder(bookPath)
  if (isInMemory(bookPath) || !isFolder(folder)) return []
  const names = readdirSync(folder).map(readBackupName)
  return names.filter((name) => name !== null).sort((one, other) => compareText(other.takenAt, one.takenAt))
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true
}

/** A name for a new backup that no file has: two of one moment get a millisecond between them. */
export function newBackupName(bookPath: string, kind: Exclude<BackupKind, 'beforeForm'>, at: string): string {
  const names = Array.from({ length: 1000 }, (_, later) =>
    nameBackup(kind, new Date(Date.parse(at) + later).toISOString()),
  )
  const free = names.find((name) => !existsSync(join(backupFolder(bookPath), name)))
  if (free === undefined) throw new Error(`there are too many backups of ${at}`)
  return free
}

/** Where a backup of the list lies; undefined for a name that is not in it, so that no path can be asked for. */
export function backupPath(bookPath: string, name: string): string | undefined {
  const known = backupNames(bookPath).find((backup) => backup.name === name)
  return known && join(backupFolder(bookPath), known.name)
}

export async function listBackups(bookPath: string): Promise<readonly BackupSummary[]> {
  const summaries: BackupSummary[] = []
  for (const backup of backupNames(bookPath)) {
    const path = join(backupFolder(bookPath), backup.name)
    summaries.push({ ...backup, bytes: statSync(path).size, jobCount: countJobs(path) })
    await turn()
  }
  return summaries
}

/** Without the shop sheet. A book set aside may have a log; then only a copy could be counted without touching it, which is done when somebody looks inside. */
function countJobs(path: string): number | null {
  if (hasLog(path)) return null
  return readQuietly(
    path,
    (database) =>
      database
        .prepare<[string], number>('SELECT count(*) FROM jobs WHERE job_key <> ?')
        .pluck()
        .get(shopKey) ?? null,
  )
}

/**
 * Copies the book as it is at the end, a few pages at a time while the book goes on being used, checks the copy and gives it its
 * name when the disk has it. What was not finished goes.
 */
export async function writeBackup(database: Database, bookPath: string, name: string): Promise<void> {
  const folder = backupFolder(bookPath)
  const path = join(folder, name)
  const half = `${path}${halfEnding}`
  try {
    makePrivateFolder(folder)
    rmSync(half, { force: true })
    makePrivateFile(half)
    await database.backup(half, { progress: () => pagesAtOnce })
    await makeWhole(half)
    renameSync(half, path)
    settleFolder(folder)
  } catch (error) {
    for (const ending of ['', '-journal', '-wal', '-shm']) rmSync(`${half}${ending}`, { force: true })
    throw error
  }
}

/** One file without a log that can be read where nothing may be written, on the disk, and nothing wrong with it. */
async function makeWhole(half: string): Promise<void> {
  const copy = new BetterSqlite3(half, { timeout: 0 })
  try {
    copy.pragma('journal_mode = DELETE')
    const damage = await findDamage(copy, half, true)
    if (!damage.ok) throw new Error(damage.problem.sentence)
  } finally {
    copy.close()
  }
  await settleFile(half)
}

/** Takes away the backups that have had their time, and what died half-way. */
export function tidyBackups(bookPath: string, now: string): void {
  const folder = backupFolder(bookPath)
  for (const name of backupsToRemove(backupNames(bookPath), now)) rmSync(join(folder, name))
}

/** Half copies beside the book and in the folder of backups: nobody else can be writing them, for the book is ours. */
export function removeHalves(bookPath: string): void {
  for (const ending of ['', '-wal', '-shm', '-journal'])
    rmSync(`${bookPath}${halfEnding}${ending}`, { force: true })
  const folder = backupFolder(bookPath)
  if (!isFolder(folder)) return
  for (const name of readdirSync(folder)) {
    if (name.includes(halfEnding) || /^look-/.test(name)) {
      rmSync(join(folder, name), { recursive: true, force: true })
    }
  }
}

/** The state of the jobs in short: the same exactly when no edit lies between. */
function stateOfJobs(database: Database): string {
  return JSON.stringify(
    database.prepare('SELECT job_key, revision, edited_at FROM jobs ORDER BY job_key').all(),
  )
}

/** The newest copy of this book, whatever it was made for; a book set aside is not one. */
export function newestBackup(bookPath: string): BackupName | undefined {
  return backupNames(bookPath).find(({ kind }) => kind !== 'setAside')
}

export function hasChangedSinceBackup(database: Database, bookPath: string): boolean {
  const newest = newestBackup(bookPath)
  if (newest === undefined) return true
  return readQuietly(join(backupFolder(bookPath), newest.name), stateOfJobs) !== stateOfJobs(database)
}

/** The marks of the books that the backups are of, the newest first; an older program gave none. */
export function marksOfBackups(bookPath: string): readonly number[] {
  return backupNames(bookPath)
    .filter(({ kind }) => kind !== 'setAside')
    .map(({ name }) => readMark(join(backupFolder(bookPath), name)))
    .filter((mark) => mark !== 0)
}
