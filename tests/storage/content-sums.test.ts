import { readFileSync, writeFileSync } from 'node:fs'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { diffJobs } from '../../core/project/diff.ts'
import type { ColourId } from '../../core/project/survey-records.ts'
import { findChangedContent, rebuildSums } from '../../electron/storage/content-sums.ts'
import { applyMigration, migrationOf } from '../../electron/storage/migrations.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'
import { linen } from '../fixtures/plain-room.ts'
import { bookWithOneJob, tamper } from './book-states.ts'
import { granted, migrations, openKeeper } from './books.ts'

function changedIn(path: string): string | null {
  const database = new Database(path, { readonly: true })
  const changed = findChangedContent(database)
  database.close()
  return changed
}

test('sums follow every way of writing: new jobs, edits of every kind, orders, removals of whole jobs', async () => {
  const path = await bookWithOneJob()
  const keeper = await openKeeper(path)
  const store = granted(keeper.store())
  const { jobKey, job } = granted(store.create(everyRecordJob()))
  const more = { ...job, colours: { chalk: { ...linen, id: 'chalk' as ColourId }, ...job.colours } }
  const named = { ...more, header: { ...more.header, client: 'Somebody else' } }
  granted(store.storeEdit(jobKey, 1, diffJobs(job, more)))
  granted(store.storeEdit(jobKey, 2, diffJobs(more, named)))
  granted(
    store.storeEdit(
      jobKey,
      3,
      diffJobs(named, { ...named, conditions: {}, photos: {}, colours: job.colours }),
    ),
  )
  const [first] = granted(store.list()).filter((each) => each.jobKey !== jobKey)
  granted(await keeper.remove(first?.jobKey ?? ''))
  await keeper.close()
  expect(changedIn(path)).toBeNull()
})

test('one letter that turned into another is told, though every page of the file is sound', async () => {
  const path = await bookWithOneJob('Corner house')
  const bytes = readFileSync(path)
  const at = bytes.indexOf('Corner house')
  bytes[at] = (bytes[at] as number) ^ 1
  writeFileSync(path, bytes)
  const database = new Database(path)
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok')
  database.close()
  const keeper = await openKeeper(path)
  expect(keeper.state().shut).toMatchObject({
    reason: 'damaged',
    sentence: expect.stringContaining('a record of jobs is not what was stored'),
  })
})

test('a record written, changed or taken away past the program is told, and a migration may do so', async () => {
  for (const sql of [
    `UPDATE rooms SET body = json_set(body, '$.name', 'Other')`,
    'UPDATE jobs SET revision = revision + 1',
    'DELETE FROM colours',
  ]) {
    const path = await bookWithOneJob()
    tamper(path, sql)
    expect([sql, changedIn(path)]).toEqual([sql, expect.any(String)])
    const database = new Database(path)
    rebuildSums(database)
    database.close()
    expect(changedIn(path)).toBeNull()
  }
})

test('a migration brings the sums along in its own transaction, so that a process that dies behind it leaves a sound book', async () => {
  const path = await bookWithOneJob()
  const database = new Database(path)
  const sql = `UPDATE rooms SET body = json_set(body, '$.name', 'Other'); ALTER TABLE jobs ADD COLUMN remark TEXT;`
  granted(
    applyMigration(database, migrationOf(migrations.length + 1, 'planted', sql), '2027-03-29T08:00:00Z'),
  )
  expect(findChangedContent(database)).toBeNull()
  database.close()
})
