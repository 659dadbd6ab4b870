import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { diffJobs } from '../../core/project/diff.ts'
import type { Issued, IssuedId } from '../../core/project/issued-records.ts'
import type { Job } from '../../core/project/job.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { granted, openBook, testFolder } from './books.ts'

function given(body: unknown): Issued {
  return { id: 'given' as IssuedId, kind: 'workOrder', issuedAt: '2027-03-20T17:00', body } as Issued
}

function withGiven(job: Job, record: Issued): Job {
  return { ...job, issued: { [record.id]: record } }
}

test('what is given out is checked when it is stored', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  const { job } = granted(book.create(plainJob()))
  const wrong = withGiven(job, given({ version: 2, number: 1, name: 'Work order', size: 'letter', html: 7 }))
  const refused = book.storeEdit('job-1', 1, diffJobs(job, wrong))
  expect(refused).toMatchObject({ ok: false, problem: { kind: 'notValid', path: 'issued.given.body.html' } })
  expect(granted(book.open('job-1')).job.issued).toEqual({})
})

test('what a book holds of before versions, and of a newer program, opens: the one upgraded, the other kept', () => {
  const path = join(testFolder(), 'book.sqlite')
  const first = openBook(path)
  granted(first.create(plainJob()))
  first.close()
  const database = new Database(path)
  const put = database.prepare('INSERT INTO issued (job_key, id, position, body) VALUES (?, ?, ?, ?)')
  const bodies = {
    old: { name: 'Work order', size: 'a4', html: '<p>Study</p>' },
    newer: { version: 9, pages: [{ number: 1 }] },
    strange: ['no', 'fields'],
  }
  for (const [index, [id, body]] of Object.entries(bodies).entries()) {
    const record = { id, kind: 'workOrder', issuedAt: '2027-03-20T17:00', body }
    put.run('job-1', id, index + 1, JSON.stringify(record))
  }
  database.close()
  const book = openBook(path)
  const { issued } = granted(book.open('job-1')).job
  expect(Object.values(issued).map(({ body }) => body)).toEqual([
    { version: 2, number: null, ...bodies.old },
    { version: null, kept: bodies.newer },
    { version: null, kept: bodies.strange },
  ])
  const exported = JSON.parse(granted(book.export('job-1')).text) as { issued: { body: unknown }[] }
  expect(exported.issued.map(({ body }) => body)).toEqual([
    { version: 2, number: null, ...bodies.old },
    bodies.newer,
    bodies.strange,
  ])
})
