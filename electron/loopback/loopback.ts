import { randomBytes } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { machineClock, newJobKey } from '../handlers/clock.ts'
import { createHandlers } from '../handlers/handlers.ts'
import type { Host } from '../handlers/host.ts'
import { jobFilesBeside } from '../handlers/job-files-beside.ts'
import { bookPath, programFiles } from '../handlers/program-files.ts'
import { createKeeper, keeperTimes } from '../storage/keeper.ts'
import { readMigrations } from '../storage/migrations.ts'
import { createHandover, writeForwardingPage } from './handover.ts'
import { type LoopbackServer, startServer } from './server.ts'

interface LoopbackOptions {
  /** Top folder of the program. */
  readonly root: string
  readonly environment: NodeJS.ProcessEnv
  readonly platform: NodeJS.Platform
}

interface RunningLoopback extends LoopbackServer {
  /** Writes the page that a browser may be started on and answers where it lies; it is gone once it was used. */
  readonly writeOpeningPage: () => string
}

/** Opens the book and serves it with the built pages to a browser of this machine. COATWRIGHT_PORT fixes the port. */
export async function startLoopback(options: LoopbackOptions): Promise<Outcome<RunningLoopback>> {
  const files = programFiles(options.root)
  const path = bookPath(options.environment, options.platform)
  if (!path.ok) return path
  const port = portOf(options.environment)
  if (!port.ok) return port
  const opened = await createKeeper(path.value, {
    migrations: readMigrations(files.migrations),
    now: machineClock.instant,
    newJobKey,
    ...keeperTimes,
  })
  if (!opened.ok) return opened
  const keeper = opened.value
  const handlers = createHandlers({
    keeper,
    host: browserHost(files.version()),
    clock: machineClock,
    readDemo: files.readDemo,
    jobFiles: jobFilesBeside(files.jobFilesThread),
  })
  const token = randomBytes(24).toString('base64url')
  const handover = createHandover(token)
  const server = await startServer({ handlers, pages: files.pages, token, handover, port: port.value }).catch(
    () => null,
  )
  if (server === null) {
    await keeper.close()
    return fail(
      'hostFailed',
      `Port ${port.value} of this machine is taken. Name another one in COATWRIGHT_PORT, or none.`,
    )
  }
  let openingPage: string | null = null
  const removeOpeningPage = () => {
    if (openingPage !== null) rmSync(openingPage, { force: true })
  }
  return succeed({
    ...server,
    writeOpeningPage: () => {
      openingPage = writeOpeningPage(dirname(keeper.path()), server.newAddress(removeOpeningPage))
      return openingPage
    },
    close: async () => {
      removeOpeningPage()
      await server.close()
      await keeper.close()
    },
  })
}

/** Beside the book; where nothing may be written there, in a folder of this user's own among the temporary ones. */
function writeOpeningPage(folder: string, address: string): string {
  const write = (place: string) => {
    const path = join(place, 'open-coatwright.html')
    writeForwardingPage(path, address)
    return path
  }
  try {
    return write(folder)
  } catch {
    return write(mkdtempSync(join(tmpdir(), 'coatwright-')))
  }
}

/** The port that COATWRIGHT_PORT names; 0 takes any free one. */
export function portOf(environment: NodeJS.ProcessEnv): Outcome<number> {
  const named = environment.COATWRIGHT_PORT
  if (named === undefined) return succeed(0)
  if (/^\d{1,5}$/.test(named) && Number(named) <= 65_535) return succeed(Number(named))
  return fail(
    'notValid',
    `COATWRIGHT_PORT is "${named}", which is not a port. Give a whole number from 1 to 65535, or leave it out for any free port.`,
  )
}

/** A browser saves and prints by its own means: the page does both itself when the answer is that nothing was written. */
function browserHost(version: string): Host {
  return {
    facts: { host: 'loopback', version, writesPdf: false },
    saveDocument: async () => succeed({ path: null }),
    savePdf: async () => succeed({ path: null }),
    printDocument: async () => succeed({ printed: false }),
  }
}
