import { existsSync, readFileSync } from 'node:fs'
import { homedir } from 'node:os'
import { join } from 'node:path'
import { z } from 'zod'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'

/** Where the parts of the program lie, from its top folder (the one with package.json). */
export function programFiles(root: string) {
  return {
    pages: join(root, 'build', 'renderer'),
    migrations: join(root, 'migrations'),
    jobFilesThread: join(root, 'build', 'job-files', 'job-files.cjs'),
    version: () =>
      z.object({ version: z.string() }).parse(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')))
        .version,
    readDemo: () => {
      const path = join(root, 'demo-data', 'old-house.json')
      return existsSync(path) ? readFileSync(path, 'utf8') : null
    },
  } as const
}

/** The book every host opens, whichever was used last; COATWRIGHT_BOOK names another file. */
export function bookPath(environment: NodeJS.ProcessEnv, platform: NodeJS.Platform): Outcome<string> {
  const named = environment.COATWRIGHT_BOOK
  if (named === undefined) return succeed(join(dataFolder(environment, platform), 'book.sqlite'))
  if (named.trim() !== '') return succeed(named)
  return fail(
    'notValid',
    'COATWRIGHT_BOOK is set but empty. Name the file of the book of jobs in it, or leave it out for the usual place.',
  )
}

function dataFolder(environment: NodeJS.ProcessEnv, platform: NodeJS.Platform): string {
  switch (platform) {
    case 'win32':
      return join(environment.APPDATA ?? join(homedir(), 'AppData', 'Roaming'), 'Coatwright')
    case 'darwin':
      return join(homedir(), 'Library', 'Application Support', 'Coatwright')
    default:
      return join(environment.XDG_DATA_HOME ?? join(homedir(), '.local', 'share'), 'coatwright')
  }
}
