import { expect, test } from 'vitest'
import { gatherPasses } from '../../core/passes/gather.ts'
import type { CrewMemberId } from '../../core/project/shop-records.ts'
import type { ScheduleProblem } from '../../core/schedule/model.ts'
import { startPlanning } from '../../core/schedule/plan-job.ts'
import { validateProblem } from '../../core/schedule/validate.ts'
import { faultSentence } from '../../core/schedule/words/fault-words.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { workingMinutes } from '../../core/units/duration.ts'
import { plainJob, plainSpecification } from '../fixtures/plain-room.ts'
import { noPlanRules } from '../fixtures/plain-rules.ts'
import { at, link, person, problem, room, task } from './builders.ts'

const words = {
  task: (id: string) => `“${id}”`,
  room: (id: string) => `the ${id}`,
  person: (id: string) => id,
}

/** What is said of the first fault of a problem. */
function said(job: ScheduleProblem): { readonly sentence: string; readonly ids: readonly string[] } {
  const [fault] = validateProblem(job)
  if (fault === undefined) throw new Error('the problem has no fault')
  return faultSentence(fault, words)
}

const clock = problem().clock
if (clock.kind !== 'site') throw new Error('the tests plan by the clock of a site')
const walls = task('walls')
const began = { start: at(0, 8), people: ['Ann'] } as const

const cases: readonly (readonly [string, ScheduleProblem, string, readonly string[]])[] = [
  ['two steps of one id', problem({ tasks: [walls, walls] }), 'two steps carry the id walls', ['walls']],
  [
    'two people of one id',
    problem({ people: [person('Ann'), person('Ann')] }),
    'two people carry the id Ann',
    ['Ann'],
  ],
  [
    'two rooms of one id',
    problem({ rooms: [room('bath'), room('bath')] }),
    'two rooms carry the id bath',
    ['bath'],
  ],
  [
    'a wait for a step that is gone',
    problem({ tasks: [walls], links: [link('walls', 'trim')] }),
    'the wait between “walls” and “trim” counts on a step that is not there (trim)',
    ['walls', 'trim'],
  ],
  [
    'a step given to somebody who left',
    problem({ tasks: [task('walls', { state: { kind: 'pinned', start: at(0, 8), people: ['Bob'] } })] }),
    '“walls” is given to somebody who is not on the crew (Bob). Give it to somebody else',
    ['walls'],
  ],
  [
    'a room that is open to one that is gone',
    problem({ rooms: [room('hall', { openTo: ['attic'] })] }),
    'the hall counts on a room that is not on the sketch (the attic)',
    ['hall'],
  ],
  [
    'a tool that is not there',
    problem({ tasks: [task('walls', { demands: [{ resource: 'sprayer', amount: 1 }] })] }),
    '“walls” needs a tool that is not on the list (sprayer)',
    ['walls'],
  ],
  [
    'hours that end before they begin',
    problem({ people: [person('Ann', { breaks: [{ from: 780, to: 720 }] })] }),
    'the hours or breaks of Ann go from 13:00 to 12:00. Let them begin and end within one day',
    ['Ann'],
  ],
  [
    'site hours beyond midnight',
    problem({ clock: { ...clock, siteHours: [[{ from: 480, to: 1500 }], [], [], [], [], [], []] } }),
    'the site hours go from 08:00 to minute 1500',
    [],
  ],
  [
    'a room needed from a time to the same time',
    problem({ rooms: [room('bath', { neededDaily: { from: 1080, to: 1080 } })] }),
    'the hours in which the bath is needed every day go from 18:00 to 18:00',
    ['bath'],
  ],
  [
    'hours of sleep that are none',
    problem({ rules: { noFumesWhileSleeping: { from: 420, to: 420 } } }),
    'the hours of sleep without fumes go from 07:00 to 07:00',
    [],
  ],
  [
    'a break between two steps of the calendar',
    problem({ people: [person('Ann', { breaks: [{ from: 723, to: 750 }] })] }),
    'the hours or breaks of Ann begin or end at 12:03. Plans are made in steps of 5 minutes: move that time.',
    ['Ann'],
  ],
  [
    'a chore between two steps of the calendar',
    problem({ rules: { dailyChores: { setUp: 12, cleanUp: 10 } } }),
    'takes 12 minutes a day. Plans are made in steps of 5 minutes: round it.',
    [],
  ],
  [
    'a pin between two steps of the calendar',
    problem({ tasks: [task('walls', { state: { kind: 'pinned', start: at(0, 8, 2), people: null } })] }),
    '“walls” is pinned between two of them. Plans are made in steps of 5 minutes: move the pin.',
    ['walls'],
  ],
  [
    'a day off on no calendar',
    problem({ people: [person('Ann', { daysOff: ['2026-02-99'] })] }),
    'the days off or part days of Ann name the date “2026-02-99”',
    ['Ann'],
  ],
  [
    'a holiday on no calendar',
    problem({ clock: { ...clock, holidays: ['Easter'] } }),
    'the holidays name the date “Easter”, which is on no calendar',
    [],
  ],
  [
    'a time zone nobody knows',
    problem({ clock: { ...clock, timeZone: 'Mars/Olympus' } }),
    '“Mars/Olympus” is no time zone',
    [],
  ],
  [
    'a shortest wait longer than the longest',
    problem({ tasks: [walls, task('trim')], links: [link('walls', 'trim', 60, 30)] }),
    'between “walls” and “trim” the shortest wait is longer than the longest one. Correct the two times',
    ['walls', 'trim'],
  ],
  [
    'people on a calendar without nights',
    problem({ clock: { kind: 'unbroken', start: epochMinutes(0) } }),
    'this job with its people needs them. Plan by the clock of the site.',
    [],
  ],
  [
    'a step for people on a calendar without nights',
    problem({ clock: { kind: 'unbroken', start: epochMinutes(0) }, people: [], tasks: [walls] }),
    'and “walls” needs them',
    ['walls'],
  ],
  [
    'a crew that is too large to keep apart',
    problem({ people: Array.from({ length: 31 }, (_, index) => person(`p${index}`)) }),
    '31 people are on the crew, and a plan holds 30 at most. Take off who will not work here.',
    [],
  ],
  [
    'work without an amount',
    problem({ tasks: [task('walls', { work: Number.NaN })] }),
    'the work of “walls” comes to NaN minutes. Correct the quantity or the rate',
    ['walls'],
  ],
  [
    'more people at least than at most',
    problem({ tasks: [task('walls', { crew: { min: 2, max: 1 } })] }),
    '“walls” is for a crew of 1, which does not go together',
    ['walls'],
  ],
  [
    'drying backwards',
    problem({ tasks: [task('walls', { effects: { touchDry: -5 } })] }),
    '“walls” keeps its room wet, closed or smelling for -5 minutes',
    ['walls'],
  ],
  [
    'half a sprayer',
    problem({
      resources: [{ id: 'sprayer', capacity: 1 }],
      tasks: [task('walls', { demands: [{ resource: 'sprayer', amount: 0.5 }] })],
    }),
    '“walls” needs 0.5 of a tool',
    ['walls'],
  ],
  [
    'less than no sprayer',
    problem({ resources: [{ id: 'sprayer', capacity: -1 }] }),
    'there are -1 of sprayer',
    ['sprayer'],
  ],
  [
    'a pin before the work starts',
    problem({ tasks: [task('walls', { state: { kind: 'pinned', start: at(-1, 8), people: null } })] }),
    '“walls” is pinned to a time before any work can start. Move or drop the pin, or start earlier.',
    ['walls'],
  ],
  [
    'begun in the future',
    problem({ tasks: [task('walls', { state: { kind: 'started', ...began, remainingWork: walls.work } })] }),
    '“walls” is marked as begun at a time that is still to come. Correct the mark.',
    ['walls'],
  ],
  [
    'begun by nobody',
    problem({
      tasks: [
        task('walls', {
          state: { kind: 'started', start: at(-1, 8), people: [], remainingWork: walls.work },
        }),
      ],
    }),
    '“walls” is under way with nobody at it. Say who works on it.',
    ['walls'],
  ],
  [
    'done before it was begun',
    problem({ tasks: [task('walls', { state: { kind: 'done', ...began, end: at(0, 7) } })] }),
    '“walls” is marked as done before it was begun',
    ['walls'],
  ],
  [
    'half a minute of drying',
    problem({ tasks: [walls, task('trim')], links: [link('walls', 'trim', 0.5)] }),
    'the wait between “walls” and “trim” is 0.5 minutes. Give it whole minutes',
    ['walls', 'trim'],
  ],
  [
    'a calendar without steps',
    { ...problem(), gridMinutes: 0 },
    'the calendar counts in steps of 0 minutes',
    [],
  ],
  [
    'a start at no moment',
    problem({ clock: { ...clock, start: epochMinutes(Number.NaN) } }),
    'the work starts at no moment of any calendar (NaN). Enter the day it starts on anew.',
    [],
  ],
  [
    'half a room out of use',
    problem({ rules: { ...noPlanRules, roomsOutOfUse: 0.5 } }),
    '0.5 is no number of rooms that may be out of use at once',
    [],
  ],
  [
    'chores that give time back',
    problem({ rules: { dailyChores: { setUp: -5, cleanUp: 10 } } }),
    'setting up, clearing away or seeing to the alarms takes -5 minutes a day',
    [],
  ],
]

