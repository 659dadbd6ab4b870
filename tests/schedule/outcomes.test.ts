import { expect, test } from 'vitest'
import { epochMinutes, type ScheduleProblem } from '../../core/schedule/model.ts'
import { createSearch } from '../../core/schedule/search.ts'
import { firstPlan, solve } from '../../core/schedule/solve.ts'
import { validateProblem } from '../../core/schedule/validate.ts'
import { verifyPlan } from '../../core/schedule/verify.ts'
import { elapsedMinutes, workingMinutes } from '../../core/units/duration.ts'
import { at, link, person, problem, room, task } from './builders.ts'

function clashOf(job: ScheduleProblem) {
  const outcome = solve(job, { seed: 1, iterations: 300 })
  if (outcome.kind === 'scheduled') throw new Error('there should be no plan')
  return outcome
}

function planOf(job: ScheduleProblem, iterations = 300) {
  const outcome = solve(job, { seed: 1, iterations })
  if (outcome.kind !== 'scheduled') throw new Error(JSON.stringify(outcome))
  return outcome
}

test('waits that contradict each other are named as a circle, with proof', () => {
  // trim 2 not before 16 h after trim 1, yet within 4 h after the degloss that is followed by trim 1
  const job = problem({
    tasks: [task('degloss'), task('trim 1'), task('trim 2')],
    links: [
      link('degloss', 'trim 1', 0),
      link('trim 1', 'trim 2', 16 * 60),
      link('degloss', 'trim 2', 0, 4 * 60),
    ],
  })
  const outcome = clashOf(job)
  expect(outcome.kind).toBe('impossible')
  if (outcome.clash.kind !== 'waitsContradict') throw new Error(outcome.clash.kind)
  expect([...outcome.clash.tasks].sort()).toEqual(['degloss', 'trim 1', 'trim 2'])
})

test('a pin that comes too early for the work right before it is named, not the waits between the two', () => {
  // the coat is pinned to 8:30 and within 30 min after the degloss, which takes from 8 to 9 at the soonest
  const pinned = { kind: 'pinned', start: at(0, 8, 30), people: null } as const
  const tasks = [task('coat', { state: pinned }), task('degloss')]
  const job = problem({ tasks, links: [link('degloss', 'coat', 0, 30)] })
  const { kind, clash } = clashOf(job)
  expect(kind).toBe('impossible')
  expect(clash).toEqual({ kind: 'pinnedCannotHold', task: 'coat' })
})

test('waits that contradict each other are named also where one of the tasks is pinned', () => {
  // the coat 16 h after the degloss, yet within 4 h: no pin is to blame
  const pinned = { kind: 'pinned', start: at(1, 8), people: null } as const
  const tasks = [task('coat', { state: pinned }), task('degloss'), task('dry')]
  const links = [link('degloss', 'dry'), link('dry', 'coat', 960), link('degloss', 'coat', 0, 240)]
  const { kind, clash } = clashOf(problem({ tasks, links }))
  expect(kind).toBe('impossible')
  expect(clash.kind).toBe('waitsContradict')
})

test('a skill nobody has is named, with proof', () => {
  const job = problem({ tasks: [task('hang paper', { skills: ['paper'] })] })
  expect(clashOf(job)).toEqual({
    kind: 'impossible',
    clash: { kind: 'skillMissing', task: 'hang paper', skills: ['paper'], people: [] },
  })
})

test('a crew larger than the company is named, with proof', () => {
  const job = problem({ tasks: [task('ladder work', { crew: { min: 2, max: 2 } })] })
  expect(clashOf(job)).toEqual({
    kind: 'impossible',
    clash: { kind: 'crewTooSmall', task: 'ladder work', needed: 2, available: 1 },
  })
})

test('a room due back before its coats can dry is named with the steps in the way, with proof', () => {
  // coat 1 Mon 8-9, dries 24 h, coat 2 Tue 9-10: not back by Monday evening
  const effects = { closedFor: 0 }
  const job = problem({
    rooms: [room('bedroom', { backBy: at(0, 18) })],
    tasks: [task('coat 1', { room: 'bedroom', effects }), task('coat 2', { room: 'bedroom', effects })],
    links: [link('coat 1', 'coat 2', 24 * 60)],
    rules: { roomBackInTime: true },
  })
  expect(clashOf(job)).toEqual({
    kind: 'impossible',
    clash: { kind: 'roomBackTooEarly', room: 'bedroom', tasks: ['coat 1', 'coat 2'] },
  })
  const patient = { ...job, rooms: [room('bedroom', { backBy: at(1, 18) })] }
  expect(planOf(patient).plan.value.finish).toBe(1)
})

