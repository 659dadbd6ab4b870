import { expect, test } from 'vitest'
import { takeOff } from '../../core/quantities/take-off.ts'
import type { Violation } from '../../core/schedule/judge/violation.ts'
import { breaksWhenMoved } from '../../core/schedule/moved-task.ts'
import { specify } from '../../core/specification/specify.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { momentsIn } from '../../core/time/site-moment.ts'
import { moveSentences } from '../../renderer/panels/calendar/move-words.ts'
import { neighboursOf } from '../../renderer/panels/calendar/neighbours.ts'
import { planLook } from '../../renderer/panels/calendar/plan-look.ts'
import { shortened, shortWords, wordsThatFit } from '../../renderer/panels/calendar/short-words.ts'
import { taskWords } from '../../renderer/panels/calendar/task-words.ts'
import { outOfUseWords, relaxedSentences, spareWords } from '../../renderer/panels/calendar/verdict-words.ts'
import { createSliced } from '../../renderer/state/planner-search.ts'
import { demoJob } from './station-jobs.ts'

const job = demoJob('l-shaped-room')
const specification = specify(job, takeOff(job))
const search = createSliced(job, '2027-03-29T07:30', null)
search.step()
const found = search.current()
if (found === null) throw new Error('no plan was found')
const words = taskWords(job, specification, found.workPlan)
const momentOf = momentsIn(job.header.timeZone)

test('a task is called by its room and its steps, with a plan and without one', () => {
  const bare = taskWords(job, specification, null)
  for (const { id, room } of found.problem.tasks) {
    const name = job.rooms[room ?? '']?.name ?? ''
    expect(words.title(id).startsWith(`${name}: `)).toBe(true)
    expect(words.title(id)).not.toContain(id)
  }
  const [roomId = ''] = Object.keys(job.rooms)
  expect(bare.title(roomId)).toBe(job.rooms[roomId]?.name)
})

test('a bar carries as many words as fit, the longest first', () => {
  const coat = specification.steps.find((step) => step.operation === 'coat' && step.coat === 2)
  if (coat === undefined) throw new Error('something is coated twice')
  const choices = shortWords([coat])
  expect(choices).toEqual([expect.stringMatching(/^Coat 2 \w/), 'Coat 2'])
  expect(wordsThatFit(choices, 500)).toBe(choices[0])
  expect(wordsThatFit(choices, 40)).toBe('Coat 2')
  expect(wordsThatFit(choices, 10)).toBeNull()
  expect([
    shortened('Front bedroom', 200),
    shortened('Front bedroom', 50),
    shortened('Front bedroom', 20),
  ]).toEqual(['Front bedroom', 'Front b…', ''])
})

test('what a task waits for and what it holds up are each other’s mirror, the tightest first', () => {
  for (const { id } of found.problem.tasks) {
    const { before, after } = neighboursOf(found, id)
    for (const list of [before, after]) {
      const spare = list.map((each) => each.spare)
      expect(spare).toEqual(spare.toSorted((one, other) => one - other))
      expect(Math.min(0, ...spare)).toBe(0)
      expect(new Set(list.map((each) => each.id)).size).toBe(list.length)
    }
    for (const each of before.filter(({ link }) => link !== null)) {
      expect(neighboursOf(found, each.id).after.map((other) => other.id)).toContain(id)
    }
  }
})

test('the picked task has its neighbours marked on their side, and a moved plan its moved tasks', () => {
  const picked = found.problem.links[0]?.to ?? ''
  const shifted = {
    ...found,
    plan: {
      ...found.plan,
      tasks: found.plan.tasks.map((planned) =>
        planned.task === picked ? { ...planned, start: epochMinutes(planned.start + 15) } : planned,
      ),
    },
  }
  const look = planLook({
    job,
    found: shifted,
    comparedTo: found,
    words,
    pins: [],
    pickedId: picked,
    momentOf,
  })
  expect([...look.before.keys()]).toContain(found.problem.links[0]?.from)
  expect([...look.moved]).toEqual([picked])
  expect(look.lineOf(picked)).toContain(words.title(picked))
})

