/**
 * Writes the book of the newest form into tests/fixtures/databases, once, when a migration is released:
 * `npx node --experimental-strip-types tests/migrations/keep-fixture.ts`. Never again for the same migration.
 */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { readMigrations } from '../../electron/storage/migrations.ts'
import { createStore } from '../../electron/storage/store.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'

const migrations = readMigrations(join(import.meta.dirname, '..', '..', 'migrations'))
const newest = migrations.at(-1)
if (newest === undefined) throw new Error('there is no migration')
const name = `${String(newest.number).padStart(4, '0')}-${newest.name}.sqlite`
const path = join(import.meta.dirname, '..', 'fixtures', 'databases', name)
if (existsSync(path)) throw new Error(`${path} is there and is never written again`)

const store = createStore(path, {
  migrations,
  now: () => '2027-03-29T08:00:00.000Z',
  newJobKey: () => 'job-1',
})
if (!store.ok) throw new Error(store.problem.sentence)
const created = store.value.create(everyRecordJob())
if (!created.ok) throw new Error(created.problem.sentence)
store.value.close()
// One file without companions, as a closed book is.
const database = new Database(path)
database.pragma('wal_checkpoint(TRUNCATE)')
database.exec('VACUUM')
database.close()
