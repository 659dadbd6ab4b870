import { join } from 'node:path'
import { expect, test } from 'vitest'
import { requestNames } from '../../core/contract/requests.ts'
import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import { writeJobFile } from '../../core/project/job-file.ts'
import { machineMoment } from '../../core/time/site-moment.ts'
import { holidaysAhead } from '../../core/time/usual-holidays.ts'
import { answerRequest } from '../../electron/handlers/answer.ts'
import { bookPath } from '../../electron/handlers/program-files.ts'
import { portOf } from '../../electron/loopback/loopback.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'
import { granted, openBook, problemOf, testFolder } from '../storage/books.ts'
import { quietHandlers, quietHost } from './handler-parts.ts'

test('a job goes through every request of its life', async () => {
  const handlers = quietHandlers()
  const made = granted(await handlers.createJob({ title: 'Corner house', unitSystem: 'metric' }))
  const next = { ...made.job, header: { ...made.job.header, client: 'A neighbour' } }
  const edit = { jobKey: made.jobKey, revision: made.revision, diff: diffJobs(made.job, next) }
  expect(granted(await handlers.storeEdit(edit))).toEqual({ revision: 2 })
  expect(granted(await handlers.openJob({ jobKey: made.jobKey })).job).toEqual(next)
  const file = granted(await handlers.exportJob({ jobKey: made.jobKey }))
  expect(file.fileName).toBe('corner-house.json')
  expect(granted(await handlers.importJob({ text: file.text })).job).toEqual(next)
  expect(granted(await handlers.listJobs({}))).toHaveLength(2)
  granted(await handlers.deleteJob({ jobKey: made.jobKey }))
  expect(granted(await handlers.listJobs({}))).toHaveLength(1)
})

test('an empty book begins with the neutral shop, and a new job has its copy, without anybody of the demonstration', async () => {
  const handlers = quietHandlers()
  const shop = granted(await handlers.openShop({}))
  expect(shop.job.business.assumed).toContain('money')
  expect(granted(await handlers.listJobs({}))).toEqual([])
  const business = { ...shop.job.business, name: 'Our shop', assumed: [] }
  const edit = { jobKey: shop.jobKey, revision: 1, diff: diffJobs(shop.job, { ...shop.job, business }) }
  granted(await handlers.storeEdit(edit))
  const { job } = granted(await handlers.createJob({ title: 'Next one', unitSystem: 'imperial' }))
  expect(job.business).toEqual(business)
  expect(Object.keys(job.crew)).toEqual(['painter'])
  // The usual holidays of the country, and nothing of the demonstration's year.
  const ahead = holidaysAhead(job.header.startsOn).map(({ date }) => date)
  expect(job.houseRules.holidays).toEqual(ahead)
  const metric = granted(await handlers.createJob({ title: 'Elsewhere', unitSystem: 'metric' }))
  expect(metric.job.houseRules.holidays).toEqual([])
  expect(problemOf(await handlers.deleteJob({ jobKey: shop.jobKey }))).toBe('notAllowed')
})

test('a number is given once, kind by kind', async () => {
  const handlers = quietHandlers()
  const numbers = []
  for (const of of ['proposal', 'proposal', 'invoice'] as const) {
    numbers.push(granted(await handlers.takeNumber({ of })).number)
  }
  expect(numbers).toEqual([1, 2, 1])
})

test('a duplicate is a job of its own, without what was given out and done', async () => {
  const handlers = quietHandlers()
  const first = granted(await handlers.importJob({ text: writeJobFile(everyRecordJob()) }))
  const { job, jobKey } = granted(await handlers.duplicateJob({ jobKey: first.jobKey }))
  expect(jobKey).not.toBe(first.jobKey)
  expect(job.header).toMatchObject({ title: 'Copy of One plain room', proposalNumber: null })
  expect(job.header.id).not.toBe(first.job.header.id)
  expect(job).toMatchObject({ rooms: first.job.rooms, pins: {}, marks: {}, issued: {} })
})

test('a new job starts today, with one storey and nothing drawn, in the units asked for', async () => {
  const { job } = granted(await quietHandlers().createJob({ title: 'Corner house', unitSystem: 'metric' }))
  expect(job.header).toMatchObject({
    title: 'Corner house',
    unitSystem: 'metric',
    startsOn: '2027-03-29',
    timeZone: 'America/New_York',
    yearBuilt: null,
  })
  expect(Object.keys(job.storeys)).toHaveLength(1)
  expect(job.rooms).toEqual({})
})

