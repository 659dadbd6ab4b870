import { randomBytes } from 'node:crypto'
import { rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { machineClock, newJobKey } from '../handlers/clock.ts'
import { createHandlers, fillEmptyBook } from '../handlers/handlers.ts'
import type { Host } from '../handlers/host.ts'
import { bookPath, programFiles } from '../handlers/program-files.ts'
import { readMigrations } from '../storage/migrations.ts'
import { createStore } from '../storage/store.ts'
import { createHandover, writeForwardingPage } from './handover.ts'
import { type LoopbackServer, startServer } from './server.ts'

export interface LoopbackOptions {
  /** Top folder of the program. */
  readonly root: string
  readonly environment: NodeJS.ProcessEnv
  readonly platform: NodeJS.Platform
}

export interface RunningLoopback extends LoopbackServer {
  /** Writes the page that a browser may be started on and answers where it lies; it is gone once it was used. */
  readonly writeOpeningPage: () => string
}

/** Opens the book and serves it with the built pages to a browser of this machine. COATWRIGHT_PORT fixes the port. */
export async function startLoopback(options: LoopbackOptions): Promise<Outcome<RunningLoopback>> {
  const files = programFiles(options.root)
  const store = createStore(bookPath(options.environment, options.platform), {
    migrations: readMigrations(files.migrations),
    now: machineClock.instant,
    newJobKey,
  })
  if (!store.ok) return store
  const handlers = createHandlers({
    store: store.value,
    host: browserHost(files.version()),
    clock: machineClock,
    readDemo: files.readDemo,
  })
  await fillEmptyBook(handlers)
  const port = Number(options.environment.COATWRIGHT_PORT ?? 0)
  const token = randomBytes(24).toString('base64url')
  const handover = createHandover(token)
  const server = await startServer({ handlers, pages: files.pages, token, handover, port }).catch(() => null)
  if (server === null) {
    store.value.close()
    return fail(
      'hostFailed',
      `Port ${port} of this machine is taken. Name another one in COATWRIGHT_PORT, or none.`,
    )
  }
  const openingPage = join(dirname(store.value.path), 'open-coatwright.html')
  const removeOpeningPage = () => rmSync(openingPage, { force: true })
  return succeed({
    ...server,
    writeOpeningPage: () => {
      writeForwardingPage(openingPage, server.newAddress(removeOpeningPage))
      return openingPage
    },
    close: async () => {
      removeOpeningPage()
      await server.close()
      store.value.close()
    },
  })
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
