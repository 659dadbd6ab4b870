import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import type { Handlers } from '../../core/contract/requests.ts'
import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import { writeJobFile } from '../../core/project/job-file.ts'
import type { Photo, PhotoId } from '../../core/project/photo-records.ts'
import type { RoomId } from '../../core/project/sketch-records.ts'
import { applyCommand } from '../../core/sketch/apply-command.ts'
import type { Keeper } from '../../electron/storage/keeper.ts'
import { pictureHash } from '../../electron/storage/picture-rows.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { quietHandlers } from '../hosts/handler-parts.ts'
import { granted, openKeeper, problemOf, testFolder } from '../storage/books.ts'
import { jpeg } from './small-pictures.ts'

const large = jpeg({ width: 1600, height: 1200 })
const small = jpeg({ width: 480, height: 360 })
const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64')
const [firstRoom] = Object.keys(plainJob().rooms)

function photoOf(id: string): Photo {
  return {
    id: id as PhotoId,
    of: { kind: 'room', roomId: firstRoom as RoomId },
    picture: pictureHash(large),
    small: pictureHash(small),
    stage: 'before',
    note: '',
    keptOn: null,
  }
}

function withPhoto(job: Job): Job {
  return { ...job, photos: { one: photoOf('one') } }
}

async function keepBoth(handlers: Handlers): Promise<void> {
  for (const bytes of [large, small]) {
    expect(granted(await handlers.keepPicture({ base64: base64(bytes) })).hash).toBe(pictureHash(bytes))
  }
}

/** A keeper's book with a job that has one photo. */
async function bookWithPhoto(path = join(testFolder(), 'book.sqlite')) {
  const keeper = await openKeeper(path)
  const handlers = quietHandlers({ keeper })
  await keepBoth(handlers)
  const { jobKey, job } = granted(granted(keeper.store()).create(withPhoto(plainJob())))
  return { path, keeper, handlers, jobKey, job }
}

function isThere(keeper: Keeper): boolean {
  return granted(keeper.store()).picture(pictureHash(large)).ok
}

test('what was kept is read as it was, once for however many photos', async () => {
  const { path, handlers, keeper } = await bookWithPhoto()
  await keepBoth(handlers)
  const read = granted(await handlers.readPicture({ hash: pictureHash(large) }))
  expect(read).toEqual({ mediaType: 'image/jpeg', base64: base64(large) })
  await keeper.close()
  const database = new Database(path, { readonly: true })
  expect(database.prepare('SELECT count(*) FROM pictures').pluck().get()).toBe(2)
  database.close()
})

test('a picture with a place in it, a text and a hash nobody knows are refused in words', async () => {
  const handlers = quietHandlers()
  const telling = base64(jpeg({ width: 4, height: 3, orientation: 6 }))
  expect(await handlers.keepPicture({ base64: telling })).toMatchObject({
    problem: { sentence: expect.stringMatching(/place, device or words/) },
  })
  expect(problemOf(await handlers.keepPicture({ base64: 'bm8gcGljdHVyZQ==' }))).toBe('notValid')
  expect(problemOf(await handlers.readPicture({ hash: 'a'.repeat(64) }))).toBe('notFound')
})

test('a photo taken away keeps its picture for undo, until the book is opened again', async () => {
  const { path, keeper, jobKey, job } = await bookWithPhoto()
  const without = { ...job, photos: {} }
  const store = granted(keeper.store())
  granted(store.storeEdit(jobKey, 1, diffJobs(job, without)))
  expect(isThere(keeper)).toBe(true)
  granted(store.storeEdit(jobKey, 2, diffJobs(without, job)))
  await keeper.close()
  const again = await openKeeper(path)
  expect(isThere(again)).toBe(true)
  granted(granted(again.store()).storeEdit(jobKey, 3, diffJobs(job, without)))
  await again.close()
  expect(isThere(await openKeeper(path))).toBe(false)
})

test('a picture in a paper that was given out stays as long as the paper', async () => {
  const { path, keeper, jobKey, job } = await bookWithPhoto()
  const html = `<img data-picture="${pictureHash(small)}" alt="">`
  const body = { version: 2, number: 1, name: 'Work order', size: 'letter', html } as const
  const paper = { id: 'paper' as never, kind: 'workOrder', issuedAt: '2027-03-29T08:00', body } as const
  const next = { ...job, photos: {}, issued: { paper } }
  granted(granted(keeper.store()).storeEdit(jobKey, 1, diffJobs(job, next)))
  await keeper.close()
  const again = granted((await openKeeper(path)).store())
  expect(again.picture(pictureHash(small)).ok).toBe(true)
  expect(problemOf(again.picture(pictureHash(large)))).toBe('notFound')
})

