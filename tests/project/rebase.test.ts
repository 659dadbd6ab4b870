import { expect, test } from 'vitest'
import { applyDiff, diffJobs } from '../../core/project/diff.ts'
import { graftJob, sameJob } from '../../core/project/graft.ts'
import type { Job } from '../../core/project/job.ts'
import { rebaseJob } from '../../core/project/rebase.ts'
import { sameValue } from '../../core/project/same-value.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { conditionOn } from '../fixtures/job-builder.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'

function withRoom(job: Job, part: Partial<Room>): Job {
  return { ...job, rooms: { ...job.rooms, [roomId]: { ...(job.rooms[roomId] as Room), ...part } } }
}

function withCrack(job: Job): Job {
  const crack = conditionOn('crack', 'stressCrack', { roomId, surfaceClass: 'walls' })
  return { ...job, conditions: { ...job.conditions, crack } }
}

const base = plainJob()

test('edits to different records stand beside each other', () => {
  const mine = withCrack(base)
  const theirs = withRoom(base, { name: 'Library' })
  const { job, clashes } = rebaseJob(base, mine, theirs)
  expect(clashes).toEqual([])
  expect(job).toEqual(withCrack(withRoom(base, { name: 'Library' })))
})

test('two fields of one record stand beside each other, one field of it does not', () => {
  const theirs = withRoom(base, { name: 'Library', note: 'theirs' })
  const both = rebaseJob(base, withRoom(base, { backBy: '2027-04-02T17:00' as Room['backBy'] }), theirs)
  expect(both.clashes).toEqual([])
  expect(both.job.rooms[roomId]).toMatchObject({
    name: 'Library',
    note: 'theirs',
    backBy: '2027-04-02T17:00',
  })
  const clashing = rebaseJob(base, withRoom(base, { note: 'mine' }), theirs)
  expect(clashing.job).toEqual(theirs)
  expect(clashing.clashes).toMatchObject([{ change: { part: 'rooms', id: roomId }, why: 'changedThere' }])
})

test('a record removed there is not brought back by a change here, and one changed there is not removed from here', () => {
  const cracked = withCrack(base)
  const crack = cracked.conditions.crack as NonNullable<Job['conditions'][string]>
  const noted: Job = { ...cracked, conditions: { crack: { ...crack, note: 'behind the door' } } }
  const removedThere = rebaseJob(cracked, noted, base)
  expect(removedThere.job).toEqual(base)
  expect(removedThere.clashes).toMatchObject([{ why: 'removedThere' }])
  const removedHere = rebaseJob(cracked, base, noted)
  expect(removedHere.job).toEqual(noted)
  expect(removedHere.clashes).toMatchObject([{ why: 'changedThere' }])
})

test('what the other state cannot carry is left out, with the reason, and the rest goes in', () => {
  const mine = { ...withCrack(base), header: { ...base.header, client: 'mine' } }
  const { job, clashes } = rebaseJob(base, mine, { ...base, rooms: {} })
  expect(job.header.client).toBe('mine')
  expect(job.conditions).toEqual({})
  expect(clashes).toMatchObject([{ change: { id: 'crack' }, why: 'doesNotFit' }])
  expect(clashes[0]?.problem?.kind).toBe('danglingReference')
})

test('an own earlier state in the other one is nobody else’s change', () => {
  const sent = withRoom(base, { note: 'first words' })
  const mine = withRoom(base, { note: 'last words' })
  const theirs = { ...structuredClone(sent), header: { ...base.header, client: 'theirs' } }
  expect(rebaseJob(base, mine, theirs).clashes).toHaveLength(1)
  const { job, clashes } = rebaseJob(base, mine, theirs, [sent])
  expect(clashes).toEqual([])
  expect(job.rooms[roomId]?.note).toBe('last words')
  expect(job.header.client).toBe('theirs')
})

test('a job read again is made of the known records wherever it says the same', () => {
  const read = JSON.parse(JSON.stringify(withCrack(base))) as Job
  const grafted = graftJob(read, [base])
  expect(grafted.rooms).toBe(base.rooms)
  expect(grafted.products).toBe(base.products)
  expect(Object.keys(diffJobs(base, grafted))).toEqual(['conditions'])
  expect(sameJob(grafted, read)).toBe(true)
  expect(sameJob(base, read)).toBe(false)
})

test('a job read again keeps what was taken away or changed places as it was read', () => {
  const rooms = { [roomId]: base.rooms[roomId], den: { ...base.rooms[roomId], id: 'den' } } as Job['rooms']
  const two: Job = { ...base, rooms }
  const one: Job = { ...base, rooms: structuredClone(base.rooms) }
  expect(Object.keys(graftJob(one, [two]).rooms)).toEqual([roomId])
  const turned: Job = {
    ...base,
    rooms: Object.fromEntries(Object.entries(structuredClone(rooms)).toReversed()) as Job['rooms'],
  }
  expect(Object.keys(graftJob(turned, [two]).rooms)).toEqual(['den', roomId])
})

test('of two known states a job read again is made of the first that says the same, table by table', () => {
  const acknowledged = structuredClone(base)
  const shown = { ...structuredClone(base), header: { ...base.header, client: 'shown' } }
  const read = structuredClone(shown)
  const grafted = graftJob(read, [acknowledged, shown])
  expect(grafted.rooms).toBe(acknowledged.rooms)
  expect(grafted.header).toBe(shown.header)
  const later = withRoom(structuredClone(base), { note: 'later' })
  expect(graftJob(structuredClone(later), [acknowledged, later]).rooms).toBe(later.rooms)
})

test('values are the same when they would be written alike', () => {
  expect(sameValue({ a: 1, b: undefined }, { a: 1 })).toBe(true)
  expect(sameValue([1, { a: null }], [1, { a: null }])).toBe(true)
  expect(sameValue([], {})).toBe(false)
  expect(sameValue({ a: null }, {})).toBe(false)
  expect(sameValue([1, 2], [1, 2, 3])).toBe(false)
})

test('an edit made of several says the order where records would otherwise end elsewhere', () => {
  const tables = ['one', 'two', 'three'].map((id) =>
    conditionOn(id, 'stressCrack', { roomId, surfaceClass: 'walls' }),
  )
  const [one, two, three] = tables
  const before: Job = { ...base, conditions: { one, three } as Job['conditions'] }
  const between: Job = { ...base, conditions: { one, two, three } as Job['conditions'] }
  const turned: Job = { ...base, conditions: { three, one } as Job['conditions'] }
  for (const after of [between, turned]) {
    const made = applyDiff(before, diffJobs(before, after))
    expect(Object.keys(made.conditions)).toEqual(Object.keys(after.conditions))
  }
})
