import { join } from 'node:path'
import type { Handlers } from '../../core/contract/requests.ts'
import { writeJobFile } from '../../core/project/job-file.ts'
import { succeed } from '../../core/project/problem.ts'
import type { Clock } from '../../electron/handlers/clock.ts'
import { createHandlers } from '../../electron/handlers/handlers.ts'
import type { Host } from '../../electron/handlers/host.ts'
import type { JobFiles } from '../../electron/handlers/job-files.ts'
import { type Keeper, keeperInMemory } from '../../electron/storage/keeper.ts'
import type { Store } from '../../electron/storage/store.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { openBook, testFolder } from '../storage/books.ts'

/** A host that can do nothing but say what it was asked. */
export const quietHost: Host = {
  facts: { host: 'loopback', version: '0.0.0', writesPdf: false },
  saveDocument: async () => succeed({ path: null }),
  savePdf: async () => succeed({ path: null }),
  printDocument: async () => succeed({ printed: false }),
}

export const stoppedClock: Clock = {
  instant: () => '2027-03-29T12:00:00.000Z',
  local: () => '2027-03-29T08:00',
  timeZone: () => 'America/New_York',
}

/** Handlers over an empty book; the demonstration house is the plain room. */
export function quietHandlers(
  changes: {
    readonly host?: Host
    readonly store?: Store
    readonly keeper?: Keeper
    readonly jobFiles?: JobFiles
  } = {},
): Handlers {
  return createHandlers({
    keeper: changes.keeper ?? keeperInMemory(changes.store ?? openBook(join(testFolder(), 'book.sqlite'))),
    host: changes.host ?? quietHost,
    clock: stoppedClock,
    ...(changes.jobFiles && { jobFiles: changes.jobFiles }),
    readDemo: () => writeJobFile(plainJob()),
  })
}
