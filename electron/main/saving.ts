import { renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, extname, join } from 'node:path'
import { type BrowserWindow, dialog } from 'electron'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'

/**
 * Asks where to save and writes there; `path` is null when the user thought better of it. With `folder` it writes there at once
 * under the proposed name: a save dialog cannot be driven by a test.
 */
export async function saveWhereAsked(
  window: BrowserWindow,
  folder: string | undefined,
  fileName: string,
  bytes: () => Promise<Buffer | string>,
): Promise<Outcome<{ readonly path: string | null }>> {
  const name = safeFileName(fileName)
  const path = folder === undefined ? await askForPath(window, name) : join(folder, name)
  if (path === null) return succeed({ path })
  try {
    writeWhole(path, await bytes())
    return succeed({ path })
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    return fail('hostFailed', `${path} could not be written: ${why}`)
  }
}

async function askForPath(window: BrowserWindow, name: string): Promise<string | null> {
  const kind = extname(name).slice(1)
  const answer = await dialog.showSaveDialog(window, {
    defaultPath: name,
    filters: kind === '' ? [] : [{ name: kind.toUpperCase(), extensions: [kind] }],
  })
  return answer.canceled || answer.filePath === '' ? null : answer.filePath
}

/** The page proposes a name, never a place. */
function safeFileName(fileName: string): string {
  const name = basename(fileName.replaceAll('\\', '/')).replaceAll(/[<>:"|?*\p{Cc}]/gu, '-')
  return name === '' || name === '.' || name === '..' ? 'document' : name
}

/** Written beside its place first, so that an older file is only ever replaced by a whole one. */
function writeWhole(path: string, bytes: Buffer | string): void {
  const half = `${path}.half`
  try {
    writeFileSync(half, bytes)
    renameSync(half, path)
  } catch (error) {
    rmSync(half, { force: true })
    throw error
  }
}
