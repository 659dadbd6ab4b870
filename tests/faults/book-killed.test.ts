import { copyFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { backupFolder } from '../../electron/storage/book-files.ts'
import type { Keeper } from '../../electron/storage/keeper.ts'
import { migrationOf } from '../../electron/storage/migrations.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'
import { granted, migrations, openKeeper, testFolder } from '../storage/books.ts'
import { killAfter, rounds, seededNumbers, startWorker } from './book-process.ts'

const counts: string[] = []
afterAll(() => console.log(`kill -9: ${counts.join('; ')}`))

const random = seededNumbers(20_270_329)

/** A closed book with the job `kept` and one backup, ready for a worker. */
async function bookWithKeptJob(): Promise<string> {
  const path = join(testFolder(), 'book.sqlite')
  const keeper = await openKeeper(path, { newJobKey: () => 'kept', now: () => new Date().toISOString() })
  granted(granted(keeper.store()).create(plainJob()))
  await keeper.close()
  return path
}

function reopen(path: string): Promise<Keeper> {
  return openKeeper(path, { now: () => new Date().toISOString() })
}

function halvesOf(path: string): readonly string[] {
  return readdirSync(backupFolder(path)).filter((name) => name.includes('.half') || name.startsWith('look-'))
}

async function backupsAreWhole(keeper: Keeper): Promise<number> {
  const backups = granted(await keeper.listBackups())
  for (const { name } of backups) granted(await keeper.lookInto(name))
  return backups.length
}

for (const mode of ['edits', 'editsWithBackups'] as const) {
  test(`killed during ${mode}: every edit it was told is stored is there`, { timeout: 240_000 }, async () => {
    const path = await bookWithKeptJob()
    let told = 0
    let acknowledged = 0
    for (let round = 0; round < rounds(6); round++) {
      const said = await killAfter(startWorker([mode, path]), 1 + Math.floor(random() * 25), random() * 12)
      acknowledged += said.length
      told = Number(said.at(-1) ?? told)
      const keeper = await reopen(path)
      expect(keeper.state()).toMatchObject({ shut: null, warnings: [] })
      const { job, revision } = granted(granted(keeper.store()).open('kept'))
      expect(revision).toBeGreaterThanOrEqual(told)
      expect(job.rooms[roomId]?.name).toBe(`Study ${revision}`)
      await backupsAreWhole(keeper)
      await keeper.close()
      expect(halvesOf(path)).toEqual([])
    }
    counts.push(`${mode} ${rounds(6)} times, ${acknowledged} acknowledged, 0 lost`)
  })
}

test('killed during imports: every job it was told of is there and whole', { timeout: 240_000 }, async () => {
  const path = await bookWithKeptJob()
  const told: string[] = []
  for (let round = 0; round < rounds(5); round++) {
    const worker = startWorker(['imports', path, String(10_000 * (round + 1))])
    told.push(...(await killAfter(worker, 1 + Math.floor(random() * 12), random() * 15)))
    const keeper = await reopen(path)
    const store = granted(keeper.store())
    for (const jobKey of told) expect(granted(store.open(jobKey)).job).toEqual(plainJob())
    await keeper.close()
  }
  counts.push(`imports ${rounds(5)} times, ${told.length} acknowledged, 0 lost`)
})

test('killed during a migration: the book is of the old or of the new form, whole either way', {
  timeout: 240_000,
}, async () => {
  const whole = await bookWithKeptJob()
  const seen = { old: 0, new: 0 }
  const sql = `UPDATE rooms SET body = json_set(body, '$.name', body ->> '$.name'); ALTER TABLE jobs ADD COLUMN remark TEXT;`
  const steps = [...migrations, migrationOf(migrations.length + 1, 'planted', sql)]
  for (let round = 0; round < rounds(6); round++) {
    const path = join(testFolder(), 'book.sqlite')
    copyFileSync(whole, path)
    const said = await killAfter(startWorker(['migrations', path]), 1, random() * 400)
    const first = await reopen(path)
    const { shut } = first.state()
    expect([undefined, 'newer']).toContain(shut?.reason)
    const isOld = shut === null
    await first.close()
    seen[isOld ? 'old' : 'new']++
    if (said.includes('migrated')) expect(isOld).toBe(false)
    const keeper = await openKeeper(path, {
      now: () => new Date().toISOString(),
      migrations: isOld ? migrations : steps,
    })
    expect(keeper.state().shut, isOld ? 'old' : 'new').toBe(null)
    expect(granted(granted(keeper.store()).open('kept')).job).toEqual(plainJob())
    await backupsAreWhole(keeper)
    await keeper.close()
  }
  counts.push(
    `migrations ${rounds(6)} times, ${seen.old} of the old form and ${seen.new} of the new one after, 0 damaged`,
  )
})

test('killed while jobs are backed up and removed: what it was told of holds, and a removed job is in a backup', {
  timeout: 240_000,
}, async () => {
  const path = await bookWithKeptJob()
  let removals = 0
  for (let round = 0; round < rounds(5); round++) {
    const worker = startWorker(['backups', path, String(10_000 * (round + 1))])
    const said = await killAfter(worker, 2 + Math.floor(random() * 6), random() * 40)
    const keeper = await reopen(path)
    const inBook = granted(granted(keeper.store()).list()).map(({ jobKey }) => jobKey)
    const backups = granted(await keeper.listBackups())
    const inBackups = new Set<string>()
    for (const { name } of backups) {
      for (const { jobKey } of granted(await keeper.lookInto(name))) inBackups.add(jobKey)
    }
    for (const line of said) {
      const [action, jobKey = ''] = line.split(' ')
      if (action === 'removed') expect(inBook).not.toContain(jobKey)
      expect(inBook.includes(jobKey) || inBackups.has(jobKey)).toBe(true)
    }
    removals += said.filter((line) => line.startsWith('removed')).length
    expect(inBook).toContain('kept')
    await keeper.close()
  }
  counts.push(`backups and removals ${rounds(5)} times, ${removals} acknowledged, 0 lost`)
})

test('killed while it goes back to a backup: one book or the other opens, or the page asks and both can be had', {
  timeout: 240_000,
}, async () => {
  const path = await bookWithKeptJob()
  const keeper = await reopen(path)
  granted(
    granted(keeper.store()).create({ ...plainJob(), header: { ...plainJob().header, title: 'Second' } }),
  )
  await keeper.close()
  const works = readdirSync(backupFolder(path))
    .filter((name) => name.startsWith('work-'))
    .sort()
  expect(works).toHaveLength(2)
  const seen = { first: 0, second: 0, asked: 0 }
  for (let round = 0; round < rounds(8); round++) {
    const said = await killAfter(
      startWorker(['restores', path, '0', ...works]),
      1 + Math.floor(random() * 5),
      random() * 50,
    )
    expect(said[0]).toMatch(/^going/)
    const after = await reopen(path)
    if (after.state().shut !== null) {
      expect(after.state().shut?.reason).toBe('missing')
      seen.asked++
      granted(await after.goBackTo(works[1] ?? ''))
    }
    const titles = granted(granted(after.store()).list()).map(({ title }) => title)
    seen[titles.length === 1 ? 'first' : 'second']++
    expect([...titles].sort()).toEqual(
      titles.length === 1 ? ['One plain room'] : ['One plain room', 'Second'],
    )
    await backupsAreWhole(after)
    await after.close()
  }
  counts.push(
    `restores ${rounds(8)} times, ${seen.first} with the one and ${seen.second} with the other book after, ${seen.asked} of them asked first, 0 lost`,
  )
})
