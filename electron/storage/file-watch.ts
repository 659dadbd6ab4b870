import {
  type BigIntStats,
  closeSync,
  copyFileSync,
  existsSync,
  fstatSync,
  openSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs'
import { join } from 'node:path'
import { newBackupName } from './backups.ts'
import { backupFolder, logOf } from './book-files.ts'
import { makePrivateFolder } from './private-files.ts'

/** How a file stood when this process had written it last; null where there was none. */
interface Footprint {
  readonly device: bigint
  readonly inode: bigint
  readonly size: bigint
  readonly modified: bigint
}

/** Looks whether the book's file and log are still the ones this process opened and wrote. */
export interface FileWatch {
  /** To be called after every write of this process. */
  readonly remember: () => void
  readonly isSame: () => boolean
  /** Whether what this process has open still has the bytes it wrote, whatever lies at the place by now. */
  readonly hasOurBytes: () => boolean
  /** Closes the book with `close`. */
  readonly end: (close: () => void) => void
  /** Closes it where others have put something in its place, and keeps that from what closing does. */
  readonly endBeside: (close: () => void, at: string) => void
}

/**
 * Begins to watch a book that is open. The one handle stays open as long as the book does: on POSIX systems closing any handle of a file
 * drops SQLite's lock on it too.
 */
export function watchFiles(bookPath: string): FileWatch {
  const handle = openSync(bookPath, 'r')
  const look = () => ({
    book: footprint(bookPath),
    log: footprint(logOf(bookPath)),
    header: readHeader(handle),
  })
  let known = look()

  function end(close: () => void): void {
    close()
    closeSync(handle)
  }

  return {
    remember: () => {
      known = look()
    },
    isSame: () => {
      const now = look()
      return isEqual(known.book, now.book) && isEqual(known.log, now.log) && known.header.equals(now.header)
    },
    hasOurBytes: () => {
      const log = footprint(logOf(bookPath))
      const logIsOurs = !isSameFile(known.log, log) || isEqual(known.log, log)
      return logIsOurs && isEqual(known.book, printOf(fstatSync(handle, { bigint: true })))
    },
    end,
    endBeside: (close, at) => {
      const putBack = keepStrangers(bookPath, at, known)
      end(close)
      putBack()
    },
  }
}

/**
 * Moves what others put at the place away until the book is closed: closing folds the log into the file that is open, be its bytes
 * others by now, and deletes the log by its name, be it another one by now. Answers what puts it back.
 */
function keepStrangers(
  bookPath: string,
  at: string,
  known: { readonly book: Footprint | null; readonly log: Footprint | null },
): () => void {
  const place = join(backupFolder(bookPath), newBackupName(bookPath, 'setAside', at))
  makePrivateFolder(backupFolder(bookPath))
  const isThere = existsSync(bookPath)
  if (isThere && isSameFile(known.book, footprint(bookPath))) copyFileSync(bookPath, place)
  else if (isThere) renameSync(bookPath, place)
  const strangeLog = !isSameFile(known.log, footprint(logOf(bookPath))) && existsSync(logOf(bookPath))
  if (strangeLog) renameSync(logOf(bookPath), logOf(place))
  return () => {
    if (isThere) {
      rmSync(bookPath, { force: true })
      renameSync(place, bookPath)
    }
    if (strangeLog) renameSync(logOf(place), logOf(bookPath))
  }
}

function footprint(path: string): Footprint | null {
  const found = statSync(path, { bigint: true, throwIfNoEntry: false })
  return found === undefined ? null : printOf(found)
}

function printOf(found: BigIntStats): Footprint {
  return { device: found.dev, inode: found.ino, size: found.size, modified: found.mtimeNs }
}

/** The first hundred bytes of the open file: application, mark of the book, count of changes. */
function readHeader(handle: number): Buffer {
  const bytes = Buffer.alloc(100)
  readSync(handle, bytes, 0, bytes.length, 0)
  return bytes
}

function isSameFile(one: Footprint | null, other: Footprint | null): boolean {
  return one?.device === other?.device && one?.inode === other?.inode
}

function isEqual(one: Footprint | null, other: Footprint | null): boolean {
  return isSameFile(one, other) && one?.size === other?.size && one?.modified === other?.modified
}
