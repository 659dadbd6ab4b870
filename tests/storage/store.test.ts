import { join } from 'node:path'
import { expect, test } from 'vitest'
import { applyDiff, diffJobs, reverseDiff } from '../../core/project/diff.ts'
import { emptyJob } from '../../core/project/empty-job.ts'
import { collectionNames, type Job, recordSchemas } from '../../core/project/job.ts'
import type { Room, RoomId } from '../../core/project/sketch-records.ts'
import type { ColourId } from '../../core/project/survey-records.ts'
import { feet } from '../../core/units/length.ts'
import { tableNames } from '../../electron/storage/collections.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'
import { linen, plainJob, roomId } from '../fixtures/plain-room.ts'
import { granted, openBook, problemOf, testFolder } from './books.ts'

function renamed(job: Job, name: string): Job {
  const room = job.rooms[roomId] as Room
  return { ...job, rooms: { ...job.rooms, [roomId]: { ...room, name } } }
}

function withSecondRoom(job: Job): Job {
  const room = job.rooms[roomId] as Room
  const corners = room.corners.map((corner) => ({ ...corner, x: (corner.x + feet(20)) as typeof corner.x }))
  const second: Room = { ...room, id: 'nursery' as RoomId, name: 'Nursery', corners }
  return { ...job, rooms: { ...job.rooms, [second.id]: second } }
}

test('a created job comes back exactly, from memory and after reopening', () => {
  const path = join(testFolder(), 'book.sqlite')
  const first = openBook(path)
  const created = granted(first.create(plainJob()))
  expect(created).toMatchObject({ jobKey: 'job-1', revision: 1 })
  expect(created.job).toEqual(plainJob())
  expect(granted(first.open('job-1')).job).toEqual(plainJob())
  first.close()
  expect(granted(openBook(path).open('job-1')).job).toEqual(plainJob())
})

test('a job with records of every kind comes back exactly, by the book and by its file', () => {
  const path = join(testFolder(), 'book.sqlite')
  const job = everyRecordJob()
  const empty = collectionNames.filter((name) => Object.keys(job[name]).length === 0)
  expect(empty).toEqual([])
  const book = openBook(path)
  granted(book.create(job))
  const { text } = granted(book.export('job-1'))
  expect(granted(book.import(text)).job).toEqual(job)
  book.close()
  const reopened = openBook(path)
  expect(granted(reopened.open('job-1')).job).toEqual(job)
  expect(granted(reopened.open('job-2')).job).toEqual(job)
})

test('a job can be emptied by one edit and filled again by its reverse, whatever points at what', () => {
  const path = join(testFolder(), 'book.sqlite')
  const book = openBook(path)
  const full = granted(book.create(everyRecordJob())).job
  const bare: Job = emptyJob(full.header, { ...full, colours: {} }, [])
  const diff = diffJobs(full, bare)
  granted(book.storeEdit('job-1', 1, diff))
  expect(granted(book.open('job-1')).job).toEqual(bare)
  granted(book.storeEdit('job-1', 2, reverseDiff(diff)))
  book.close()
  expect(granted(openBook(path).open('job-1')).job).toEqual(full)
})

test('the list shows the job edited last first, with its rooms counted', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  const first = granted(book.create(plainJob()))
  granted(book.create(plainJob()))
  const next = withSecondRoom(first.job)
  granted(book.storeEdit('job-1', 1, diffJobs(first.job, next)))
  expect(granted(book.list()).map(({ jobKey, roomCount }) => ({ jobKey, roomCount }))).toEqual([
    { jobKey: 'job-1', roomCount: 2 },
    { jobKey: 'job-2', roomCount: 1 },
  ])
})