test('a stretch longer than any working day that may not pause is named, with proof', () => {
  const job = problem({ tasks: [task('floor', { work: 9 * 60, splitting: 'none' })] })
  expect(clashOf(job)).toEqual({ kind: 'impossible', clash: { kind: 'noWorkingTime', tasks: ['floor'] } })
  const overNight = problem({ tasks: [task('floor', { work: 9 * 60, splitting: 'night' })] })
  // Monday 8-16 and Tuesday 8-9
  expect(planOf(overNight).plan.tasks[0]?.segments).toEqual([
    { start: at(0, 8), end: at(0, 16) },
    { start: at(1, 8), end: at(1, 9) },
  ])
})

test('where two pinned tasks want the same painter nothing is called impossible, and one of them is named', () => {
  const pinned = { kind: 'pinned', start: at(0, 10), people: ['Ann'] } as const
  const job = problem({ tasks: [task('walls', { state: pinned }), task('trim', { state: pinned })] })
  expect(clashOf(job)).toEqual({ kind: 'noneFoundYet', clash: { kind: 'pinnedCannotHold', task: 'trim' } })
})

test('a pinned coat takes the crew with which it is dry when the next pinned one starts', () => {
  // one painter: 8-10 and dry at 12; two painters: 8-9 and dry at 11, when coat 2 is pinned
  const tasks = [
    task('coat 1', {
      work: 120,
      crew: { min: 1, max: 2 },
      state: { kind: 'pinned', start: at(0, 8), people: null },
    }),
    task('coat 2', { state: { kind: 'pinned', start: at(0, 11), people: null } }),
  ]
  const job = problem({
    people: [person('Ann'), person('Bea')],
    links: [link('coat 1', 'coat 2', 120)],
    tasks,
  })
  expect(planOf(job).plan.tasks[0]?.end).toBe(at(0, 9))
  expect(planOf({ ...job, tasks: tasks.toReversed() }).plan.tasks[1]?.end).toBe(at(0, 9))
  expect(clashOf({ ...job, people: [person('Ann')] }).kind).toBe('impossible')
})

test('the finish is proved best where the bound meets it', () => {
  // one painter, 20 hours: three days of 8 hours whatever the order
  const job = problem({
    tasks: ['a', 'b', 'c', 'd', 'e'].map((id) => task(id, { work: 240, splitting: 'night' })),
  })
  const { plan, bound, gap } = planOf(job)
  expect(plan.value.finish).toBe(2)
  expect(bound.finish).toBe(2)
  expect(gap).toBe(0)
})

test('an open-time pair waits for a stretch of the day in which both fit', () => {
  // degloss 60 then coat 120 within 30 min, neither over the night: with 2 h of other work pinned at 12, the pair starts at 8 or 14
  //   8 == 9 = 11   or   nothing between 11 and 12 fits; after 14: 14 needs until 17 > 16, so the morning it is
  const pinned = { kind: 'pinned', start: at(0, 8), people: null } as const
  const job = problem({
    tasks: [task('first', { work: 240, state: pinned }), task('degloss'), task('coat', { work: 240 })],
    links: [link('degloss', 'coat', 0, 30)],
  })
  // Monday after 12: degloss 12-13 would leave 13-17 for the coat, past 16; so Tuesday 8-9 and 9-13
  const { plan } = planOf(job)
  expect(plan.tasks[1]?.start).toBeGreaterThanOrEqual(at(1, 8))
  expect(Number(plan.tasks[2]?.start) - Number(plan.tasks[1]?.end)).toBeLessThanOrEqual(30)
})

test('work has its place however late the task before it is pinned', () => {
  // One day on the Monday 20 weeks on and 49 days behind it are 10 weeks of 5 days: done on the Friday of week 30.
  const tasks = [
    task('pinned', { work: 480, state: { kind: 'pinned', start: at(140, 8), people: null } }),
    task('rest', { work: 49 * 480, splitting: 'night' }),
  ]
  expect(planOf(problem({ tasks, links: [link('pinned', 'rest')] }), 1).plan.value.finish).toBe(29 * 7 + 4)
})

test('people with different days share a task only while both are there', () => {
  // Ann Mon 8-16; Bob Mon 12-16 only: the pair starts at 12
  const half = [{ date: '2026-03-02', windows: [{ from: 12 * 60, to: 16 * 60 }] }]
  const job = problem({
    people: [person('Ann'), person('Bob', { partDays: half })],
    tasks: [task('wardrobe', { work: 120, crew: { min: 2, max: 2 } })],
  })
  const { plan } = planOf(job)
  expect(plan.tasks[0]).toMatchObject({ start: at(0, 12), end: at(0, 13), people: ['Ann', 'Bob'] })
})

