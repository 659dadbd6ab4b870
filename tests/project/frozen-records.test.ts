import { join } from 'node:path'
import Database from 'better-sqlite3'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Dealing, DealingId } from '../../core/project/agreement-records.ts'
import { diffJobs } from '../../core/project/diff.ts'
import type { Issued, IssuedId } from '../../core/project/issued-records.ts'
import type { Job } from '../../core/project/job.ts'
import { applyCommand } from '../../core/sketch/apply-command.ts'
import type { Cents } from '../../core/units/money.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import { granted, openBook, testFolder } from '../storage/books.ts'

const cents = (value: number) => value as Cents
const dealingId = (text: string) => text as DealingId

const invoicePage: Issued = {
  id: 'paper-1' as IssuedId,
  kind: 'forClient',
  issuedAt: '2027-03-20T17:00',
  body: { version: 2, number: 1, name: 'Invoice 1', size: 'letter', html: '<p>Invoice 1: $100.00</p>' },
}
const payment: Dealing = {
  id: dealingId('paid-1'),
  kind: 'paid',
  on: '2027-03-21',
  cents: cents(10_000),
  how: 'check',
  note: '',
}
const given: Job = plainJob({
  issued: { [invoicePage.id]: invoicePage },
  dealings: { [payment.id]: payment },
})

function rowsOf(path: string): readonly unknown[] {
  const database = new Database(path, { readonly: true })
  const rows = [
    ...database.prepare('SELECT body FROM issued').pluck().all(),
    ...database.prepare('SELECT body FROM dealings').pluck().all(),
  ]
  database.close()
  return rows
}

test('what was issued does not change by a byte, whatever becomes of the job', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          title: fc.string({ minLength: 1, maxLength: 40 }),
          wage: fc.integer({ min: 0, max: 9000 }),
        }),
        {
          minLength: 1,
          maxLength: 4,
        },
      ),
      (edits) => {
        const path = join(testFolder(), 'book.sqlite')
        const first = openBook(path)
        granted(first.create(given))
        first.close()
        const before = rowsOf(path)
        const book = openBook(path)
        edits.forEach(({ title, wage }, index) => {
          const { job } = granted(book.open('job-1'))
          const ada = job.crew.ada
          if (ada === undefined) throw new Error('Ada is on the crew')
          const next = {
            ...job,
            header: { ...job.header, title },
            crew: { ...job.crew, ada: { ...ada, wageCents: cents(wage) } },
          }
          granted(book.storeEdit('job-1', index + 1, diffJobs(job, next)))
        })
        book.close()
        expect(rowsOf(path)).toEqual(before)
      },
    ),
    { numRuns: 5 },
  )
})

test('a page that was given out and a payment written down cannot become another one', () => {
  const book = openBook(join(testFolder(), 'book.sqlite'))
  granted(book.create(given))
  const { job } = granted(book.open('job-1'))
  const other = { ...invoicePage, body: { ...invoicePage.body, html: '<p>Invoice 1: $900.00</p>' } } as Issued
  const changes: readonly Job[] = [
    { ...job, issued: { [other.id]: other } },
    { ...job, dealings: { [payment.id]: { ...payment, cents: cents(1) } } },
  ]
  for (const changed of changes) {
    const refused = book.storeEdit('job-1', 1, diffJobs(job, changed))
    expect(refused).toMatchObject({ ok: false, problem: { kind: 'notAllowed' } })
  }
  expect(granted(book.open('job-1')).job).toEqual(given)
  for (const command of [
    { kind: 'putRecord', collection: 'issued', record: other },
    { kind: 'putRecord', collection: 'dealings', record: { ...payment, cents: cents(1) } },
  ] as const) {
    expect(applyCommand(given, command)).toMatchObject({ ok: false, problem: { kind: 'notAllowed' } })
  }
})

test('an entry made by mistake can be taken back, one that others answer cannot', () => {
  const { dealings: _gone, ...rest } = given
  expect(applyCommand(given, { kind: 'removeRecord', collection: 'dealings', id: payment.id })).toMatchObject(
    {
      ok: true,
      value: { ...rest, dealings: {} },
    },
  )
  const accepted = {
    id: dealingId('yes'),
    kind: 'accepted',
    on: '2027-03-02',
    quoteId: dealingId('none'),
    by: 'A. Client',
    optionIds: [],
    together: { beforeTaxCents: cents(0), taxCents: cents(0) },
    counted: { beforeTaxCents: cents(0), taxCents: cents(0) },
  } as const
  expect(applyCommand(given, { kind: 'putRecord', collection: 'dealings', record: accepted })).toMatchObject({
    ok: false,
    problem: { kind: 'danglingReference' },
  })
})