test('edits add, update, remove and change the header, and reopening shows the same in the same order', () => {
  const path = join(testFolder(), 'book.sqlite')
  const book = openBook(path)
  const start = granted(book.create(plainJob())).job
  const second = withSecondRoom(start)
  const third = renamed({ ...second, header: { ...second.header, client: 'Somebody else' } }, 'Library')
  const fourth = { ...third, colours: {} }
  expect(granted(book.storeEdit('job-1', 1, diffJobs(start, second)))).toEqual({ revision: 2 })
  expect(granted(book.storeEdit('job-1', 2, diffJobs(second, third)))).toEqual({ revision: 3 })
  expect(granted(book.storeEdit('job-1', 3, diffJobs(third, fourth)))).toEqual({ revision: 4 })
  expect(granted(book.open('job-1')).job).toEqual(fourth)
  book.close()
  const reopened = granted(openBook(path).open('job-1'))
  expect(reopened).toEqual({ jobKey: 'job-1', revision: 4, job: fourth })
  expect(Object.keys(reopened.job.rooms)).toEqual([roomId, 'nursery'])
})

test('the reversed edit takes an edit back', () => {
  const path = join(testFolder(), 'book.sqlite')
  const book = openBook(path)
  const start = granted(book.create(plainJob())).job
  const diff = diffJobs(start, withSecondRoom(start))
  granted(book.storeEdit('job-1', 1, diff))
  granted(book.storeEdit('job-1', 2, reverseDiff(diff)))
  book.close()
  expect(granted(openBook(path).open('job-1')).job).toEqual(plainJob())
})

test('a removal taken back puts the record where it was, in memory and in the book', () => {
  const path = join(testFolder(), 'book.sqlite')
  const book = openBook(path)
  const start = granted(book.create(plainJob())).job
  const names = ['oat', 'linen', 'slate', 'sage']
  const colours = Object.fromEntries(names.map((id) => [id, { ...linen, id: id as ColourId }]))
  const full = { ...start, colours }
  granted(book.storeEdit('job-1', 1, diffJobs(start, full)))
  const { linen: _, ...without } = colours
  const removal = diffJobs(full, { ...full, colours: without })
  granted(book.storeEdit('job-1', 2, removal))
  granted(book.storeEdit('job-1', 3, reverseDiff(removal)))
  expect(Object.keys(applyDiff(applyDiff(full, removal), reverseDiff(removal)).colours)).toEqual(names)
  granted(book.storeEdit('job-1', 4, removal))
  expect(Object.keys(granted(book.open('job-1')).job.colours)).toEqual(['oat', 'slate', 'sage'])
  granted(book.storeEdit('job-1', 5, reverseDiff(removal)))
  book.close()
  expect(Object.keys(granted(openBook(path).open('job-1')).job.colours)).toEqual(names)
})

test('an order of records that is none is refused', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  granted(book.create(plainJob()))
  const wrong = { colours: { added: [], updated: [], removed: [], order: [['a'], [1]] } }
  expect(problemOf(book.storeEdit('job-1', 1, wrong as never))).toBe('notValid')
})

test('an edit made to an older state of the job is refused and changes nothing', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  const start = granted(book.create(plainJob())).job
  const inOneTab = renamed(start, 'Library')
  granted(book.storeEdit('job-1', 1, diffJobs(start, inOneTab)))
  const inAnother = diffJobs(start, renamed(start, 'Nursery'))
  expect(problemOf(book.storeEdit('job-1', 1, inAnother))).toBe('staleEdit')
  expect(granted(book.open('job-1'))).toMatchObject({ revision: 2, job: inOneTab })
})

