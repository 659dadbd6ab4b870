import { fail, type Outcome } from '../../core/project/problem.ts'

/** SQLite's own result codes, by their beginning (https://www.sqlite.org/rescode.html). */
function sqliteCode(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : ''
  return typeof code === 'string' ? code : ''
}

export function describeFailure(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}

/** Turns what the database or the file system threw into a problem the user can act on. */
export function storageProblem(error: unknown, bookPath: string): Outcome<never> {
  const code = sqliteCode(error)
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) {
    return fail(
      'alreadyOpen',
      `The book of jobs is already open in another Coatwright (${bookPath}). Close that one first, or go on working there.`,
    )
  }
  if (/^SQLITE_(NOTADB|CORRUPT)/.test(code)) return damagedBook(bookPath, describeFailure(error))
  if (/^(SQLITE_FULL|ENOSPC)/.test(code)) {
    return fail(
      'storageFailed',
      'The disk is full: the last edit was not stored. Free some space and try again.',
    )
  }
  if (/^(SQLITE_READONLY|SQLITE_CANTOPEN|SQLITE_PERM|EACCES|EPERM|EROFS)/.test(code)) {
    return fail(
      'storageFailed',
      `The book of jobs cannot be written (${bookPath}). Look whether the folder may be written to.`,
    )
  }
  if (/^SQLITE_CONSTRAINT_FOREIGNKEY/.test(code)) {
    return fail(
      'danglingReference',
      'Something in this edit points at a record that is not there, or takes away one that others still need. Nothing was stored.',
    )
  }
  return fail('storageFailed', `The book of jobs could not be read or written: ${describeFailure(error)}`)
}

export function damagedBook(bookPath: string, what: string): Outcome<never> {
  return fail(
    'fileDamaged',
    `The book of jobs is damaged and was left as it is (${bookPath}: ${what}). Backups lie in the folder beside it; copy the newest one in its place and start again.`,
  )
}
