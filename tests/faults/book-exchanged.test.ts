import {
  copyFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { backupFolder, logOf } from '../../electron/storage/book-files.ts'
import type { Keeper } from '../../electron/storage/keeper.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'
import { bookWithOneJob } from '../storage/book-states.ts'
import { granted, handClock, openKeeper } from '../storage/books.ts'

let exchanged = 0
afterAll(() =>
  console.log(`Files exchanged while running: ${exchanged}, each noticed before the next edit, 0 edits lost`),
)

function titlesOf(keeper: Keeper): readonly string[] {
  return granted(granted(keeper.store()).list())
    .map(({ title }) => title)
    .sort()
}

function namedJob(title: string): Job {
  const job = plainJob()
  return { ...job, header: { ...job.header, title } }
}

function renamed(job: Job, name: string): Job {
  return { ...job, rooms: { ...job.rooms, [roomId]: { ...(job.rooms[roomId] as Room), name } } }
}

async function backupsOf(keeper: Keeper, kind: string) {
  return granted(await keeper.listBackups()).filter((backup) => backup.kind === kind)
}

/** Until what was begun in the background is done. */
async function settled(keeper: Keeper): Promise<void> {
  await keeper.lookInto('none')
}

const exchanges: Readonly<Record<string, (path: string, other: string) => void>> = {
  'another file moved over it': (path, other) => {
    const copy = `${path}.copy`
    copyFileSync(other, copy)
    renameSync(copy, path)
  },
  'another file copied into it': (path, other) => copyFileSync(other, path),
  'a backup copied into it': (path) => {
    const [name = ''] = readdirSync(backupFolder(path)).sort()
    copyFileSync(join(backupFolder(path), name), path)
  },
  'its bytes emptied': (path) => writeFileSync(path, ''),
  'the file taken away': (path) => rmSync(path),
  'the log taken away': (path) => rmSync(logOf(path)),
  'another log put beside it': (path) => writeFileSync(logOf(path), Buffer.alloc(9000, 7)),
}

for (const [how, exchange] of Object.entries(exchanges)) {
  test(`${how} while the program runs: noticed before the next edit is stored, and what was stored can be had again`, async () => {
    const path = await bookWithOneJob('Before')
    const other = await bookWithOneJob('Somebody else’s')
    const { now } = handClock()
    const keeper = await openKeeper(path, { now })
    const store = granted(keeper.store())
    const made = granted(store.create(namedJob('Of this session')))
    const second = renamed(made.job, 'Library')
    granted(store.storeEdit(made.jobKey, made.revision, diffJobs(made.job, second)))
    exchange(path, other)
    const there = existsSync(path) ? readFileSync(path) : null
    const third = renamed(second, 'Nursery')
    const edit = diffJobs(second, third)
    const refused = store.storeEdit(made.jobKey, made.revision + 1, edit)
    expect(refused).toMatchObject({ ok: false, problem: { kind: 'bookShut' } })
    await settled(keeper)
    expect(keeper.state().shut).toMatchObject({
      reason: 'exchanged',
      sentence: expect.stringContaining('what you have on the page stays there'),
    })
    expect(existsSync(path) ? readFileSync(path) : null).toEqual(there)
    const [kept] = await backupsOf(keeper, 'exchanged')
    granted(await keeper.goBackTo(kept?.name ?? ''))
    expect(titlesOf(keeper)).toEqual(['Before', 'Of this session'])
    const opened = granted(granted(keeper.store()).open(made.jobKey))
    expect(opened).toMatchObject({ job: second, revision: made.revision + 1 })
    granted(granted(keeper.store()).storeEdit(made.jobKey, opened.revision, edit))
    if (there !== null) expect(await backupsOf(keeper, 'setAside')).toHaveLength(1)
    exchanged++
  })
}
