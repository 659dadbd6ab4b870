import { statSync } from 'node:fs'
import type { Database } from 'better-sqlite3'
import type { ShutBook } from '../../core/contract/book.ts'
import type { Problem } from '../../core/project/problem.ts'
import { nameBeforeForm } from './backup-names.ts'
import {
  backupNames,
  hasChangedSinceBackup,
  marksOfBackups,
  newBackupName,
  removeHalves,
  tidyBackups,
  writeBackup,
} from './backups.ts'
import { finishSettingAside } from './book-exchange.ts'
import { backupFolder, hasLog, logOf } from './book-files.ts'
import { type BookPlace, lookAtPlace } from './book-place.ts'
import { isEmptyDatabase } from './damage.ts'
import { damage, describeFailure, isFullDisk, problemOfFailure } from './failures.ts'
import { lookOver, lookOverLog } from './look-over.ts'
import { type Migration, pendingMigrations } from './migrations.ts'
import { bringToNewestForm, connect, foldLog, giveMark, markOf } from './open-book.ts'
import { sweepPictures } from './picture-rows.ts'
import { emptyBook, missingBook, replacedBook, shutBook, shutBy } from './shut-book.ts'

interface OpeningParts {
  /** Where the book really lies. */
  readonly path: string
  readonly migrations: readonly Migration[]
  /** The present instant, ISO, UTC. */
  readonly now: () => string
}

/** What the user has agreed to; without it the book stays shut. */
export interface Agreed {
  readonly newBook?: boolean
  readonly otherBook?: boolean
  readonly readablePart?: boolean
  /** Requests are served meanwhile. */
  readonly othersWait?: boolean
}

type Opening =
  | { readonly kind: 'open'; readonly database: Database; readonly warnings: readonly string[] }
  | { readonly kind: 'shut'; readonly shut: ShutBook }
  /** Another process has it. */
  | { readonly kind: 'taken'; readonly problem: Problem }

/**
 * Opens the book with all the care there is: what an earlier process left half done is finished, the place and the book are looked at
 * without touching them, and only what is whole, ours and expected is opened, brought to the newest form and backed up.
 */
export async function openCarefully(parts: OpeningParts, agreed: Agreed): Promise<Opening> {
  try {
    const shut = await lookBeforeOpening(parts, agreed)
    if (shut !== null) return { kind: 'shut', shut }
    return await openWhole(parts)
  } catch (error) {
    const problem = problemOfFailure(error, parts.path)
    if (problem.kind === 'alreadyOpen') return { kind: 'taken', problem }
    return { kind: 'shut', shut: shutBy(problem) }
  }
}

async function lookBeforeOpening(parts: OpeningParts, agreed: Agreed): Promise<ShutBook | null> {
  const { path, now } = parts
  const place = lookAtPlace(path)
  if (!place.ok) return shutBy(place.problem)
  finishSettingAside(path, now())
  removeHalves(path)
  if (place.value !== 'file') return lookAtNothing(path, place.value, agreed)
  if (agreed.readablePart !== true) {
    const log = await lookOverLog(path)
    if (!log.ok) return shutBook('logDamaged', log.problem.sentence)
  }
  const whole = await lookOver(path, backupFolder(path), parts.migrations, agreed.othersWait === true)
  if (!whole.ok) return shutBy(whole.problem)
  if (!whole.value.hasTables) return lookAtNothing(path, 'empty', agreed)
  return agreed.otherBook !== true && isOtherThanBackups(whole.value.mark, path) ? replacedBook(path) : null
}

function lookAtNothing(path: string, place: BookPlace, agreed: Agreed): ShutBook | null {
  // SQLite would throw away the log of an empty file.
  if (place === 'empty' && hasLog(path) && statSync(logOf(path)).size > 0 && statSync(path).size === 0) {
    return shutBy(damage(path, 'the file is empty, its log is not'))
  }
  if (agreed.newBook === true || backupNames(path).length === 0) return null
  return place === 'empty' ? emptyBook(path) : missingBook(path)
}

/** Backups of a book lie beside it, and none is of the book with this mark; one without a mark was written by an older program. */
function isOtherThanBackups(mark: number, path: string): boolean {
  const marks = marksOfBackups(path)
  return mark !== 0 && marks.length > 0 && !marks.includes(mark)
}

async function openWhole(parts: OpeningParts): Promise<Opening> {
  const { path, migrations, now } = parts
  const database = connect(path)
  const warnings: string[] = []
  try {
    const isNew = isEmptyDatabase(database)
    const known = isNew ? 0 : (marksOfBackups(path)[0] ?? 0)
    const pending = pendingMigrations(database, migrations)
    if (!pending.ok) return shutAgain(database, pending.problem)
    const [first] = pending.value
    if (first !== undefined && !isNew) {
      await tryBackup(database, path, nameBeforeForm(first.number, now()), warnings)
    }
    const brought = bringToNewestForm(database, pending.value, now())
    if (!brought.ok) return shutAgain(database, brought.problem)
    giveMark(database, known)
    sweepPictures(database)
    foldLog(database)
    const isOther = isOtherThanBackups(markOf(database), path)
    if (isOther || (!isNew && hasChangedSinceBackup(database, path))) {
      await tryBackup(database, path, newBackupName(path, 'work', now()), warnings)
    }
    tidyBackups(path, now())
    return { kind: 'open', database, warnings }
  } catch (error) {
    database.close()
    throw error
  }
}

function shutAgain(database: Database, problem: Problem): Opening {
  database.close()
  return { kind: 'shut', shut: shutBy(problem) }
}

/** A backup that fails is no reason to keep anybody from working. */
async function tryBackup(database: Database, path: string, name: string, warnings: string[]): Promise<void> {
  try {
    await writeBackup(database, path, name)
  } catch (error) {
    warnings.push(backupWarning(error, path))
  }
}

export function backupWarning(error: unknown, path: string): string {
  const folder = backupFolder(path)
  return isFullDisk(error)
    ? `No backup could be made: the disk is full. The book itself is open and whole. Free some space; the backups lie in ${folder}.`
    : `No backup could be made in ${folder}: ${describeFailure(error)}. The book itself is open and whole. Check whether the folder may be written to.`
}