test('work under way goes on first with its people, and done work is not touched', () => {
  const job = problem({
    clock: { ...problem().clock, start: at(1, 8) },
    people: [person('Ann'), person('Bob')],
    tasks: [
      task('prime', { state: { kind: 'done', start: at(0, 8), end: at(0, 9), people: ['Bob'] } }),
      task('walls', {
        work: 240,
        state: { kind: 'started', start: at(0, 14), people: ['Bob'], remainingWork: workingMinutes(120) },
      }),
      task('trim', { work: 60 }),
    ],
    links: [link('prime', 'trim', 26 * 60), link('walls', 'trim', 0)],
  })
  const { plan } = planOf(job)
  expect(plan.tasks[0]).toMatchObject({ start: at(0, 8), end: at(0, 9), people: ['Bob'] })
  expect(plan.tasks[1]).toMatchObject({ start: at(0, 14), segments: [{ start: at(1, 8), end: at(1, 10) }] })
  // not before 9:00 + 26 h = Tuesday 11:00
  expect(plan.tasks[2]?.start).toBeGreaterThanOrEqual(at(1, 11))
})

test('a helper who falls ill moves only what was theirs', () => {
  const people = [person('Ann'), person('Bob')]
  const tasks = ['a', 'b', 'c', 'd'].map((id) => task(id, { work: 240 }))
  const before = planOf(problem({ people, tasks })).plan
  const promises = before.tasks.map((planned) => ({
    task: planned.task,
    start: planned.start,
    people: planned.people,
  }))
  const ill = [person('Ann'), person('Bob', { daysOff: ['2026-03-02'] })]
  const after = planOf(problem({ people: ill, tasks, promises })).plan
  const bobs = before.tasks.filter((planned) => planned.people.includes('Bob')).length
  expect(after.value.movedPromises).toBe(bobs)
})

test('an unbroken clock takes pooled resources and waits from start to start, backwards too', () => {
  // crane of 1: a(3) b(2); b starts at most 2 after a ends: S(a) >= S(b) - 5; c(4) beside them: finish 5
  const plain = (id: string, work: number, crane: number) =>
    task(id, {
      work,
      crew: { min: 0, max: 0 },
      demands: crane === 0 ? [] : [{ resource: 'crane', amount: crane }],
    })
  const job = problem({
    clock: { kind: 'unbroken', start: epochMinutes(0) },
    gridMinutes: 1,
    people: [],
    resources: [{ id: 'crane', capacity: 1 }],
    tasks: [plain('a', 3, 1), plain('b', 2, 1), plain('c', 4, 0)],
    links: [
      { from: 'b', to: 'a', measuredFrom: 'start', atLeast: elapsedMinutes(-5), atMost: null },
      { from: 'a', to: 'b', measuredFrom: 'start', atLeast: elapsedMinutes(1), atMost: null },
    ],
  })
  expect(validateProblem(job)).toEqual([])
  const { plan, gap } = planOf(job)
  expect(plan.value.finish).toBe(5)
  expect(gap).toBe(0)
  expect(verifyPlan(job, plan)).toEqual([])
})

test('faults of a problem are told before anything is searched', () => {
  const job = problem({
    gridMinutes: 5,
    people: [person('Ann', { breaks: [{ from: 723, to: 750 }] })],
    tasks: [task('walls', { room: 'attic' }), task('walls')],
    links: [link('walls', 'ghost', 60, 30)],
  })
  expect(validateProblem(job)).toEqual([
    { kind: 'duplicateId', what: 'task', id: 'walls' },
    { kind: 'offGrid', at: { of: 'person', id: 'Ann' }, what: 'timeOfDay', value: 723, gridMinutes: 5 },
    { kind: 'unknownId', what: 'room', id: 'attic', at: { of: 'task', id: 'walls' } },
    { kind: 'unknownId', what: 'task', id: 'ghost', at: { of: 'link', from: 'walls', to: 'ghost' } },
    { kind: 'emptyLink', from: 'walls', to: 'ghost' },
  ])
})

test('a job without tasks is finished before it begins', () => {
  expect(planOf(problem()).plan.tasks).toEqual([])
  expect(firstPlan(problem()).kind).toBe('scheduled')
  expect(createSearch(problem(), 1).step(10).length).toBeLessThanOrEqual(1)
})

test('rooms that were out of use together in the past do not keep the one that is left from being finished', () => {
  // bath     8 done 9    10 == 11
  // kitchen  8 ==== done 10              one room at most from 10 on
  const done = (from: number, to: number) =>
    ({ kind: 'done', start: at(0, from), end: at(0, to), people: ['Ann'] }) as const
  const job = problem({
    rooms: [room('bath'), room('kitchen')],
    tasks: [
      task('bath 1', { room: 'bath', state: done(8, 9) }),
      task('bath 2', { room: 'bath' }),
      task('kitchen', { room: 'kitchen', state: done(8, 10) }),
    ],
    rules: { roomsOutOfUse: 1 },
  })
  const { plan } = planOf({ ...job, clock: { ...job.clock, start: at(0, 10) } })
  expect(plan.tasks[1]).toMatchObject({ start: at(0, 10), end: at(0, 11) })
})
