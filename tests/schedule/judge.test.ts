import { expect, test } from 'vitest'
import { figuresOf } from '../../core/schedule/judge/plan-costs.ts'
import { verifyPlan } from '../../core/schedule/judge/verify.ts'
import type { RuleName } from '../../core/schedule/judge/violation.ts'
import type { Plan, ScheduleProblem } from '../../core/schedule/model.ts'
import { createSearch } from '../../core/schedule/tries/search.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { workingMinutes } from '../../core/units/duration.ts'
import { at, handPlan, link, person, problem, room, task } from './builders.ts'
import { randomHouse } from './random-house.ts'

type Rows = Parameters<typeof handPlan>[0]

function rulesBroken(asked: ScheduleProblem, rows: Rows): readonly RuleName[] {
  return [...new Set(verifyPlan(asked, handPlan(rows)).map(({ rule }) => rule))]
}

const ann = ['Ann']
const lunch = [{ from: 720, to: 750 }]
const hour = (day: number, from: number): readonly [number, number] => [at(day, from), at(day, from + 1)]
const two = [person('Ann'), person('Ben')]

interface Case {
  readonly rule: RuleName
  readonly asked: ScheduleProblem
  readonly good: Rows
  readonly bad: Rows
}

/** For every rule a plan that keeps it and one that breaks just that. */
const cases: readonly Case[] = [
  {
    rule: 'everyTaskPlanned',
    asked: problem({ tasks: [task('a')] }),
    good: [['a', [hour(0, 8)], ann]],
    bad: [],
  },
  {
    rule: 'shape',
    asked: problem({ tasks: [task('a')] }),
    good: [['a', [hour(0, 8)], ann]],
    bad: [['a', [[at(0, 8, 2), at(0, 9, 2)]], ann]],
  },
  {
    rule: 'done',
    asked: problem({
      tasks: [task('a', { state: { kind: 'done', start: at(-3, 8), end: at(-3, 9), people: ann } })],
    }),
    good: [['a', [[at(-3, 8), at(-3, 9)]], ann]],
    bad: [['a', [hour(0, 8)], ann]],
  },
  {
    rule: 'started',
    asked: problem({
      tasks: [
        task('a', {
          state: { kind: 'started', start: at(0, 0), people: ann, remainingWork: workingMinutes(60) },
        }),
      ],
    }),
    good: [],
    bad: [['a', [hour(0, 8)], ann]],
  },
  {
    rule: 'pinned',
    asked: problem({ tasks: [task('a', { state: { kind: 'pinned', start: at(0, 9), people: ann } })] }),
    good: [['a', [hour(0, 9)], ann]],
    bad: [['a', [hour(0, 10)], ann]],
  },
  {
    rule: 'crew',
    asked: problem({
      tasks: [task('a', { skills: ['paint'] })],
      people: [person('Ann'), person('Ben', { skills: ['prepare'] })],
    }),
    good: [['a', [hour(0, 8)], ann]],
    bad: [['a', [hour(0, 8)], ['Ben']]],
  },
  {
    rule: 'leadAndOneMore',
    asked: problem({
      tasks: [task('a', { room: 'r' }), task('b', { room: 'r' }), task('c', { room: 'r' })],
      people: [...two, person('Cid')],
      rooms: [room('r')],
      rules: { leadAndOneMore: true },
    }),
    good: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 9)], ['Ben']],
      ['c', [hour(0, 10)], ['Ben']],
    ],
    bad: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 9)], ['Ben']],
      ['c', [hour(0, 10)], ['Cid']],
    ],
  },
  {
    rule: 'crewCalendar',
    asked: problem({ tasks: [task('a')], people: [person('Ann', { breaks: lunch })] }),
    good: [['a', [hour(0, 13)], ann]],
    bad: [['a', [[at(0, 11, 30), at(0, 12, 30)]], ann]],
  },
  {
    rule: 'dailyChores',
    asked: problem({ tasks: [task('a')], rules: { dailyChores: { setUp: 15, cleanUp: 20 } } }),
    good: [['a', [[at(0, 8, 15), at(0, 9, 15)]], ann]],
    bad: [['a', [hour(0, 8)], ann]],
  },
  {
    rule: 'brokenOff',
    asked: problem({ tasks: [task('a', { work: 240 })], people: [person('Ann', { breaks: lunch })] }),
    good: [
      [
        'a',
        [
          [at(0, 10), at(0, 12)],
          [at(0, 12, 30), at(0, 14, 30)],
        ],
        ann,
      ],
    ],
    bad: [
      [
        'a',
        [
          [at(0, 14), at(0, 16)],
          [at(1, 8), at(1, 10)],
        ],
        ann,
      ],
    ],
  },
  {
    rule: 'timeSpent',
    asked: problem({
      tasks: [task('a', { room: 'r' }), task('b', { room: 's' })],
      rooms: [room('r'), room('s')],
      spending: { moving: 10, changingProduct: 0, leastPaid: 0 },
    }),
    good: [
      ['a', [hour(0, 8)], ann],
      ['b', [[at(0, 9), at(0, 10, 10)]], ann],
    ],
    bad: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 9)], ann],
    ],
  },
  {
    rule: 'onePlaceAtATime',
    asked: problem({ tasks: [task('a'), task('b')] }),
    good: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 9)], ann],
    ],
    bad: [
      ['a', [hour(0, 8)], ann],
      ['b', [[at(0, 8, 30), at(0, 9, 30)]], ann],
    ],
  },
  {
    rule: 'minimumWait',
    asked: problem({ tasks: [task('a'), task('b')], links: [link('a', 'b', 120)] }),
    good: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 11)], ann],
    ],
    bad: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 10)], ann],
    ],
  },
  {
    rule: 'maximumWait',
    asked: problem({ tasks: [task('a'), task('b')], links: [link('a', 'b', 0, 30)] }),
    good: [
      ['a', [hour(0, 8)], ann],
      ['b', [[at(0, 9, 30), at(0, 10, 30)]], ann],
    ],
    bad: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 10)], ann],
    ],
  },
  {
    rule: 'notBefore',
    asked: problem({ tasks: [task('a', { earliestStart: at(1, 0) })] }),
    good: [['a', [hour(1, 8)], ann]],
    bad: [['a', [hour(0, 8)], ann]],
  },
  {
    rule: 'pooledResource',
    asked: problem({
      tasks: ['a', 'b'].map((id) => task(id, { demands: [{ resource: 'sprayer', amount: 1 }] })),
      people: two,
      resources: [{ id: 'sprayer', capacity: 1 }],
    }),
    good: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 9)], ['Ben']],
    ],
    bad: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 8)], ['Ben']],
    ],
  },
  {
    rule: 'roomCapacity',
    asked: problem({
      tasks: [task('a', { room: 'r' }), task('b', { room: 'r' })],
      people: two,
      rooms: [room('r', { peopleAtOnce: 1 })],
    }),
    good: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 9)], ['Ben']],
    ],
    bad: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 8)], ['Ben']],
    ],
  },
  {
    rule: 'dustNearWet',
    asked: problem({
      tasks: [
        task('coat', { room: 'r', effects: { touchDry: 120 } }),
        task('sand', { room: 's', effects: { dusty: true } }),
      ],
      rooms: [room('r'), room('s', { openTo: ['r'] })],
      rules: { noDustNearWet: true },
    }),
    good: [
      ['coat', [hour(0, 8)], ann],
      ['sand', [hour(0, 11)], ann],
    ],
    bad: [
      ['coat', [hour(0, 8)], ann],
      ['sand', [hour(0, 10)], ann],
    ],
  },
  {
    rule: 'fumesWhileSleeping',
    asked: problem({
      tasks: [task('oil', { room: 'hall', effects: { fumesFor: 360 } })],
      rooms: [room('hall', { openTo: ['bed'] }), room('bed', { sleeping: true })],
      rules: { noFumesWhileSleeping: { from: 21 * 60, to: 7 * 60 } },
    }),
    good: [['oil', [hour(0, 8)], ann]],
    bad: [['oil', [hour(0, 15)], ann]],
  },
  {
    rule: 'roomsOutOfUse',
    asked: problem({
      tasks: [task('a', { room: 'r' }), task('b', { room: 's' })],
      rooms: [room('r'), room('s')],
      rules: { roomsOutOfUse: 1 },
    }),
    good: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(1, 8)], ann],
    ],
    bad: [
      ['a', [hour(0, 8)], ann],
      ['b', [hour(0, 9)], ann],
    ],
  },
  {
    rule: 'roomBack',
    asked: problem({
      tasks: [task('a', { room: 'r', effects: { touchDry: 120 } })],
      rooms: [room('r', { backBy: at(0, 12) })],
      rules: { roomBackInTime: true },
    }),
    good: [['a', [hour(0, 9)], ann]],
    bad: [['a', [hour(0, 10)], ann]],
  },
  {
    rule: 'neededDaily',
    asked: problem({
      tasks: [task('a', { room: 'r', effects: { closedFor: 180 } })],
      rooms: [room('r', { neededDaily: { from: 18 * 60, to: 7 * 60 } })],
      rules: { roomBackInTime: true },
    }),
    good: [['a', [hour(0, 14)], ann]],
    bad: [['a', [hour(0, 15)], ann]],
  },
  {
    rule: 'wayOut',
    asked: problem({
      tasks: [task('stairs', { room: 'hall', effects: { closedFor: 120 } }), task('a', { room: 'r' })],
      rooms: [room('hall'), room('r', { reachedThrough: ['hall'] })],
      rules: { wayOutKeptOpen: true },
    }),
    good: [
      ['stairs', [hour(0, 8)], ann],
      ['a', [hour(0, 11)], ann],
    ],
    bad: [
      ['stairs', [hour(0, 8)], ann],
      ['a', [hour(0, 10)], ann],
    ],
  },
  {
    rule: 'hallsLast',
    asked: problem({
      tasks: [task('stairs', { room: 'hall' }), task('a', { room: 'r' })],
      rooms: [room('hall'), room('r', { reachedThrough: ['hall'] })],
      rules: { hallsLast: true },
    }),
    good: [
      ['a', [hour(0, 8)], ann],
      ['stairs', [hour(0, 9)], ann],
    ],
    bad: [
      ['stairs', [hour(0, 8)], ann],
      ['a', [hour(0, 9)], ann],
    ],
  },
]