test.each(cases)('%s is said in a sentence, with what to do', (_, job, sentence, ids) => {
  const words = said(job)
  expect(words.sentence).toContain(sentence)
  expect(words.sentence).toMatch(/\.$/)
  expect(words.ids).toEqual(ids)
})

test('every kind of fault and every number it can be about is among these', () => {
  const faults = cases.flatMap(([, job]) => validateProblem(job))
  const kinds = new Set(faults.map((fault) => (fault.kind === 'badNumber' ? fault.what : fault.kind)))
  expect([...kinds].toSorted()).toEqual(
    [
      'badDate',
      'badWindow',
      'capacity',
      'crew',
      'dailyChores',
      'demand',
      'done',
      'duplicateId',
      'effects',
      'emptyLink',
      'gridMinutes',
      'lag',
      'needsSiteClock',
      'offGrid',
      'pinned',
      'roomsOutOfUse',
      'start',
      'started',
      'startedPeople',
      'tooManyPeople',
      'unknownId',
      'unknownTimeZone',
      'work',
    ].toSorted(),
  )
})

test('a job that cannot be planned says why in words', () => {
  const job = plainJob()
  const [member] = Object.values(job.crew)
  if (member === undefined) throw new Error('somebody is on the crew')
  const crew = Object.fromEntries(
    Array.from({ length: 31 }, (_, index) => {
      const id = `crew-${index}` as CrewMemberId
      return [id, { ...member, id }]
    }),
  )
  const minutes = new Map(plainSpecification.steps.map((step) => [step.key, workingMinutes(30)]))
  const passes = gatherPasses(plainJob(), plainSpecification, minutes)
  expect(startPlanning(plainJob({ crew }), plainSpecification, passes, minutes, 1)).toMatchObject({
    ok: false,
    problem: {
      sentence: expect.stringMatching(/^The plan cannot be made: 31 people are on the crew, .*\.$/),
    },
  })
})
