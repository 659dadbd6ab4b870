import { accessSync, constants, lstatSync, mkdirSync, readlinkSync, realpathSync, statSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { storageProblem } from './failures.ts'

/** What stands where the book should be. */
export type BookPlace = 'nothing' | 'empty' | 'file'

const nothingChanged = 'Nothing was changed.'

/**
 * Where the book really lies: a link is followed, so that log, lock and backups lie beside the file itself. The folder is made where
 * there is none.
 */
export function findRealPlace(path: string): Outcome<string> {
  try {
    if (lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink()) return followLink(path)
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 })
    return succeed(resolve(path))
  } catch (error) {
    return placeProblem(error, path)
  }
}

function followLink(path: string): Outcome<string> {
  try {
    return succeed(realpathSync(path))
  } catch (error) {
    if (codeOf(error) === 'ELOOP') {
      return unreachable(
        `${path} is a link that leads back to itself. Take the link away, or name another file in COATWRIGHT_BOOK, and try again.`,
      )
    }
    return unreachable(
      `${path} is a link to ${readlinkSync(path)}, and nothing is there. Connect the drive it lies on, or take the link away, and try again.`,
    )
  }
}

/** Looks at the place without touching it; a problem in words where no book can be kept there. */
export function lookAtPlace(path: string): Outcome<BookPlace> {
  try {
    const found = statSync(path, { throwIfNoEntry: false })
    if (found === undefined) return mayWrite(dirname(path), 'nothing')
    if (found.isDirectory()) {
      return unreachable(
        `There is a folder at ${path}, where the book of jobs should be a file. Move the folder away, or name another file in COATWRIGHT_BOOK, and try again.`,
      )
    }
    if (!found.isFile()) {
      return unreachable(
        `${path} is not an ordinary file but a device or a pipe. Name another file in COATWRIGHT_BOOK and try again.`,
      )
    }
    accessSync(path, constants.R_OK | constants.W_OK)
    return mayWrite(dirname(path), found.size === 0 ? 'empty' : 'file')
  } catch (error) {
    return placeProblem(error, path)
  }
}

/** The log has to be written beside the book, so the folder counts as much as the file. */
function mayWrite(folder: string, place: BookPlace): Outcome<BookPlace> {
  try {
    accessSync(folder, constants.W_OK | constants.X_OK)
    return succeed(place)
  } catch {
    return unreachable(
      `The folder ${folder} may not be written to, and the book of jobs needs its log beside it. Allow your user to write there, or name a file elsewhere in COATWRIGHT_BOOK, and try again.`,
    )
  }
}

function placeProblem(error: unknown, path: string): Outcome<never> {
  switch (codeOf(error)) {
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return unreachable(
        `The book of jobs is read-only or belongs to somebody else (${path}). Allow your user to read and write it, and try again.`,
      )
    case 'ENOTDIR':
    case 'EEXIST':
      return unreachable(
        `The book of jobs cannot lie at ${path}: a part of that path is a file, where a folder should be. Name another file in COATWRIGHT_BOOK and try again.`,
      )
    default:
      return storageProblem(error, path)
  }
}

function unreachable(sentence: string): Outcome<never> {
  return fail('storageFailed', `${sentence} ${nothingChanged}`)
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : ''
}
