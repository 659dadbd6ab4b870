import { expect, test } from 'vitest'
import { epochMinutes, type Plan, type ScheduleProblem } from '../../core/schedule/model.ts'
import { pooledResourceRule, roomCapacityRule } from '../../core/schedule/rules/capacity-rules.ts'
import {
  alarmsRestoredRule,
  crewCalendarRule,
  crewCapacityRule,
  dailyChoresRule,
  onePlaceAtATimeRule,
} from '../../core/schedule/rules/crew-rules.ts'
import { doneRule, pinnedRule } from '../../core/schedule/rules/fact-rules.ts'
import {
  dustNearWetRule,
  fumesWhileSleepingRule,
  hallsLastRule,
  roomBackRule,
  roomsOutOfUseRule,
  wayOutRule,
} from '../../core/schedule/rules/room-rules.ts'
import { brokenRules } from '../../core/schedule/rules/rules.ts'
import { dryingRule, openTimeRule } from '../../core/schedule/rules/wait-rules.ts'
import { verifyPlan } from '../../core/schedule/verify.ts'
import { at, handPlan, link, person, problem, room, task, weekOf } from './builders.ts'

const siteClock = problem().clock
if (siteClock.kind !== 'site') throw new Error('the tests plan by the clock of a site')

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

test('a small room holds as many people at a time as can stand in it', () => {
  // bath, for one person: walls by Ann and Bob 8 ===== 9
  const job = problem({
    people: [person('Ann'), person('Bob')],
    rooms: [room('bath', { peopleAtOnce: 1 })],
    tasks: [task('walls', { room: 'bath', work: 120, crew: { min: 1, max: 2 } })],
  })
  const both = handPlan([['walls', [[at(0, 8), at(0, 9)]], ['Ann', 'Bob']]])
  expect(roomCapacityRule(job, both)).toEqual([
    { rule: 'roomCapacity', room: 'bath', tasks: ['walls'], at: at(0, 8) },
  ])
  expect(judgeSees(job, both)).toEqual(['roomCapacity'])
  expectClean(job, onMonday(['walls', 8, 10]))
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

test('a room stays out of use from its first task until its last is dry, whatever the work', () => {
  // bath     8 == 9                       14 == 15      out of use 8-15
  // kitchen          10 == 11                           out of use 10-11: two rooms at 10
  // the other way: bath 8 == 9 == 10 . . wet until 12, kitchen not before 12
  const job = problem({
    rooms: [room('bath'), room('kitchen')],
    tasks: [
      task('bath 1', { room: 'bath' }),
      task('bath 2', { room: 'bath', effects: { wetFor: 120 } }),
      task('kitchen', { room: 'kitchen' }),
    ],
    rules: { roomsOutOfUse: 1 },
  })
  const mixed = onMonday(['bath 1', 8, 9], ['bath 2', 14, 15], ['kitchen', 10, 11])
  expect(roomsOutOfUseRule(job, mixed)).toEqual([
    { rule: 'roomsOutOfUse', rooms: ['bath', 'kitchen'], at: at(0, 10) },
  ])
  expect(judgeSees(job, mixed)).toEqual(['roomsOutOfUse'])
  const wet = onMonday(['bath 1', 8, 9], ['bath 2', 9, 10], ['kitchen', 11, 12])
  expect(roomsOutOfUseRule(job, wet)).toMatchObject([{ at: at(0, 11) }])
  expect(judgeSees(job, wet)).toEqual(['roomsOutOfUse'])
  expectClean(job, onMonday(['bath 1', 8, 9], ['bath 2', 9, 10], ['kitchen', 12, 13]))
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

test('a promised room is given back done and dry, whatever the work in it', () => {
  // walls  10 == 11 . . wet until 13 . .   hooks 14 == 15   back by 15: kept
  // walls  10 == 11 . . wet until 13 . .   hooks 15 == 16   still at work at 15
  // hooks  10 == 11   walls 14 == 15 . . wet until 17 . .     wet at 15
  const tasks = [
    task('walls', { room: 'bedroom', effects: { wetFor: 120 } }),
    task('hooks', { room: 'bedroom' }),
  ]
  const rooms = [room('bedroom', { backBy: at(0, 15) })]
  const job = problem({ rooms, tasks, rules: { roomBackInTime: true } })
  const late = (id: string) => [{ rule: 'roomBack', task: id, room: 'bedroom', at: at(0, 15) }]
  expectClean(job, onMonday(['walls', 10, 11], ['hooks', 14, 15]))
  const atWork = onMonday(['walls', 10, 11], ['hooks', 15, 16])
  expect(roomBackRule(job, atWork)).toEqual(late('hooks'))
  expect(judgeSees(job, atWork)).toEqual(['roomBackInTime'])
  const wet = onMonday(['hooks', 10, 11], ['walls', 14, 15])
  expect(roomBackRule(job, wet)).toEqual(late('walls'))
  expect(judgeSees(job, wet)).toEqual(['roomBackInTime'])
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

test('a day off, a holiday and the hours of the site keep work out as well', () => {
  // Mon  8 ======== 16     Tue  off          Wed  holiday      Thu  at home until 10: 10 ====== 16
  // site 7 ============ 18 on every one of them; Ann's own week would allow 6 === on Friday, the site does not
  const early = person('Ann', { week: weekOf(6, 16), daysOff: ['2026-03-03'] })
  const late = { date: '2026-03-05', windows: [{ from: 600, to: 960 }] }
  const clock = { ...siteClock, holidays: ['2026-03-04'] }
  const job = problem({ clock, people: [{ ...early, partDays: [late] }], tasks: [task('walls')] })
  for (const wrong of [24 + 9, 48 + 9, 72 + 9, 96 + 6]) {
    const plan = onMonday(['walls', wrong, wrong + 1])
    expect(crewCalendarRule(job, plan)).toEqual([
      { rule: 'crewCalendar', task: 'walls', person: 'Ann', at: at(0, wrong) },
    ])
    expect(judgeSees(job, plan)).toEqual(['personPresent'])
  }
  for (const right of [9, 72 + 10, 96 + 7]) expectClean(job, onMonday(['walls', right, right + 1]))
})

test('setting up and clearing away keep both ends of a day free', () => {
  // Ann 8 [set up 10] 8:10 ======== 15:45 [clear away 15] 16
  const job = problem({ tasks: [task('walls')], rules: { dailyChores: { setUp: 10, cleanUp: 15 } } })
  for (const [from, moment] of [
    [8, at(0, 8)],
    [15, at(0, 15, 45)],
  ] as const) {
    const plan = onMonday(['walls', from, from + 1])
    expect(dailyChoresRule(job, plan)).toEqual([
      { rule: 'dailyChores', task: 'walls', person: 'Ann', at: moment },
    ])
    expect(judgeSees(job, plan)).toEqual(['choresAtDaysEnds'])
  }
  expectClean(job, onMonday(['walls', 14.75, 15.75]))
})

test('alarms are covered after the day begins and restored before it ends', () => {
  // Ann 8 [set up 10 + cover 5] 8:15 ======== 15:45 [restore 5 + clean up 10] 16
  const job = problem({
    rooms: [room('hall', { alarm: true }), room('bath')],
    tasks: [task('sand', { room: 'hall', effects: { dusty: true } })],
    rules: { dailyChores: { setUp: 10, cleanUp: 10 }, alarmsRestoredDaily: { minutes: 5 } },
  })
  const quick = handPlan([['sand', [[at(0, 8, 10), at(0, 9, 10)]], ['Ann']]])
  expect(alarmsRestoredRule(job, quick)).toEqual([
    { rule: 'alarmsRestored', task: 'sand', person: 'Ann', at: at(0, 8, 10) },
  ])
  expect(dailyChoresRule(job, quick)).toEqual([])
  expect(judgeSees(job, quick)).toEqual(['choresAtDaysEnds'])
  expectClean(job, onMonday(['sand', 8.25, 9.25]))
  expectClean(job, onMonday(['sand', 14.75, 15.75]))
  expectClean({ ...job, rooms: [room('hall'), room('bath')] }, quick)
})

test('a pinned task starts when it is pinned, by whom it is pinned to', () => {
  // pinned to 10, Ann:  . . 10 ==== 11
  // planned at 9:       9 ==== 10
  // planned with Bob:   . . 10 ==== 11  (Bob)
  const pinned = { kind: 'pinned', start: at(0, 10), people: ['Ann'] } as const
  const job = problem({ people: [person('Ann'), person('Bob')], tasks: [task('walls', { state: pinned })] })
  expectClean(job, onMonday(['walls', 10, 11]))
  for (const moved of [onMonday(['walls', 9, 10]), onMonday(['walls', 10, 11, 'Bob'])]) {
    expect(pinnedRule(job, moved)).toEqual([{ rule: 'pinned', task: 'walls' }])
    expect(judgeSees(job, moved)).toEqual(['factsKept'])
  }
})

test('what is done stays as it was done, even where a rule was broken', () => {
  // Sun 19 ===== 20:40  outside all hours; a fact     Mon 8 ==== 9  written down otherwise
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
