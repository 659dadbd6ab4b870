import { randomBytes } from 'node:crypto'
import {
  closeSync,
  copyFileSync,
  fsyncSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import BetterSqlite3 from 'better-sqlite3'
import type { Job } from '../../core/project/job.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import type { Photo, PhotoId } from '../../core/project/photo-records.ts'
import { createKeeper, type Keeper, keeperTimes } from '../../electron/storage/keeper.ts'
import { readMigrations } from '../../electron/storage/migrations.ts'
import { pictureHash } from '../../electron/storage/picture-rows.ts'
import { jpeg } from '../pictures/small-pictures.ts'

/**
 * Times opening a book with the demonstration house and backing it up, without photos and with 200 of the size the program keeps (350 kB and 40 kB of noise), and what of it
 * is nothing but copying the file. The ratios are those of the rest.
 *   npm run bench:photos
 */
const photoCount = 200
const rounds = 7

function pictureOf(bytes: number): Uint8Array {
  const head = jpeg({ width: 1600, height: 1200 })
  const noise = randomBytes(bytes).map((byte) => (byte === 0xff ? 0 : byte))
  return new Uint8Array(Buffer.concat([head.subarray(0, -2), noise, head.subarray(-2)]))
}

function demoHouse(): Job {
  const read = readJobFile(
    readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', 'old-house.json'), 'utf8'),
  )
  if (!read.ok) throw new Error(read.problem.sentence)
  return read.value
}

async function openedBook(path: string): Promise<Keeper> {
  const keeper = await createKeeper(path, {
    migrations: readMigrations(join(import.meta.dirname, '..', '..', 'migrations')),
    now: () => new Date().toISOString(),
    newJobKey: () => 'job-1',
    ...keeperTimes,
  })
  if (!keeper.ok) throw new Error(keeper.problem.sentence)
  return keeper.value
}

function storeOf(keeper: Keeper) {
  const store = keeper.store()
  if (!store.ok) throw new Error(store.problem.sentence)
  return store.value
}

async function makeBook(path: string, count: number): Promise<void> {
  const keeper = await openedBook(path)
  const store = storeOf(keeper)
  const plain = demoHouse()
  const roomIds = Object.values(plain.rooms).map(({ id }) => id)
  const photos: Record<string, Photo> = {}
  for (let index = 0; index < count; index++) {
    const [large, small] = [pictureOf(350_000), pictureOf(40_000)]
    for (const bytes of [large, small]) {
      const kept = store.keepPicture({ hash: pictureHash(bytes), mediaType: 'image/jpeg', bytes })
      if (!kept.ok) throw new Error(kept.problem.sentence)
    }
    const roomId = roomIds[index % roomIds.length]
    if (roomId === undefined) throw new Error('there are no rooms')
    const id = `photo-${index}` as PhotoId
    photos[id] = {
      ...{ id, of: { kind: 'room', roomId }, stage: 'before', note: '', keptOn: null },
      picture: pictureHash(large),
      small: pictureHash(small),
    }
  }
  const job: Job = { ...plain, photos }
  const created = store.create(job)
  if (!created.ok) throw new Error(created.problem.sentence)
  await keeper.close()
}

interface Times {
  readonly open: number
  readonly backUp: number
  /** Copying the file, as the program does to look it over. */
  readonly copy: number
  /** Copying it by SQLite until the disk has it, as a backup is made. */
  readonly copyToDisk: number
}

async function timesOf(path: string): Promise<Times> {
  const start = performance.now()
  const keeper = await openedBook(path)
  const job = storeOf(keeper).open('job-1')
  const opened = performance.now()
  if (!job.ok) throw new Error(job.problem.sentence)
  await keeper.close()
  const { title } = job.value.job.header
  const again = await openedBook(path)
  const header = { ...job.value.job.header, title: `${title}.`.slice(-60) }
  const edited = storeOf(again).storeEdit('job-1', job.value.revision, {
    header: [job.value.job.header, header],
  })
  if (!edited.ok) throw new Error(edited.problem.sentence)
  const before = performance.now()
  // Closing makes the backup, because something changed.
  await again.close()
  const end = performance.now()
  copyFileSync(path, `${path}.copy`)
  const copied = performance.now()
  rmSync(`${path}.copy`)
  const database = new BetterSqlite3(path)
  const begun = performance.now()
  await database.backup(`${path}.copy`, { progress: () => 1000 })
  const file = openSync(`${path}.copy`, 'r+')
  fsyncSync(file)
  closeSync(file)
  const settled = performance.now()
  database.close()
  return { open: opened - start, backUp: end - before, copy: copied - end, copyToDisk: settled - begun }
}

function middle(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0
}

const folder = mkdtempSync(join(tmpdir(), 'coatwright-bench-'))
const results: Times[] = []
for (const count of [0, photoCount]) {
  const path = join(folder, `${count}.sqlite`)
  await makeBook(path, count)
  const all: Times[] = []
  for (let round = 0; round < rounds; round++) {
    all.push(await timesOf(path))
  }
  const time = (part: keyof Times) => middle(all.map((each) => each[part]))
  const result = {
    open: time('open'),
    backUp: time('backUp'),
    copy: time('copy'),
    copyToDisk: time('copyToDisk'),
  }
  results.push(result)
  const said = Object.entries(result).map(([name, ms]) => `${name} ${ms.toFixed(0)} ms`)
  console.log(`${count} photos, ${(statSync(path).size / 1e6).toFixed(1)} MB: ${said.join(', ')}`)
}
const [without, withPhotos] = results
if (without !== undefined && withPhotos !== undefined) {
  for (const [part, copying] of [
    ['open', 'copy'],
    ['backUp', 'copyToDisk'],
  ] as const) {
    const all = withPhotos[part] / without[part]
    const rest = (withPhotos[part] - withPhotos[copying]) / (without[part] - without[copying])
    console.log(`${part}: ${all.toFixed(2)} times in all, ${rest.toFixed(2)} times apart from copying`)
  }
}
rmSync(folder, { recursive: true, force: true })