test.each(cases.filter(({ good }) => good.length > 0))(
  '$rule is held against a plan that breaks it, and only then',
  ({ rule, asked, good, bad }) => {
    expect(rulesBroken(asked, good)).toEqual([])
    expect(rulesBroken(asked, bad)).toEqual([rule])
  },
)

test('work under way began when it began', () => {
  const [{ asked, bad, rule }] = cases.filter((each) => each.rule === 'started') as [Case]
  expect(rulesBroken(asked, bad)).toEqual([rule])
})

test('a coat is never broken off over a night; what may be has an hour on both sides', () => {
  const over = (from: number, breaking: 'never' | 'natural') =>
    rulesBroken(problem({ tasks: [task('a', { work: 180, breaking })] }), [
      [
        'a',
        [
          [at(0, from), at(0, 16)],
          [at(1, 8), at(1, 8 + 3 - (16 - from))],
        ],
        ann,
      ],
    ])
  expect(over(14, 'natural')).toEqual([])
  expect(over(14, 'never')).toEqual(['brokenOff'])
  expect(
    rulesBroken(problem({ tasks: [task('a', { work: 180, breaking: 'natural' })] }), [
      [
        'a',
        [
          [at(0, 13, 30), at(0, 16)],
          [at(1, 8), at(1, 8, 30)],
        ],
        ann,
      ],
    ]),
  ).toEqual(['brokenOff'])
})

