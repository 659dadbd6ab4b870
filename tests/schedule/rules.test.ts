import { expect, test } from 'vitest'
import { epochMinutes, type Plan, type ScheduleProblem } from '../../core/schedule/model.ts'
import {
  alarmRooms,
  brokenRules,
  crewCalendarRule,
  crewCapacityRule,
  doneRule,
  dryingRule,
  dustNearWetRule,
  fumesWhileSleepingRule,
  hallsLastRule,
  onePlaceAtATimeRule,
  openTimeRule,
  pinnedRule,
  pooledResourceRule,
  roomBackRule,
  roomCapacityRule,
  roomsOutOfUseRule,
  wayOutRule,
} from '../../core/schedule/rules.ts'
import { verifyPlan } from '../../core/schedule/verify.ts'
import { at, handPlan, link, person, problem, room, task } from './builders.ts'

type Row = readonly [string, number, number, string?]

/** Tasks on Monday at hours of the clock (8.5 is 8:30; 32 is Tuesday 8:00), by Ann unless said otherwise. */
function onMonday(...rows: readonly Row[]): Plan {
  return handPlan(rows.map(([id, from, to, who = 'Ann']) => [id, [[at(0, from), at(0, to)]], [who]] as const))
}

function expectClean(job: ScheduleProblem, plan: Plan): void {
  expect(brokenRules(job, plan)).toEqual([])
  expect(verifyPlan(job, plan)).toEqual([])
}

/** The judge, which shares no code with the rules, sees the same. */
function judgeSees(job: ScheduleProblem, plan: Plan): readonly string[] {
  return verifyPlan(job, plan).map((violation) => violation.rule)
}

test('a task has neither too few people nor people without its skill', () => {
  // 8 ---- 9   needs two who paint
  // Ann........ paints
  // Bob........ sands only
  const job = problem({
    people: [person('Ann'), person('Bob', { skills: ['sand'] })],
    tasks: [task('walls', { work: 120, crew: { min: 2, max: 2 }, skills: ['paint'] })],
  })
  const both = handPlan([['walls', [[at(0, 8), at(0, 9)]], ['Ann', 'Bob']]])
  const alone = handPlan([['walls', [[at(0, 8), at(0, 10)]], ['Ann']]])
  expect(crewCapacityRule(job, both)).toEqual([
    { rule: 'crewCapacity', task: 'walls', people: ['Ann', 'Bob'] },
  ])
  expect(crewCapacityRule(job, alone)).toEqual([{ rule: 'crewCapacity', task: 'walls', people: ['Ann'] }])
  expect(judgeSees(job, both)).toEqual(['skills'])
  expect(judgeSees(job, alone)).toEqual(['crewSize'])
})

test('nobody works in a break or after hours', () => {
  // Ann  8 ======== 12 - 12:30 ======= 16
  //            11:30 xx 12:30             task without a pause runs into the break
  const job = problem({
    people: [person('Ann', { breaks: [{ from: 720, to: 750 }] })],
    tasks: [task('walls')],
  })
  const plan = onMonday(['walls', 11.5, 12.5])
  expect(crewCalendarRule(job, plan)).toEqual([
    { rule: 'crewCalendar', task: 'walls', person: 'Ann', at: at(0, 11, 30) },
  ])
  expect(judgeSees(job, plan)).toEqual(['personPresent'])
  expectClean(job, onMonday(['walls', 12.5, 13.5]))
})

test('nobody is in two places at once', () => {
  // walls   8 ===== 9
  // trim      8:30 ===== 9:30
  const job = problem({ tasks: [task('walls'), task('trim')] })
  const plan = onMonday(['walls', 8, 9], ['trim', 8.5, 9.5])
  expect(onePlaceAtATimeRule(job, plan)).toEqual([
    { rule: 'onePlaceAtATime', person: 'Ann', tasks: ['walls', 'trim'], at: at(0, 8, 30) },
  ])
  expect(judgeSees(job, plan)).toEqual(['oneTaskPerPerson'])
  expectClean(job, onMonday(['walls', 8, 9], ['trim', 9, 10]))
})

