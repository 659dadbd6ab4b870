/** Run as a process of its own: opens the book named on the command line, stores one more job, and kills itself. */
import { join } from 'node:path'
import { createKeeper, keeperTimes } from '../../electron/storage/keeper.ts'
import { readMigrations } from '../../electron/storage/migrations.ts'
import { plainJob } from '../fixtures/plain-room.ts'

const keeper = await createKeeper(process.argv[2] ?? '', {
  migrations: readMigrations(join(import.meta.dirname, '..', '..', 'migrations')),
  now: () => '2027-03-29T12:00:00.000Z',
  newJobKey: () => 'job-after',
  ...keeperTimes,
})
if (!keeper.ok) throw new Error(keeper.problem.sentence)
const store = keeper.value.store()
if (!store.ok) throw new Error(store.problem.sentence)
const job = plainJob()
const made = store.value.create({ ...job, header: { ...job.header, title: 'After the backup' } })
if (!made.ok) throw new Error(made.problem.sentence)
process.kill(process.pid, 'SIGKILL')
