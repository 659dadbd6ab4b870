/**
 * For how long one request keeps a host from answering others: the longest pause of its event loop while jobs of 60, 200 and 500 rooms
 * are brought in, opened, edited, sent out, backed up and brought back. `npm run bench:host`.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { diffJobs } from '../../core/project/diff.ts'
import { writeJobFile } from '../../core/project/job-file.ts'
import type { Outcome } from '../../core/project/problem.ts'
import { machineClock, newJobKey } from '../../electron/handlers/clock.ts'
import { createHandlers } from '../../electron/handlers/handlers.ts'
import { jobFilesBeside } from '../../electron/handlers/job-files-beside.ts'
import { createKeeper, keeperTimes } from '../../electron/storage/keeper.ts'
import { readMigrations } from '../../electron/storage/migrations.ts'
import { quietHost } from '../hosts/handler-parts.ts'
import { manyRooms } from './many-rooms.ts'

const root = join(import.meta.dirname, '..', '..')
const folder = mkdtempSync(join(tmpdir(), 'coatwright-bench-'))
const options = {
  migrations: readMigrations(join(root, 'migrations')),
  now: machineClock.instant,
  newJobKey,
  ...keeperTimes,
}

function granted<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(outcome.problem.sentence)
  return outcome.value
}

async function openHandlers() {
  const keeper = granted(await createKeeper(join(folder, 'book.sqlite'), options))
  const jobFiles = jobFilesBeside(join(root, 'electron', 'handlers', 'job-files-thread.ts'))
  const handlers = createHandlers({
    keeper,
    host: quietHost,
    clock: machineClock,
    readDemo: () => null,
    jobFiles,
  })
  return { keeper, handlers }
}

/** Prints how long something took and the longest time in which nothing else was answered. */
async function measure<Value>(
  name: string,
  work: () => Promise<Outcome<Value>> | Outcome<Value>,
): Promise<Value> {
  const pauses = monitorEventLoopDelay({ resolution: 1 })
  pauses.enable()
  // The first tick is not counted, only what comes after it.
  await new Promise((resolve) => setTimeout(resolve, 20))
  const begun = performance.now()
  const outcome = await Promise.resolve().then(work)
  const took = performance.now() - begun
  await new Promise((resolve) => setTimeout(resolve, 5))
  pauses.disable()
  console.log(
    `  ${name.padEnd(22)} ${took.toFixed(0).padStart(6)} ms, longest pause ${(pauses.max / 1e6).toFixed(0).padStart(5)} ms`,
  )
  return granted(outcome)
}

try {
  for (const rooms of [60, 200, 500]) {
    console.log(`${rooms} rooms`)
    const text = writeJobFile(manyRooms(rooms))
    const first = await openHandlers()
    granted(await first.handlers.importJob({ text: writeJobFile(manyRooms(1)) }))
    const { jobKey } = await measure('brought in', () => first.handlers.importJob({ text }))
    await first.keeper.close()
    const { keeper, handlers } = await openHandlers()
    const opened = await measure('opened', () => handlers.openJob({ jobKey }))
    const next = { ...opened.job, header: { ...opened.job.header, client: 'Somebody' } }
    await measure('edited', () =>
      handlers.storeEdit({ jobKey, revision: 1, diff: diffJobs(opened.job, next) }),
    )
    await measure('sent out', () => handlers.exportJob({ jobKey }))
    await measure('taken out, backed up', () => handlers.deleteJob({ jobKey }))
    const [backup] = granted(await handlers.listBackups({}))
    const name = backup?.name ?? ''
    await measure('looked into', () => handlers.lookIntoBackup({ name }))
    await measure('brought back alone', () => handlers.bringJobBack({ name, jobKey }))
    await measure('gone back to', () => handlers.goBackToBackup({ name }))
    await keeper.close()
  }
} finally {
  rmSync(folder, { recursive: true, force: true })
}
process.exit(0)