test('a record that breaks its form refuses the whole edit and names the place', () => {
  const path = join(testFolder(), 'book.sqlite')
  const book = openBook(path)
  const start = granted(book.create(plainJob())).job
  const room = start.rooms[roomId] as Room
  const broken = {
    ...withSecondRoom(start),
    colours: { ...start.colours, red: { ...linen, id: 'red' as ColourId, shown: 'red' } },
  }
  const refused = book.storeEdit('job-1', 1, diffJobs(start, broken))
  expect(refused).toMatchObject({ ok: false, problem: { kind: 'notValid', path: 'colours.red.shown' } })
  const tooHigh = { ...room, ceiling: { kind: 'flat', height: Number.NaN } } as unknown as Room
  const notANumber = diffJobs(start, { ...start, rooms: { [roomId]: tooHigh } })
  expect(problemOf(book.storeEdit('job-1', 1, notANumber))).toBe('notValid')
  book.close()
  expect(granted(openBook(path).open('job-1'))).toMatchObject({ revision: 1, job: plainJob() })
})

test('an edit whose records are sound but whose job is not is refused', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  const start = granted(book.create(plainJob())).job
  const homeless = { ...start, storeys: {} }
  const refused = book.storeEdit('job-1', 1, diffJobs(start, homeless))
  expect(refused.ok).toBe(false)
  expect(granted(book.open('job-1')).job).toEqual(start)
})

test('adding what is there, and touching what is not, are refused', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  granted(book.create(plainJob()))
  const edit = (part: object) => book.storeEdit('job-1', 1, { colours: part } as never)
  expect(problemOf(edit({ added: [linen], updated: [], removed: [] }))).toBe('duplicateId')
  const twice = { ...linen, id: 'chalk' }
  expect(problemOf(edit({ added: [twice, twice], updated: [], removed: [] }))).toBe('duplicateId')
  expect(problemOf(edit({ added: [], updated: [[twice, twice]], removed: [] }))).toBe('notFound')
  expect(problemOf(edit({ added: [], updated: [], removed: [twice] }))).toBe('notFound')
})

test('an edit that is no edit is refused with the place', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  granted(book.create(plainJob()))
  const places = [null, { walls: {} }, { rooms: [] }, { rooms: { added: [] } }, { header: 'x' }].map(
    (diff) => {
      const refused = book.storeEdit('job-1', 1, diff as never)
      return refused.ok ? 'stored' : `${refused.problem.kind} ${refused.problem.path}`
    },
  )
  expect(places).toEqual([
    'notValid diff',
    'notValid diff.walls',
    'notValid diff.rooms',
    'notValid diff.rooms',
    'notValid diff.header',
  ])
})

test('a job the book does not have is not found', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  expect(problemOf(book.open('job-9'))).toBe('notFound')
  expect(problemOf(book.storeEdit('job-9', 1, {}))).toBe('notFound')
  expect(problemOf(book.delete('job-9'))).toBe('notFound')
  expect(problemOf(book.export('job-9'))).toBe('notFound')
})

test('a deleted job is gone with all its records, and the others stay', () => {
  const path = join(testFolder(), 'book.sqlite')
  const book = openBook(path)
  granted(book.create(plainJob()))
  granted(book.create(plainJob()))
  granted(book.delete('job-1'))
  expect(problemOf(book.open('job-1'))).toBe('notFound')
  book.close()
  const reopened = openBook(path)
  expect(granted(reopened.list()).map((job) => job.jobKey)).toEqual(['job-2'])
  expect(granted(reopened.open('job-2')).job).toEqual(plainJob())
})

test('an exported job imports as an equal job under a new key', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  granted(book.create(plainJob()))
  const { fileName, text } = granted(book.export('job-1'))
  expect(fileName).toBe('one-plain-room.json')
  expect(granted(book.import(text))).toEqual({ jobKey: 'job-2', revision: 1, job: plainJob() })
})

test('text that is not a job file leaves the book as it was', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  expect(problemOf(book.import('{"format":"something else"}'))).toBe('notValid')
  expect(problemOf(book.import('not JSON'))).toBe('notValid')
  expect(granted(book.list())).toEqual([])
})

test('every collection of a job has a table of its own', () => {
  expect(Object.keys(tableNames)).toEqual(Object.keys(recordSchemas))
  expect(new Set(Object.values(tableNames)).size).toBe(Object.keys(recordSchemas).length)
})