test('a book with jobs and no shop sheet begins one with the lists of the job worked on last, and later changes to one leave the other', async () => {
  const handlers = quietHandlers()
  const first = granted(await handlers.openDemo({}))
  const raised = {
    ...first.job,
    houseRules: {
      ...first.job.houseRules,
      price: { ...first.job.houseRules.price, overheadPercent: 17 },
    },
  }
  const edit = { jobKey: first.jobKey, revision: 1, diff: diffJobs(first.job, raised) }
  granted(await handlers.storeEdit(edit))
  const second = granted(await handlers.createJob({ title: 'Next one', unitSystem: 'imperial' }))
  expect(second.job.houseRules.price.overheadPercent).toBe(17)
  expect(second.job.products).toEqual(first.job.products)
  granted(await handlers.storeEdit({ ...edit, revision: 2, diff: diffJobs(raised, first.job) }))
  const opened = granted(await handlers.openJob({ jobKey: second.jobKey }))
  expect(opened.job.houseRules.price.overheadPercent).toBe(17)
})

test('no switch and no number of a safety rule goes into the next job; those of other rules do', async () => {
  const handlers = quietHandlers()
  const first = granted(await handlers.openDemo({}))
  const reason = {
    testedBy: 'I. Spector',
    reportNumber: 'R-7',
    testedOn: '2027-02-03',
    found: 'No lead found.',
  }
  const settings = [
    { id: 'lead-safe', on: true, numbers: { interiorSquareFeet: 2, earlierSquareFeet: 3 } },
    { id: 'asbestos-suspicion', on: false, numbers: {}, leftOut: reason },
    { id: 'dust-down', on: false, numbers: {} },
  ]
  const rules = Object.fromEntries(settings.map((each) => [each.id, each])) as Job['rules']
  const diff = diffJobs(first.job, { ...first.job, rules })
  granted(await handlers.storeEdit({ jobKey: first.jobKey, revision: 1, diff }))
  expect(granted(await handlers.openJob({ jobKey: first.jobKey })).job.rules).toEqual(rules)
  const next = granted(await handlers.createJob({ title: 'Next one', unitSystem: 'imperial' }))
  expect(next.job.rules).toEqual({ 'dust-down': settings[2] })
})

test('every request refuses an argument of another shape, as data', async () => {
  const handlers = quietHandlers()
  for (const name of requestNames) {
    for (const argument of [undefined, null, 'text', [], { stranger: 1 }]) {
      expect([name, problemOf(await answerRequest(handlers, name, argument))]).toEqual([name, 'notValid'])
    }
  }
})

test('a request nobody knows is refused, the names every object has among them', async () => {
  const handlers = quietHandlers()
  for (const name of ['dropTables', 'constructor', '__proto__', 'toString', '', 7, undefined]) {
    expect(problemOf(await answerRequest(handlers, name, {}))).toBe('notAllowed')
  }
})

test('what a host throws comes back as data', async () => {
  const host = { ...quietHost, savePdf: () => Promise.reject(new Error('out of paper')) }
  const answer = await answerRequest(quietHandlers({ host }), 'savePdf', {
    fileName: 'a.pdf',
    html: '<p>',
    paper: 'a4',
  })
  expect(answer).toMatchObject({ ok: false, problem: { kind: 'hostFailed' } })
  expect(answer.ok ? '' : answer.problem.sentence).toContain('out of paper')
})

test('a closed book answers with a problem, not with an exception', async () => {
  const store = openBook(join(testFolder(), 'book.sqlite'))
  const handlers = quietHandlers({ store })
  store.close()
  expect(problemOf(await answerRequest(handlers, 'listJobs', {}))).toBe('storageFailed')
})

test('the moment on site is local, to the minute', () => {
  expect(machineMoment(new Date(2027, 2, 5, 7, 4, 59))).toBe('2027-03-05T07:04')
})

test('the book lies where each system keeps a user’s data, or where the environment says', () => {
  const placeOf = (environment: NodeJS.ProcessEnv, platform: NodeJS.Platform) =>
    granted(bookPath(environment, platform))
  expect(placeOf({ COATWRIGHT_BOOK: '/some/where.sqlite' }, 'linux')).toBe('/some/where.sqlite')
  expect(placeOf({ XDG_DATA_HOME: '/data' }, 'linux')).toBe('/data/coatwright/book.sqlite')
  expect(placeOf({ APPDATA: '/roaming' }, 'win32')).toBe('/roaming/Coatwright/book.sqlite')
  expect(placeOf({}, 'darwin')).toMatch(/Library\/Application Support\/Coatwright\/book\.sqlite$/)
})

test('a name of the book that is empty, and a port that is no number, are refused in words', () => {
  for (const named of ['', '  ']) {
    const refused = bookPath({ COATWRIGHT_BOOK: named }, 'linux')
    expect(refused.ok ? '' : refused.problem.sentence).toContain('COATWRIGHT_BOOK is set but empty')
  }
  for (const named of ['', 'eighty', '80x', '-1', '65536', '8080.5', ' 80']) {
    const refused = portOf({ COATWRIGHT_PORT: named })
    expect(refused.ok ? named : refused.problem.sentence).toContain(`COATWRIGHT_PORT is "${named}"`)
  }
  expect(
    [{}, { COATWRIGHT_PORT: '0' }, { COATWRIGHT_PORT: '65535' }].map((it) => granted(portOf(it))),
  ).toEqual([0, 0, 65_535])
})
