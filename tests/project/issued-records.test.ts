import { expect, test } from 'vitest'
import { type Issued, issuedSchema, nextPaperNumber } from '../../core/project/issued-records.ts'
import { readJobFile, writeJobFile } from '../../core/project/job-file.ts'
import { twoRooms } from '../sketch/two-rooms.ts'

/** A job file of two rooms with one given-out record in it. */
function fileWith(kind: string, body: unknown): string {
  const file = JSON.parse(writeJobFile(twoRooms())) as { issued: unknown[] }
  file.issued = [{ id: 'given', kind, issuedAt: '2027-03-20T17:00', body }]
  return JSON.stringify(file)
}

function givenIn(text: string): Issued {
  const read = readJobFile(text)
  if (!read.ok) throw new Error(read.problem.sentence)
  const given = Object.values(read.value.issued)[0]
  if (given === undefined) throw new Error('the record was dropped')
  return given
}

/** The body as a file written again holds it. */
function bodyAgain(text: string): unknown {
  const read = readJobFile(text)
  if (!read.ok) throw new Error(read.problem.sentence)
  return (JSON.parse(writeJobFile(read.value)) as { issued: { body: unknown }[] }).issued[0]?.body
}

function refusalOf(text: string): { readonly path: string; readonly sentence: string } {
  const read = readJobFile(text)
  if (read.ok) throw new Error('this should have been refused')
  return read.problem
}

const task = {
  key: 'study/walls',
  roomId: 'study',
  stepKeys: ['study/walls/coat-1'],
  startsAt: '2027-03-29T08:00',
  endsAt: '2027-03-29T10:00',
  segments: [{ startsAt: '2027-03-29T08:00', endsAt: '2027-03-29T10:00' }],
  crewMemberIds: ['ada'],
  dryUntil: null,
}
const planBody = {
  version: 1,
  plan: {
    tasks: [task],
    startsOn: '2027-03-29',
    finishesOn: '2027-03-29',
    roomsOutOfUse: [{ roomId: 'study', from: '2027-03-29T08:00', to: '2027-03-29T14:00' }],
    bound: { finishesOn: '2027-03-29', gapDays: 0 },
  },
  judged: { finish: 0 },
}
const paperBody = { version: 2, number: 3, name: 'Work order', size: 'letter', html: '<p>Study</p>' }
const changeBody = {
  version: 1,
  conditionId: 'crack',
  found: 'Stress crack',
  minutes: { before: 100.5, after: 160.25 },
  totalCents: { before: 100_00, after: 150_00 },
  finishesOn: { before: null, after: '2027-03-30' },
  added: ['Fill'],
  removed: [],
}

test.each([
  ['plan', 1, planBody],
  ['workOrder', 2, paperBody],
  ['estimate', 2, paperBody],
  ['forClient', 2, paperBody],
  ['changeOrder', 1, changeBody],
])('a %s of version %i is read, and written as it was', (kind, version, body) => {
  const text = fileWith(kind, body)
  expect(givenIn(text).body.version).toBe(version)
  expect(bodyAgain(text)).toEqual(body)
})

test.each<[string, string, unknown, string]>([
  [
    'a moment that is not one',
    'plan',
    { ...planBody, plan: { ...planBody.plan, tasks: [{ ...task, endsAt: 'noon' }] } },
    'issued[0].body.plan.tasks[0].endsAt',
  ],
  ['a paper without its text', 'workOrder', { ...paperBody, html: undefined }, 'issued[0].body.html'],
  ['a size nobody prints', 'estimate', { ...paperBody, size: 'postcard' }, 'issued[0].body.size'],
  [
    'half a cent',
    'changeOrder',
    { ...changeBody, totalCents: { before: 0.5, after: 1 } },
    'issued[0].body.totalCents.before',
  ],
  ['a field nobody knows', 'changeOrder', { ...changeBody, colour: 'red' }, 'issued[0].body'],
])('%s in a body that says its version is refused with its place', (_, kind, body, place) => {
  const refused = refusalOf(fileWith(kind, body))
  expect(refused.path).toBe(place)
  expect(refused.sentence).toContain(place)
})

test.each<[string, string, unknown]>([
  ['of a newer program', 'plan', { version: 2, weeks: [{ monday: ['hall'] }] }],
  ['of no version and no form', 'estimate', { totalCents: 123456, lines: [null, true, 'walls', 1.5] }],
  ['of plain words', 'workOrder', 'see the folder'],
  ['of nothing', 'changeOrder', null],
  ['whose version is no number', 'plan', { version: 'new', plan: planBody.plan }],
])('a body %s is kept as it was, said to be closed, and comes out the same', (_, kind, body) => {
  const text = fileWith(kind, body)
  expect(givenIn(text).body).toEqual({ version: null, kept: body })
  expect(bodyAgain(text)).toEqual(body)
})

test('an accepted plan of before versions is brought to version 1 with its figures', () => {
  const { roomsOutOfUse, bound, ...plan } = planBody.plan
  const old = {
    plan: {
      ...plan,
      tasks: [{ ...task, state: 'open' }],
      roomsOutOfUse,
      bound,
      value: { finish: 0, idleMinutes: 30 },
      violations: [],
      relaxed: [],
    },
    value: { finish: 0, idleMinutes: 30 },
    gapDays: 2,
  }
  const upgraded = { ...planBody, judged: { finish: 0, idleMinutes: 30, gapDays: 2 } }
  expect(bodyAgain(fileWith('plan', old))).toEqual(upgraded)
})

test('a plan written by hand, without what it was judged to be, is brought to version 1 too', () => {
  const { dryUntil: _, ...bare } = task
  const old = { plan: { tasks: [bare], startsOn: '2027-03-29', finishesOn: '2027-03-29' } }
  expect(bodyAgain(fileWith('plan', old))).toEqual({
    version: 1,
    plan: { ...old.plan, tasks: [task], roomsOutOfUse: [], bound: null },
    judged: {},
  })
})

test('papers and change orders of before versions are brought to the newest', () => {
  const { version: _, number: __, ...paper } = paperBody
  expect(bodyAgain(fileWith('workOrder', paper))).toEqual({ version: 2, number: null, ...paper })
  const { version: ___, ...change } = changeBody
  expect(bodyAgain(fileWith('changeOrder', change))).toEqual({ version: 1, ...change })
})

test('a record made here is checked when it is written', () => {
  const record = givenIn(fileWith('workOrder', paperBody))
  expect(issuedSchema.safeEncode(record as never).success).toBe(true)
  expect(issuedSchema.safeEncode({ ...record, body: { ...paperBody, html: 5 } } as never).success).toBe(false)
  expect(issuedSchema.safeEncode({ ...record, body: { version: 1 } } as never).success).toBe(false)
})

test('a paper of version 1 has no number, and the next is counted past it', () => {
  const { number: _, ...before } = paperBody
  const old = givenIn(fileWith('workOrder', { ...before, version: 1 }))
  expect(old.body).toEqual({ ...paperBody, number: null })
  expect(nextPaperNumber([])).toBe(1)
  expect(nextPaperNumber([old])).toBe(2)
  expect(nextPaperNumber([old, givenIn(fileWith('estimate', paperBody))])).toBe(4)
  expect(nextPaperNumber([givenIn(fileWith('plan', planBody))])).toBe(1)
})

test('a paper of version 1 that has not its form is kept as it is', () => {
  const strange = { version: 1, name: 'Work order', pages: 3 }
  const text = fileWith('workOrder', strange)
  expect(givenIn(text).body).toEqual({ version: null, kept: strange })
  expect(bodyAgain(text)).toEqual(strange)
})