test('changing product and setting a room up once more are spent', () => {
  const asked = problem({
    tasks: [
      task('a', { room: 'r', product: 'white' }),
      task('b', { room: 'r', product: 'blue' }),
      task('c', { room: 'r' }),
    ],
    rooms: [room('r', { setUpAgain: workingMinutes(30) })],
    spending: { moving: 0, changingProduct: 15, leastPaid: 0 },
  })
  const plan = (change: number, again: number): Rows => [
    ['a', [hour(0, 8)], ann],
    ['b', [[at(0, 9), at(0, 10, change)]], ann],
    // Tuesday to Thursday are three whole days in which nobody works and nothing is wet.
    ['c', [[at(4, 8), at(4, 9, again)]], ann],
  ]
  expect(rulesBroken(asked, plan(15, 30))).toEqual([])
  expect(rulesBroken(asked, plan(0, 30))).toEqual(['timeSpent'])
  expect(rulesBroken(asked, plan(15, 0))).toEqual(['timeSpent'])
})

test('money is read off the pieces: attendance, site days, days of rooms without what was given back, hand-overs', () => {
  const asked = problem({
    tasks: [
      task('a', { room: 'r', effects: { touchDry: 600 } }),
      task('b', { room: 'r' }),
      task('c', { room: 'r' }),
    ],
    people: [person('Ann', { breaks: lunch }), person('Ben', { centsPerHour: 2000 })],
    rooms: [room('r')],
    rules: { dailyChores: { setUp: 15, cleanUp: 20 } },
    spending: { moving: 0, changingProduct: 0, leastPaid: 240 },
  })
  const { cost, attendance, rooms, handOvers } = figuresOf(
    asked,
    handPlan([
      ['a', [hour(0, 9)], ann],
      ['c', [hour(0, 14)], ann],
      ['b', [hour(7, 9)], ['Ben']],
    ]),
  )
  // Ann from 9 to 15 without half an hour of lunch, 35 minutes to set up and leave; Ben for an hour, paid half a day.
  expect(attendance.map(({ person: who, minutes }) => [who, minutes])).toEqual([
    ['Ann', 365],
    ['Ben', 240],
  ])
  expect(cost.pay).toBe(Math.round((365 * 3000) / 60) + (240 * 2000) / 60)
  // Monday to Monday are six working days. The room is wet until 20:00, given back on Tuesday, waits for six days, and is taken for the Monday.
  expect(cost.siteDays).toBe(6 * 20_000)
  // The same a day later: the day waited is one more.
  const later = figuresOf(
    asked,
    handPlan([
      ['a', [hour(1, 9)], ann],
      ['c', [hour(1, 14)], ann],
      ['b', [hour(8, 9)], ['Ben']],
    ]),
  )
  expect(later.cost.siteDays).toBe(7 * 20_000)
  expect(rooms[0]?.stretches.map(({ first, last }) => last - first + 1)).toEqual([1, 1])
  expect(cost.roomDays).toBe(2 * 4000 + 6 * 2000)
  expect(handOvers).toEqual(['b'])
  expect(cost.total).toBe(cost.pay + cost.siteDays + cost.roomDays + cost.handOvers)
})

