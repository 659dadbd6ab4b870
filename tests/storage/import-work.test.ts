import { join } from 'node:path'
import type { Database } from 'better-sqlite3'
import { expect, test } from 'vitest'
import { collectionNames, type Job } from '../../core/project/job.ts'
import type { Colour, ColourId } from '../../core/project/survey-records.ts'
import { prepareJob } from '../../electron/storage/job-bodies.ts'
import { insertJobRows } from '../../electron/storage/job-rows.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { granted, openBook, testFolder } from './books.ts'

function withColours(count: number): Job {
  const colours = Array.from({ length: count }, (_, index): Colour => {
    const id = `colour-${index}` as ColourId
    return { id, name: `Color ${index}`, code: '', depth: 'light', shown: '#aabbcc' }
  })
  return plainJob({ colours: Object.fromEntries(colours.map((each) => [each.id, each])), finishes: {} })
}

/** Counts what a job asks of a database that answers everything with 0: statements made, and looks over a whole table. */
function workOf(job: Job) {
  const work = { prepared: 0, looks: 0, runs: 0 }
  const statement = {
    pluck: () => statement,
    get: () => {
      work.looks++
      return 0
    },
    run: () => {
      work.runs++
    },
  }
  const database = {
    prepare: () => {
      work.prepared++
      return statement
    },
  } as unknown as Database
  insertJobRows(database, 'job-1', granted(prepareJob(job)), '2027-03-29T08:00:00.000Z')
  return work
}

test('ten times the colors write ten times the rows and look over the tables no more often', () => {
  const [few, many] = [workOf(withColours(30)), workOf(withColours(300))]
  expect(many.runs - few.runs).toBe(270)
  expect([many.prepared, many.looks]).toEqual([few.prepared, few.looks])
  expect(few.looks).toBeLessThanOrEqual(collectionNames.length)
})

test('records keep the order of the file through the book', () => {
  const path = join(testFolder(), 'book.sqlite')
  const job = withColours(25)
  const book = openBook(path)
  granted(book.create(job))
  book.close()
  expect(Object.keys(granted(openBook(path).open('job-1')).job.colours)).toEqual(Object.keys(job.colours))
})