test('paint dries through the night', () => {
  // coat 1  Mon 15 == 16 . . . dries 16 h . . . Tue 8 == 9  coat 2
  const job = problem({ tasks: [task('coat 1'), task('coat 2')], links: [link('coat 1', 'coat 2', 16 * 60)] })
  expectClean(job, onMonday(['coat 1', 15, 16], ['coat 2', 24 + 8, 24 + 9]))
  const early = onMonday(['coat 1', 15, 16], ['coat 2', 24 + 8, 24 + 9])
  const slow = { ...job, links: [link('coat 1', 'coat 2', 16 * 60 + 5)] }
  expect(dryingRule(slow, early)).toEqual([{ rule: 'drying', from: 'coat 1', to: 'coat 2', missing: 5 }])
  expect(judgeSees(slow, early)).toEqual(['minimumWait'])
})

test('a deglossed surface is coated within its open time', () => {
  // degloss 8 == 9 .. 30 min .. 9:30 == 10:30 coat     kept
  // degloss 8 == 9 .. 35 min ..   9:35 == 10:35 coat   late by 5
  const job = problem({ tasks: [task('degloss'), task('coat')], links: [link('degloss', 'coat', 0, 30)] })
  expectClean(job, onMonday(['degloss', 8, 9], ['coat', 9.5, 10.5]))
  const late = handPlan([
    ['degloss', [[at(0, 8), at(0, 9)]], ['Ann']],
    ['coat', [[at(0, 9, 35), at(0, 10, 35)]], ['Ann']],
  ])
  expect(openTimeRule(job, late)).toEqual([{ rule: 'openTime', from: 'degloss', to: 'coat', late: 5 }])
  expect(judgeSees(job, late)).toEqual(['maximumWait'])
})

test('one sprayer serves one task at a time', () => {
  // doors (Ann)   8 ===== 9      sprayer
  // fence (Bob)     8:30 ===== 9:30  sprayer
  const demands = [{ resource: 'sprayer', amount: 1 }]
  const job = problem({
    people: [person('Ann'), person('Bob')],
    resources: [{ id: 'sprayer', capacity: 1 }],
    tasks: [task('doors', { demands }), task('fence', { demands })],
  })
  const plan = onMonday(['doors', 8, 9], ['fence', 8.5, 9.5, 'Bob'])
  expect(pooledResourceRule(job, plan)).toEqual([
    { rule: 'pooledResource', resource: 'sprayer', tasks: ['doors', 'fence'], at: at(0, 8, 30) },
  ])
  expect(judgeSees(job, plan)).toEqual(['resourceCapacity'])
})

test('a small room holds one task at a time', () => {
  // bath: walls (Ann) 8 === 9, trim (Bob) 8:30 === 9:30
  const job = problem({
    people: [person('Ann'), person('Bob')],
    rooms: [room('bath', { tasksAtOnce: 1 })],
    tasks: [task('walls', { room: 'bath' }), task('trim', { room: 'bath' })],
  })
  const plan = onMonday(['walls', 8, 9], ['trim', 8.5, 9.5, 'Bob'])
  expect(roomCapacityRule(job, plan)).toEqual([
    { rule: 'roomCapacity', room: 'bath', tasks: ['walls', 'trim'], at: at(0, 8, 30) },
  ])
  expect(judgeSees(job, plan)).toEqual(['roomCapacity'])
})

