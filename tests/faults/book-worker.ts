/**
 * Run as a process of its own by book-killed.test.ts and book-full.test.ts: works on the book named on the command line in one way, and
 * prints what it was told is done. Ends when it is killed, or with a line that begins with `refused`.
 */
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import { writeJobFile } from '../../core/project/job-file.ts'
import type { Outcome } from '../../core/project/problem.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { createKeeper, type Keeper, keeperTimes } from '../../electron/storage/keeper.ts'
import { type Migration, migrationOf, readMigrations } from '../../electron/storage/migrations.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'

const [mode = '', path = '', first = '0'] = process.argv.slice(2)
const released = readMigrations(join(import.meta.dirname, '..', '..', 'migrations'))
let keys = Number(first)

function say(line: string): Promise<void> {
  return new Promise((resolve) => process.stdout.write(`${line}\n`, () => resolve()))
}

async function done<Value>(outcome: Outcome<Value>): Promise<Value> {
  if (outcome.ok) return outcome.value
  await say(`refused ${outcome.problem.kind}: ${outcome.problem.sentence}`)
  return process.exit(0)
}

async function openKeeper(migrations: readonly Migration[], backUpAfter: number): Promise<Keeper> {
  const keeper = await createKeeper(path, {
    migrations,
    now: () => new Date().toISOString(),
    newJobKey: () => `made-${keys++}`,
    ...keeperTimes,
    backUpAfter,
    foldAfter: 20,
  })
  return done(keeper)
}

/** Renames the one room of the first job for ever; every third edit the log has time to be folded. */
async function edits(backUpAfter: number): Promise<never> {
  const keeper = await openKeeper(released, backUpAfter)
  const store = await done(keeper.store())
  let { job, revision } = await done(store.open('kept'))
  for (;;) {
    const next: Job = {
      ...job,
      rooms: { [roomId]: { ...(job.rooms[roomId] as Room), name: `Study ${revision + 1}` } },
    }
    revision = (await done(store.storeEdit('kept', revision, diffJobs(job, next)))).revision
    job = next
    await say(`${revision}`)
    await pause(revision % 3 === 0 ? 30 : 0)
  }
}

async function imports(): Promise<never> {
  const keeper = await openKeeper(released, keeperTimes.backUpAfter)
  const store = await done(keeper.store())
  for (;;) await say((await done(store.import(writeJobFile(plainJob())))).jobKey)
}

/** A form that no program has: every body is written again, so that the step takes its time. */
async function migrate(): Promise<void> {
  const sql = `UPDATE rooms SET body = json_set(body, '$.name', body ->> '$.name'); ALTER TABLE jobs ADD COLUMN remark TEXT;`
  await say('begun')
  await openKeeper([...released, migrationOf(released.length + 1, 'planted', sql)], keeperTimes.backUpAfter)
  await say('migrated')
}

async function backups(): Promise<never> {
  const keeper = await openKeeper(released, keeperTimes.backUpAfter)
  const store = await done(keeper.store())
  for (;;) {
    const { jobKey } = await done(store.create(plainJob()))
    await say(`made ${jobKey}`)
    await done(await keeper.remove(jobKey))
    await say(`removed ${jobKey}`)
  }
}

/** Goes back and forth between the two backups named on the command line. */
async function restores(): Promise<never> {
  const keeper = await openKeeper(released, keeperTimes.backUpAfter)
  const names = process.argv.slice(5)
  for (let round = 0; ; round++) {
    const name = names[round % names.length] ?? ''
    await say(`going ${name}`)
    await done(await keeper.goBackTo(name))
    await say(`gone ${name}`)
  }
}

async function state(): Promise<void> {
  const keeper = await openKeeper(released, keeperTimes.backUpAfter)
  await say(JSON.stringify(keeper.state()))
}

switch (mode) {
  case 'state':
    await state()
    break
  case 'edits':
    await edits(keeperTimes.backUpAfter)
    break
  case 'editsWithBackups':
    await edits(0)
    break
  case 'imports':
    await imports()
    break
  case 'migrations':
    await migrate()
    break
  case 'backups':
    await backups()
    break
  case 'restores':
    await restores()
    break
}
