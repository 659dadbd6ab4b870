import { dirname } from 'node:path'
import { type Outcome, type Problem, problem } from '../../core/project/problem.ts'

/** SQLite's own result codes and the system's, by their beginning (https://www.sqlite.org/rescode.html). */
function codeOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : ''
  return typeof code === 'string' ? code : ''
}

export function describeFailure(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}

export function isFullDisk(error: unknown): boolean {
  return /^(SQLITE_FULL|SQLITE_IOERR_(WRITE|SHMSIZE|SHMOPEN)|ENOSPC|EDQUOT|EFBIG)/.test(codeOf(error))
}

function isDamage(error: unknown): boolean {
  return /^SQLITE_(NOTADB|CORRUPT)/.test(codeOf(error))
}

/** Turns what the database or the file system threw into a problem the user can act on: what is so and what to do. */
export function storageProblem(error: unknown, bookPath: string): Outcome<never> {
  return { ok: false, problem: problemOfFailure(error, bookPath) }
}

export function problemOfFailure(error: unknown, bookPath: string): Problem {
  const code = codeOf(error)
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) {
    return problem(
      'alreadyOpen',
      `The book of jobs is already open in another Coatwright (${bookPath}). Close that one first, or go on working there.`,
    )
  }
  if (isDamage(error)) return damage(bookPath, describeFailure(error))
  if (isFullDisk(error)) {
    return problem(
      'storageFailed',
      `The disk is full: nothing more can be stored in ${dirname(bookPath)}. What was stored before is safe. Free some space and try again.`,
    )
  }
  if (/^(SQLITE_READONLY|SQLITE_CANTOPEN|SQLITE_PERM|EACCES|EPERM|EROFS)/.test(code)) {
    return problem(
      'storageFailed',
      `The book of jobs cannot be written (${bookPath}). Allow your user to write the file and its folder, and try again.`,
    )
  }
  if (/^(SQLITE_IOERR|EIO|ENXIO|ENODEV|ESTALE)/.test(code)) {
    return problem(
      'storageFailed',
      `The disk does not answer as it should (${bookPath}: ${describeFailure(error)}). Check whether the drive is connected and sound, and try again.`,
    )
  }
  if (/^SQLITE_CONSTRAINT_FOREIGNKEY/.test(code)) {
    return problem(
      'danglingReference',
      'Something in this edit points at a record that is not there, or takes away one that others still need. Nothing was stored.',
    )
  }
  return problem('storageFailed', `The book of jobs could not be read or written: ${describeFailure(error)}`)
}

export function damagedBook(bookPath: string, what: string): Outcome<never> {
  return { ok: false, problem: damage(bookPath, what) }
}

export function damage(bookPath: string, what: string): Problem {
  return problem(
    'fileDamaged',
    `The book of jobs is damaged and was left as it is (${bookPath}: ${what}). Go back to a backup; the damaged file is set aside, not deleted.`,
  )
}