test('a file takes the pictures to another book, and one that was changed on its way is refused whole', async () => {
  const { handlers, jobKey, job } = await bookWithPhoto()
  const { text, picturesLeftOut } = granted(await handlers.exportJob({ jobKey }))
  expect(picturesLeftOut).toBe(0)
  const other = quietHandlers()
  expect(granted(await other.importJob({ text })).job).toEqual(job)
  expect(granted(await other.readPicture({ hash: pictureHash(large) })).base64).toBe(base64(large))
  const changed = text.replace(base64(large), base64(jpeg({ width: 1600, height: 1201 })))
  const refused = quietHandlers()
  expect(await refused.importJob({ text: changed })).toMatchObject({
    problem: { kind: 'notValid', path: 'pictures[1]', sentence: expect.stringMatching(/damaged on its way/) },
  })
  expect(granted(await refused.listJobs({}))).toEqual([])
})

test('a file without pictures is read, and says of each photo that its picture stayed behind', async () => {
  const handlers = quietHandlers()
  const opened = granted(await handlers.importJob({ text: writeJobFile(withPhoto(plainJob())) }))
  expect(opened.job.photos).toEqual({ one: photoOf('one') })
  expect(await handlers.readPicture({ hash: pictureHash(large) })).toMatchObject({
    problem: { sentence: expect.stringMatching(/stayed behind/) },
  })
})

test('a job brought back from a backup brings its pictures along', async () => {
  const { path, keeper, jobKey } = await bookWithPhoto()
  granted(await keeper.remove(jobKey))
  await keeper.close()
  const again = await openKeeper(path)
  expect(isThere(again)).toBe(false)
  const [backup] = granted(await again.listBackups()).filter(({ jobCount }) => jobCount === 1)
  const handlers = quietHandlers({ keeper: again })
  granted(await handlers.bringJobBack({ name: backup?.name ?? '', jobKey }))
  expect(isThere(again)).toBe(true)
})

test('one byte that turned into another on the disk is told where the picture is asked for', async () => {
  const { path, keeper } = await bookWithPhoto()
  await keeper.close()
  const bytes = readFileSync(path)
  const at = bytes.indexOf(Buffer.from(large))
  bytes[at + 20] = (bytes[at + 20] ?? 0) ^ 1
  writeFileSync(path, bytes)
  const store = granted((await openKeeper(path)).store())
  expect(problemOf(store.picture(pictureHash(large)))).toBe('fileDamaged')
  expect(store.picture(pictureHash(small)).ok).toBe(true)
})

test('photos go with their room and their finding, and too many are refused in words', () => {
  const job = withPhoto(plainJob())
  const removed = applyCommand(job, { kind: 'removeRecord', collection: 'rooms', id: firstRoom ?? '' })
  expect(granted(removed).photos).toEqual({})
  const many = Object.fromEntries(
    Array.from({ length: 60 }, (_, index) => [`p${index}`, photoOf(`p${index}`)]),
  )
  const one = { kind: 'putRecord', collection: 'photos', record: photoOf('last') } as const
  expect(applyCommand({ ...plainJob(), photos: many }, one)).toMatchObject({
    problem: { sentence: expect.stringMatching(/has 61 photos; at most 60 are kept/) },
  })
})

test('a logo stays while a letterhead has it, and goes along into a file, a job brought back and another book', async () => {
  const path = join(testFolder(), 'book.sqlite')
  const keeper = await openKeeper(path)
  const handlers = quietHandlers({ keeper })
  await keepBoth(handlers)
  const logo = pictureHash(small)
  const job = plainJob()
  const lettered = { ...job, business: { ...job.business, logo } }
  const { jobKey } = granted(granted(keeper.store()).create(lettered))
  const { text } = granted(await handlers.exportJob({ jobKey }))
  const there = quietHandlers()
  expect(granted(await there.importJob({ text })).job.business.logo).toBe(logo)
  expect(granted(await there.readPicture({ hash: logo })).base64).toBe(base64(small))
  await keeper.close()
  const again = await openKeeper(path)
  const back = quietHandlers({ keeper: again })
  // The large one was kept and nothing has it; the logo is still there.
  expect([isThere(again), (await back.readPicture({ hash: logo })).ok]).toEqual([false, true])
  const [backup] = granted(await back.listBackups({}))
  granted(await back.deleteJob({ jobKey }))
  await again.close()
  const third = await openKeeper(path)
  const last = quietHandlers({ keeper: third })
  expect((await last.readPicture({ hash: logo })).ok).toBe(false)
  const brought = granted(await last.bringJobBack({ name: backup?.name ?? '', jobKey }))
  expect(brought.job.business.logo).toBe(logo)
  expect(granted(await last.readPicture({ hash: logo })).base64).toBe(base64(small))
})
