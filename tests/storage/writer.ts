/**
 * Run as a process of its own by safety.test.ts: opens the book named on the command line, renames the one room over and over, and
 * prints each revision once it was told that the edit is stored. Ends only when it is killed.
 */
import { diffJobs } from '../../core/project/diff.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { readMigrations } from '../../electron/storage/migrations.ts'
import { createStore, type Store } from '../../electron/storage/store.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'

const [path = '', migrationsFolder = ''] = process.argv.slice(2)
const store = createStore(path, {
  migrations: readMigrations(migrationsFolder),
  now: () => '2027-03-29T08:00:00.000Z',
  newJobKey: () => 'job-1',
})
if (!store.ok) throw new Error(store.problem.sentence)
const created = store.value.create(plainJob())
if (!created.ok) throw new Error(created.problem.sentence)
let { job } = created.value

function storeNext(book: Store, revision: number): void {
  const next = {
    ...job,
    rooms: { [roomId]: { ...(job.rooms[roomId] as Room), name: `Study ${revision + 1}` } },
  }
  const stored = book.storeEdit('job-1', revision, diffJobs(job, next))
  if (!stored.ok) throw new Error(stored.problem.sentence)
  job = next
  process.stdout.write(`${stored.value.revision}\n`, () => storeNext(book, stored.value.revision))
}

storeNext(store.value, 1)
