import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import type { CrewMemberId } from '../../core/project/shop-records.ts'
import { movedBetween, type ShownPlan } from '../../renderer/panels/calendar/moved-words.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'

const job: Job = plainJob()
const name = job.rooms[roomId]?.name

interface Visit {
  readonly pass: string
  readonly day: string
  readonly people?: readonly string[]
  readonly state?: string
}

function plan(back: string, visits: readonly Visit[]): ShownPlan {
  return {
    startsOn: '2027-06-01',
    finishesOn: back,
    roomsOutOfUse: [
      { roomId, to: '2027-05-20T23:59' },
      { roomId, to: `${back}T23:59` },
    ],
    tasks: visits.map(({ pass, day, people = ['ada'], state = 'open' }) => ({
      key: pass,
      passKey: pass,
      name: pass === 'walls' ? 'Walls, first coat' : 'Ceiling',
      roomSetId: roomId,
      roomId,
      stepKeys: [],
      startsAt: `${day}T08:00`,
      endsAt: `${day}T10:00`,
      segments: [],
      crewMemberIds: people as readonly CrewMemberId[],
      state,
    })),
  }
}

const before = plan('2027-06-01', [
  { pass: 'walls', day: '2027-06-01' },
  { pass: 'ceiling', day: '2027-05-31' },
])

test('what moved is said in passes and rooms, with the days', () => {
  const after = plan('2027-06-03', [
    { pass: 'walls', day: '2027-06-03' },
    { pass: 'ceiling', day: '2027-05-31' },
  ])
  expect(movedBetween(job, before, after)).toEqual({
    rooms: [`The ${name} is back on Fri Jun 4 instead of Wed Jun 2`],
    passes: [`Walls, first coat in the ${name}: Tue Jun 1 to Thu Jun 3`],
  })
})

test('other people are said too, alone or with the day', () => {
  const after = plan('2027-06-01', [
    { pass: 'walls', day: '2027-06-02', people: ['ben', 'ada'] },
    { pass: 'ceiling', day: '2027-05-31', people: ['ben'] },
  ])
  expect(movedBetween(job, before, after)).toEqual({
    rooms: [],
    passes: [
      `Ceiling in the ${name}: Ben instead of Ada`,
      `Walls, first coat in the ${name}: Tue Jun 1 to Wed Jun 2, Ben and Ada instead of Ada`,
    ],
  })
})

test('what stays, what is new, what is gone and what is done is not said to move', () => {
  expect(movedBetween(job, before, before)).toEqual({ rooms: [], passes: [] })
  const [walls, ceiling] = before.tasks
  if (walls === undefined || ceiling === undefined) throw new Error('two passes are planned')
  const gone = { ...before, tasks: [walls] }
  expect(movedBetween(job, before, gone)).toEqual({ rooms: [], passes: [] })
  expect(movedBetween(job, gone, before)).toEqual({ rooms: [], passes: [] })
  const done = plan('2027-06-01', [
    { pass: 'walls', day: '2027-06-01' },
    { pass: 'ceiling', day: '2027-06-01', state: 'done' },
  ])
  expect(movedBetween(job, before, done)).toEqual({ rooms: [], passes: [] })
  const later = { ...walls, key: 'walls~2', startsAt: '2027-06-02T08:00' }
  expect(movedBetween(job, { ...before, tasks: [later, walls, ceiling] }, before)).toEqual({
    rooms: [],
    passes: [],
  })
})
