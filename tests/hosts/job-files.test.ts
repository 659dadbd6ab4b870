import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { writeJobFile } from '../../core/project/job-file.ts'
import { type JobFiles, jobFilesHere } from '../../electron/handlers/job-files.ts'
import { jobFilesBeside } from '../../electron/handlers/job-files-beside.ts'
import { manyRooms } from '../benchmarks/many-rooms.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'
import { granted, openBook, problemOf, testFolder } from '../storage/books.ts'
import { quietHandlers } from './handler-parts.ts'

const thread = join(import.meta.dirname, '..', '..', 'electron', 'handlers', 'job-files-thread.ts')

test('a job read, stored, opened again and sent out by way of the thread is the same', async () => {
  const path = join(testFolder(), 'book.sqlite')
  const book = openBook(path)
  const text = writeJobFile(everyRecordJob())
  const handlers = quietHandlers({ store: book, jobFiles: jobFilesBeside(thread) })
  const { jobKey, job } = granted(await handlers.importJob({ text }))
  expect(job).toEqual(everyRecordJob())
  book.close()
  const again = quietHandlers({ store: openBook(path), jobFiles: jobFilesBeside(thread) })
  expect(granted(await again.openJob({ jobKey }))).toEqual({ jobKey, job, revision: 1 })
  expect(granted(await again.exportJob({ jobKey })).text).toBe(text)
})

test('while a large job is read, others are answered', async () => {
  const handlers = quietHandlers({ jobFiles: jobFilesBeside(thread) })
  const order: string[] = []
  const large = Promise.resolve(handlers.importJob({ text: writeJobFile(manyRooms(60)) }))
  await Promise.all([
    large.then((made) => order.push(granted(made).jobKey === '' ? '' : 'large job')),
    Promise.resolve(handlers.listJobs({})).then(() => order.push('list')),
    new Promise<void>((resolve) => setTimeout(resolve, 1)).then(() => order.push('timer')),
  ])
  expect(order).toEqual(['list', 'timer', 'large job'])
})

test('between taking a job over from the thread and writing it into the book, others are answered', async () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  const order: string[] = []
  const store: typeof book = {
    ...book,
    add: (prepared, pictures) => {
      order.push('written')
      return book.add(prepared, pictures)
    },
  }
  const read: JobFiles['read'] = (text) => {
    setImmediate(() => order.push('another answered'))
    return jobFilesHere.read(text)
  }
  const handlers = quietHandlers({ store, jobFiles: { ...jobFilesHere, read } })
  granted(await handlers.importJob({ text: writeJobFile(everyRecordJob()) }))
  expect(order).toEqual(['another answered', 'written'])
})

test('a job that is not right is refused as ever, and a job nobody has is not found', async () => {
  const handlers = quietHandlers({ jobFiles: jobFilesBeside(thread) })
  expect(problemOf(await handlers.importJob({ text: '{' }))).toBe('notValid')
  expect(problemOf(await handlers.openJob({ jobKey: 'nobody' }))).toBe('notFound')
  expect(problemOf(await handlers.exportJob({ jobKey: 'nobody' }))).toBe('notFound')
})

test('without the thread, or when it dies, the work is done all the same', async () => {
  const dying = join(testFolder(), 'dying.cjs')
  writeFileSync(
    dying,
    `require('node:worker_threads').parentPort.on('message', () => { throw new Error('dead') })`,
  )
  for (const script of [join(testFolder(), 'missing.cjs'), dying]) {
    const handlers = quietHandlers({ jobFiles: jobFilesBeside(script) })
    const text = writeJobFile(everyRecordJob())
    expect(granted(await handlers.importJob({ text })).job).toEqual(everyRecordJob())
    expect(granted(await handlers.importJob({ text })).job).toEqual(everyRecordJob())
  }
})