test('no sanding where paint is wet, here or through an open archway', () => {
  // parlor: trim   8 == 9 . . wet until 11 . .
  // dining: sand              10 == 11           open to the parlor: dust on wet paint from 10 on
  const rooms = [room('parlor', { openTo: ['dining'] }), room('dining')]
  const tasks = [
    task('trim', { room: 'parlor', effects: { wetFor: 120 } }),
    task('sand', { room: 'dining', effects: { dusty: true } }),
  ]
  const job = problem({ rooms, tasks, rules: { noDustNearWet: true } })
  const plan = onMonday(['trim', 8, 9], ['sand', 10, 11])
  expect(dustNearWetRule(job, plan)).toEqual([
    { rule: 'dustNearWet', dusty: 'sand', wet: 'trim', at: at(0, 10) },
  ])
  expect(judgeSees(job, plan)).toEqual(['noDustNearWet'])
  expectClean(job, onMonday(['trim', 8, 9], ['sand', 11, 12]))
  expectClean({ ...job, rooms: [room('parlor'), room('dining')] }, plan)
})

test('fumes are gone from a bedroom before anybody sleeps there', () => {
  // shellac 14 == 15 . . fumes 6 h until 21 . .   asleep from 21: kept
  // shellac   15 == 16 . . fumes until 22 . .     smells at 21
  const rooms = [room('bedroom', { sleeping: true })]
  const tasks = [task('shellac', { room: 'bedroom', effects: { fumesFor: 360 } })]
  const job = problem({ rooms, tasks, rules: { noFumesWhileSleeping: { from: 21 * 60, to: 7 * 60 } } })
  expectClean(job, onMonday(['shellac', 14, 15]))
  const late = onMonday(['shellac', 15, 16])
  expect(fumesWhileSleepingRule(job, late)).toEqual([
    { rule: 'fumesWhileSleeping', task: 'shellac', at: at(0, 21) },
  ])
  expect(judgeSees(job, late)).toEqual(['noFumesWhileSleeping'])
})

test('a room stays out of use from its first to its last closing task', () => {
  // bath     8 == 9                       14 == 15      out of use 8-15
  // kitchen          10 == 11                           out of use 10-11: two rooms at 10
  const closed = { closedFor: 0 }
  const job = problem({
    rooms: [room('bath'), room('kitchen')],
    tasks: [
      task('bath 1', { room: 'bath', effects: closed }),
      task('bath 2', { room: 'bath', effects: closed }),
      task('kitchen', { room: 'kitchen', effects: closed }),
    ],
    rules: { roomsOutOfUse: 1 },
  })
  const mixed = onMonday(['bath 1', 8, 9], ['bath 2', 14, 15], ['kitchen', 10, 11])
  expect(roomsOutOfUseRule(job, mixed)).toEqual([
    { rule: 'roomsOutOfUse', rooms: ['bath', 'kitchen'], at: at(0, 10) },
  ])
  expect(judgeSees(job, mixed)).toEqual(['roomsOutOfUse'])
  expectClean(job, onMonday(['bath 1', 8, 9], ['bath 2', 9, 10], ['kitchen', 10, 11]))
})

test('a bedroom is given back by evening, and for good by its day', () => {
  // walls 14 == 15 . . closed 3 h until 18 . .   needed from 18: kept
  // walls   15 == 16 . . closed until 19 . .     in the way at 18
  const effects = { closedFor: 180 }
  const tasks = [task('walls', { room: 'bedroom', effects })]
  const nightly = room('bedroom', { neededDaily: { from: 18 * 60, to: 8 * 60 } })
  const job = problem({ rooms: [nightly], tasks, rules: { roomBackInTime: true } })
  expectClean(job, onMonday(['walls', 14, 15]))
  const late = onMonday(['walls', 15, 16])
  expect(roomBackRule(job, late)).toEqual([
    { rule: 'roomBack', task: 'walls', room: 'bedroom', at: at(0, 18) },
  ])
  expect(judgeSees(job, late)).toEqual(['roomBackInTime'])
  const promised = { ...job, rooms: [room('bedroom', { backBy: at(0, 17) })] }
  expect(roomBackRule(promised, onMonday(['walls', 14, 15]))).toEqual([
    { rule: 'roomBack', task: 'walls', room: 'bedroom', at: at(0, 17) },
  ])
})

