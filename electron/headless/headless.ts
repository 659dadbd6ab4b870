import type { Job } from '../../core/project/job.ts'
import type { Outcome } from '../../core/project/problem.ts'
import { momentOf } from '../../core/time/site-moment.ts'
import { machineClock, newJobKey } from '../handlers/clock.ts'
import { createHandlers } from '../handlers/handlers.ts'
import { programFiles } from '../handlers/program-files.ts'
import { keeperInMemory } from '../storage/keeper.ts'
import { readMigrations } from '../storage/migrations.ts'
import { createStore, type Store } from '../storage/store.ts'
import { gatheringHost } from './gathering-host.ts'
import { planCommand } from './plan-command.ts'
import { planFiles } from './plan-files.ts'

interface HeadlessParts {
  /** Top folder of the program. */
  readonly root: string
  readonly say: (line: string) => void
  readonly complain: (line: string) => void
}

/** The command line: `npm run plan -- <job.json> --out <folder>`. The user's own book is neither read nor written. */
export async function runHeadless(
  words: readonly string[],
  { root, say, complain }: HeadlessParts,
): Promise<number> {
  const files = programFiles(root)
  const store = bookInMemory(files.migrations)
  if (!store.ok) {
    complain(store.problem.sentence)
    return 1
  }
  const { host, documents } = gatheringHost(files.version())
  const handlers = createHandlers({
    keeper: keeperInMemory(store.value),
    host,
    clock: machineClock,
    readDemo: files.readDemo,
  })
  const minute = Math.floor(Date.parse(machineClock.instant()) / 60_000)
  // This machine may stand in another zone than the house.
  const makeFiles = (job: Job, tell: (line: string) => void) =>
    planFiles(job, momentOf(minute, job.header.timeZone), tell)
  // Beside the answer, as complaints are, so that the answer can be piped on.
  const code = await planCommand(words, { handlers, documents, makeFiles, say, complain, progress: complain })
  store.value.close()
  return code
}

function bookInMemory(migrations: string): Outcome<Store> {
  return createStore(':memory:', {
    migrations: readMigrations(migrations),
    now: machineClock.instant,
    newJobKey,
  })
}
