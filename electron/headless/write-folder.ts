import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'

/**
 * Writes files into a folder, made where it is missing. They are written beside it first and moved in only when all of them are
 * whole, so that a full disk leaves no half plan; older files of other names stay.
 */
export function writeFolder(folder: string, files: ReadonlyMap<string, string>): Outcome<null> {
  const place = resolve(folder)
  let draft: string | undefined
  try {
    if (existsSync(place) && !statSync(place).isDirectory()) {
      return fail('notValid', `${folder} is a file; the plan needs a folder.`)
    }
    mkdirSync(dirname(place), { recursive: true })
    draft = mkdtempSync(join(dirname(place), `.${basename(place)}-`))
    for (const [name, text] of files) writeFileSync(join(draft, name), text)
    mkdirSync(place, { recursive: true })
    for (const name of files.keys()) renameSync(join(draft, name), join(place, name))
    return succeed(null)
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    return fail('storageFailed', `The plan could not be written to ${folder}: ${why}`)
  } finally {
    if (draft !== undefined) rmSync(draft, { recursive: true, force: true })
  }
}