test('short and long time to spare, and when a room is out of use, are said as people say them', () => {
  expect([0, 55, 1440, 9000].map(spareWords)).toEqual([
    'no time to spare: it holds',
    '55 min to spare',
    'more than a day to spare',
    'more than 6 days to spare',
  ])
  expect(outOfUseWords('2027-03-29T08:00', '2027-04-09T15:00', 'imperial')).toBe('out of use Mar 29 – Apr 9')
  expect(outOfUseWords('2027-03-29T08:00', '2027-03-29T15:00', 'metric')).toBe('out of use 29 Mar')
})

test('a plan says which wishes it could not keep', () => {
  const begun = ['a', 'b', 'c'].map((id) => ({ what: 'roomBegun', id }) as const)
  expect(relaxedSentences(job, [...begun, { what: 'pinLost', id: 'p' }])).toEqual([
    '3 rooms are begun, more than may be out of use at once: no other one is begun until one of them is done.',
    '1 pin is left out: the task is gone, done, or the moment is past.',
  ])
  expect(relaxedSentences(job, [])).toEqual([])
})

test('moved into the hours before work the task is told who is not there', () => {
  const planned = found.plan.tasks.find((each) => each.people.length > 0)
  if (planned === undefined) throw new Error('somebody works')
  const early = epochMinutes(planned.start - 4 * 60)
  const breaks = breaksWhenMoved(found.problem, found.plan, planned.task, early)
  const sentences = moveSentences(breaks, planned.task, { job, titleOf: words.title, momentOf })
  const name = job.crew[planned.people[0] ?? '']?.name
  expect(sentences).toContain(`${name} is not there at ${momentOf(early)}.`)
})

test('every rule a move can break has a sentence that names the other task, person or room', () => {
  const about = { tasks: ['b', 'a'], at: 0, minutes: 20, person: 'Ann', room: 'Bath' } as const
  const other = { ...about, tasks: ['a', 'b'] } as const
  const breaks: readonly Violation[] = [
    { ...about, rule: 'crew' },
    { ...about, rule: 'leadAndOneMore' },
    { ...about, rule: 'crewCalendar' },
    { ...about, rule: 'dailyChores' },
    { ...about, rule: 'brokenOff' },
    { ...about, rule: 'timeSpent' },
    { ...about, rule: 'onePlaceAtATime' },
    { ...about, rule: 'minimumWait' },
    { ...other, rule: 'minimumWait' },
    { ...about, rule: 'maximumWait' },
    { ...other, rule: 'maximumWait' },
    { ...about, rule: 'notBefore' },
    { ...about, rule: 'pooledResource' },
    { ...about, rule: 'roomCapacity' },
    { ...about, rule: 'dustNearWet' },
    { ...other, rule: 'dustNearWet' },
    { ...about, rule: 'fumesWhileSleeping' },
    { ...about, rule: 'roomsOutOfUse' },
    { ...about, rule: 'roomBack' },
    { ...other, rule: 'wayOut' },
    { ...about, rule: 'wayOut' },
    { ...about, rule: 'hallsLast' },
    { ...other, rule: 'hallsLast' },
    { ...about, rule: 'pinned' },
    { ...about, rule: 'done' },
    { ...about, rule: 'shape' },
  ]
  const titleOf = (id: string) => (id === 'a' ? 'this' : 'Walls')
  expect(moveSentences(breaks, 'a', { job, titleOf, momentOf: () => 'noon' })).toEqual([
    'Too few people, too many, or somebody who cannot do it.',
    'Bath would have more than a lead and one more person.',
    'Ann is not there at noon.',
    'Ann sets up or clears away at noon.',
    'It would be broken off where it may not be.',
    'It would have too little time.',
    'Ann is at “Walls” then.',
    '20 min too early after “Walls”.',
    '“Walls” would come 20 min too early after it.',
    '20 min too late after “Walls”.',
    '“Walls” would come 20 min too late after it.',
    'It cannot begin before noon.',
    'What it needs is in use for “Walls”.',
    'Bath is too full with “Walls” going on.',
    'It raises dust while “Walls” is wet.',
    '“Walls” raises dust while it is wet.',
    'Its fumes are still there at noon, in the hours of sleep.',
    'Too many rooms are out of use at noon.',
    'Bath is needed back by noon.',
    'It shuts in who is at “Walls”.',
    '“Walls” shuts the way out.',
    '“Walls” behind it is not finished.',
    '“Walls” on the way out would come before it.',
    'It is pinned to another start.',
    'It is done or under way and cannot move.',
    'It does not fit into the plan there.',
  ])
})
