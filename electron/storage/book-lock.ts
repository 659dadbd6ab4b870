import BetterSqlite3 from 'better-sqlite3'
import { makePrivateFile } from './private-files.ts'

export interface BookLock {
  readonly release: () => void
}

/**
 * Takes the book for this process alone, before the book itself is touched; throws SQLITE_BUSY where another has it. The lock is
 * SQLite's own on a small file beside the book: the system drops it even when the process dies, and it holds while the book is exchanged.
 */
export function takeBookLock(bookPath: string): BookLock {
  const path = `${bookPath}.lock`
  makePrivateFile(path)
  // Waiting would not help against another instance: it keeps the book for as long as it runs.
  const database = new BetterSqlite3(path, { timeout: 0 })
  try {
    database.exec('BEGIN EXCLUSIVE')
  } catch (error) {
    database.close()
    throw error
  }
  return { release: () => database.close() }
}