test('nobody is shut in behind a closed hall', () => {
  // hall floor (Bob) 8 == 9 . closed until 10 .
  // bedroom (Ann)        9 == 10                  no way out from 9 to 10
  const job = problem({
    people: [person('Ann'), person('Bob')],
    rooms: [room('hall'), room('bedroom', { reachedThrough: ['hall'] })],
    tasks: [task('floor', { room: 'hall', effects: { closedFor: 60 } }), task('walls', { room: 'bedroom' })],
    rules: { wayOutKeptOpen: true },
  })
  const shut = onMonday(['floor', 8, 9, 'Bob'], ['walls', 9, 10])
  expect(wayOutRule(job, shut)).toEqual([{ rule: 'wayOut', behind: 'walls', hall: 'floor', at: at(0, 9) }])
  expect(judgeSees(job, shut)).toEqual(['wayOutKeptOpen'])
  expectClean(job, onMonday(['floor', 8, 9, 'Bob'], ['walls', 10, 11]))
})

test('halls are painted last', () => {
  // hall 8 == 9, bedroom behind it 9 == 10: the wrong way round
  const job = problem({
    rooms: [room('hall'), room('bedroom', { reachedThrough: ['hall'] })],
    tasks: [task('hall walls', { room: 'hall', effects: { wetFor: 0 } }), task('walls', { room: 'bedroom' })],
    rules: { hallsLast: true },
  })
  const wrong = onMonday(['hall walls', 8, 9], ['walls', 9, 10])
  expect(hallsLastRule(job, wrong)).toEqual([{ rule: 'hallsLast', task: 'walls', hall: 'hall walls' }])
  expect(judgeSees(job, wrong)).toEqual(['hallsLast'])
  expectClean(job, onMonday(['hall walls', 9, 10], ['walls', 8, 9]))
})

test('alarms are covered after the day begins and restored before it ends', () => {
  // Ann 8 [set up 10 + cover 5] 8:15 ======== 15:45 [restore 5 + clean up 10] 16
  const job = problem({
    rooms: [room('hall', { alarm: true }), room('bath')],
    tasks: [task('sand', { room: 'hall', effects: { dusty: true } })],
    rules: { dailyChores: { setUp: 10, cleanUp: 10 }, alarmsRestoredDaily: { minutes: 5 } },
  })
  const early = onMonday(['sand', 8, 9])
  expect(crewCalendarRule(job, early)).toEqual([
    { rule: 'crewCalendar', task: 'sand', person: 'Ann', at: at(0, 8) },
  ])
  expect(judgeSees(job, early)).toEqual(['choresAtDaysEnds'])
  expectClean(job, onMonday(['sand', 8.25, 9.25]))
  expectClean(job, onMonday(['sand', 14.75, 15.75]))
  expect(alarmRooms(job, early, at(0, 0), at(1, 0))).toEqual(['hall'])
  expect(alarmRooms(job, early, at(1, 0), at(2, 0))).toEqual([])
})

test('a pinned task starts when it is pinned', () => {
  const pinned = { kind: 'pinned', start: at(0, 10), people: null } as const
  const job = problem({ tasks: [task('walls', { state: pinned })] })
  expectClean(job, onMonday(['walls', 10, 11]))
  expect(pinnedRule(job, onMonday(['walls', 9, 10]))).toEqual([{ rule: 'pinned', task: 'walls' }])
  expect(judgeSees(job, onMonday(['walls', 9, 10]))).toEqual(['factsKept'])
})

test('what is done stays as it was done, even where a rule was broken', () => {
  // done on Sunday evening, outside all hours; a fact
  const done = {
    kind: 'done',
    start: epochMinutes(at(0, 0) - 300),
    end: epochMinutes(at(0, 0) - 200),
    people: ['Ann'],
  } as const
  const job = problem({ tasks: [task('prime', { state: done })] })
  expectClean(job, handPlan([['prime', [[done.start, done.end]], ['Ann']]]))
  expect(doneRule(job, onMonday(['prime', 8, 9]))).toEqual([{ rule: 'done', task: 'prime' }])
  expect(judgeSees(job, onMonday(['prime', 8, 9]))).toEqual(['factsKept'])
})
