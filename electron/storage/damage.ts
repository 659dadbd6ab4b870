import type { Database } from 'better-sqlite3'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { findChangedContent } from './content-sums.ts'
import { damagedBook } from './failures.ts'
import { turn } from './private-files.ts'

/** `Coat` in ASCII, written into the file's header by the first migration. */
const applicationId = 0x436f6174

export function isEmptyDatabase(database: Database): boolean {
  return database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() === 0
}

/**
 * Looks for damage; only reads.
 *
 * @param path what the book is called to the user; `database` may be a copy of it
 * @param inParts goes table by table and lets requests in between. Then it leaves out the list of free pages, which SQLite only checks together with
 *   the whole file, and the pages of pictures, each of which is compared with its hash when it is read: half a second with a hundred megabytes.
 */
export async function findDamage(database: Database, path: string, inParts: boolean): Promise<Outcome<null>> {
  if (!isEmptyDatabase(database) && database.pragma('application_id', { simple: true }) !== applicationId) {
    return fail(
      'notAllowed',
      `${path} is a database of another program, not a book of jobs. It was left as it is. Move it away, or name another file in COATWRIGHT_BOOK.`,
    )
  }
  for (const part of inParts ? tablesOf(database) : ['']) {
    const check = part === '' ? 'integrity_check(1)' : `integrity_check('${part}')`
    const found = database.pragma(check, { simple: true })
    if (found !== 'ok') return damagedBook(path, String(found))
    await turn()
  }
  const first = database.prepare<[], string>('SELECT "table" FROM pragma_foreign_key_check').pluck().get()
  if (first !== undefined) return damagedBook(path, `a record of ${first} points at one that is not there`)
  const changed = findChangedContent(database)
  return changed === null ? succeed(null) : damagedBook(path, `a record of ${changed} is not what was stored`)
}

function tablesOf(database: Database): readonly string[] {
  return database
    .prepare<[], string>(
      `SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> 'pictures'`,
    )
    .pluck()
    .all()
}
