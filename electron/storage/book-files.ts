import { existsSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'

/** The log beside a database: what was committed and not yet folded into the file. */
export function logOf(path: string): string {
  return `${path}-wal`
}

/** SQLite's index of the log; made anew whenever it is missing. */
export function logIndexOf(path: string): string {
  return `${path}-shm`
}

export function backupFolder(bookPath: string): string {
  return join(dirname(bookPath), `${basename(bookPath, '.sqlite')}-backups`)
}

/** Copies that are not whole yet have this ending; what is found with it later was left by a process that died. */
export const halfEnding = '.half'

/** A book in memory has no file, hence neither lock nor backups. */
export function isInMemory(path: string): boolean {
  return path === ':memory:'
}

export function hasLog(path: string): boolean {
  return existsSync(logOf(path))
}
