import { existsSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { backupNames, newBackupName } from './backups.ts'
import { backupFolder, halfEnding, logIndexOf, logOf } from './book-files.ts'
import { copyPrivately } from './look-over.ts'
import { makePrivateFolder, settleFile, settleFolder } from './private-files.ts'

/**
 * Moves what stands at the book's place aside, its log and the index of the log with it, under one dated name among the backups.
 * Nothing is deleted. The book must not be open. A log that stayed behind would be taken for the log of the next book at this place.
 *
 * @param at ISO instant
 */
export function setAside(bookPath: string, at: string): void {
  const folder = backupFolder(bookPath)
  makePrivateFolder(folder)
  const aside = join(folder, newBackupName(bookPath, 'setAside', at))
  moveCompanions(bookPath, aside, bookPath)
  settleFolder(dirname(bookPath))
  settleFolder(folder)
}

/** The file first: a file without its log would pass for a whole book with fewer edits, a log without its file cannot. */
function moveCompanions(from: string, to: string, first: string): void {
  for (const [here, there] of [
    [first, to],
    [logOf(from), logOf(to)],
    [logIndexOf(from), logIndexOf(to)],
  ] as const) {
    if (existsSync(here)) renameSync(here, there)
  }
}

/**
 * Finishes a setting aside that died between file and log: a log without its file is moved to the file set aside last, or under a name of
 * its own where that has one already.
 */
export function finishSettingAside(bookPath: string, at: string): void {
  if (existsSync(bookPath) || !(existsSync(logOf(bookPath)) || existsSync(logIndexOf(bookPath)))) return
  const folder = backupFolder(bookPath)
  const last = backupNames(bookPath).find(({ kind }) => kind === 'setAside')
  const itsPlace = last && join(folder, last.name)
  if (itsPlace !== undefined && !existsSync(logOf(itsPlace))) moveCompanions(bookPath, itsPlace, bookPath)
  else setAside(bookPath, at)
}

/** Copies a backup beside the book's place, on the disk before it has its name; what it is a copy of stays. */
export async function copyBeside(source: string, bookPath: string): Promise<string> {
  const half = `${bookPath}${halfEnding}`
  try {
    await copyPrivately(source, half)
    if (existsSync(logOf(source))) await copyPrivately(logOf(source), logOf(half))
    await settleFile(half)
    return half
  } catch (error) {
    removeCopy(half)
    throw error
  }
}

export function removeCopy(half: string): void {
  for (const path of [half, logOf(half), logIndexOf(half)]) rmSync(path, { force: true })
}

/** Gives a copy that lies beside the book's place the book's name; the place must be free. */
export function moveIn(half: string, bookPath: string): void {
  if (existsSync(bookPath)) throw new Error(`${basename(bookPath)} is there already`)
  moveCompanions(half, bookPath, half)
  settleFolder(dirname(bookPath))
}