test('a room in which work was begun on Friday is out of use from then, the weekend within it', () => {
  const asked = problem({
    tasks: [
      task('a', {
        room: 'r',
        state: { kind: 'started', start: at(-3, 15), people: ann, remainingWork: workingMinutes(60) },
      }),
      task('b', { room: 'other' }),
    ],
    rooms: [room('r'), room('other')],
  })
  const [a, b] = handPlan([
    ['a', [hour(0, 8)], ann],
    ['b', [hour(0, 9)], ann],
  ]).tasks as [Plan['tasks'][number], Plan['tasks'][number]]
  const { rooms } = figuresOf(asked, { tasks: [{ ...a, start: epochMinutes(at(-3, 15)) }, b] })
  const days = rooms.map(({ stretches }) => stretches.map(({ first, last }) => last - first + 1))
  expect(days).toEqual([[4], [1]])
})

test('of plans that were found, every one that is changed a little breaks a rule', () => {
  const house = randomHouse(5, { rooms: 3, crew: 2, isRich: true, roomLimit: 2 })
  const search = createSearch(house, 1)
  search.step(600)
  const plan = search.best() as Plan
  expect(verifyPlan(house, plan)).toEqual([])
  for (const planned of plan.tasks) {
    const change = (changed: Partial<typeof planned>): Plan => ({
      tasks: plan.tasks.map((each) => (each === planned ? { ...each, ...changed } : each)),
    })
    const [first] = planned.segments
    if (first === undefined) throw new Error('every task has work')
    const shorter = [{ start: epochMinutes(first.start + 5), end: first.end }, ...planned.segments.slice(1)]
    expect(
      verifyPlan(house, change({ segments: shorter, start: epochMinutes(first.start + 5) })),
    ).not.toEqual([])
    expect(verifyPlan(house, change({ people: [] }))).not.toEqual([])
    const early = planned.segments.map(({ start, end }) => ({
      start: epochMinutes(start - 1440 * 60),
      end: epochMinutes(end - 1440 * 60),
    }))
    expect(
      verifyPlan(
        house,
        change({
          segments: early,
          start: epochMinutes(planned.start - 1440 * 60),
          end: epochMinutes(planned.end - 1440 * 60),
        }),
      ),
    ).not.toEqual([])
  }
})

test('a coat that goes on after a night is paid for each night, other work is not', () => {
  const asked = problem({
    tasks: [
      task('coat', { room: 'r', work: 10 * 60, breaking: 'natural', effects: { touchDry: 60 } }),
      task('sand', { room: 'r', work: 10 * 60, breaking: 'natural' }),
    ],
    rooms: [room('r')],
  })
  const days = (day: number): Rows[number][1] => [
    [at(day, 8), at(day, 16)],
    [at(day + 1, 8), at(day + 1, 10)],
  ]
  const plan = handPlan([
    ['coat', days(0), ann],
    ['sand', days(2), ann],
  ])
  expect(figuresOf(asked, plan).cost.handOvers).toBe(asked.prices.takeUp)
})
