import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import type { Pin, PinId } from '../../core/project/progress-records.ts'
import type { CrewMemberId, RuleId } from '../../core/project/shop-records.ts'
import type { RoomId } from '../../core/project/sketch-records.ts'
import { localInstant, personOf, siteClock } from '../../core/schedule/job/site-hours.ts'
import type { MinutesByStep, StepFact } from '../../core/schedule/job/step-facts.ts'
import { groupSteps } from '../../core/schedule/job/step-groups.ts'
import { type StepLink, stepLinks } from '../../core/schedule/job/step-links.ts'
import {
  nothingHappened,
  type PlanningFacts,
  tasksFromSpecification,
} from '../../core/schedule/job/tasks-from-specification.ts'
import { hallsOnTheWay, openNeighbours } from '../../core/schedule/job/ways-through.ts'
import { validateProblem } from '../../core/schedule/validate.ts'
import type { Specification, Step } from '../../core/specification/types.ts'
import { elapsedMinutes, workingMinutes } from '../../core/units/duration.ts'
import { oldHouse } from '../../demo-data/old-house.ts'
import { handStep, plainJob, plainSpecification } from '../fixtures/plain-room.ts'

const ada = 'ada' as CrewMemberId

function minutesOf(steps: readonly Step[], each: number): MinutesByStep {
  return new Map(steps.map((step) => [step.key, workingMinutes(each)]))
}

function specificationOf(steps: readonly Step[], order: readonly StepLink[]): Specification {
  return {
    steps,
    order: order.map(({ before, after, atLeast, atMost }) => ({
      before,
      after,
      minimumWait: elapsedMinutes(atLeast),
      maximumWait: atMost === null ? null : elapsedMinutes(atMost),
      ruleId: 'order',
      reason: '',
      source: 'common practice',
    })),
    holds: [],
    notices: [],
    clashes: [],
  }
}

function after(before: string, later: string, atLeast = 0, atMost: number | null = null): StepLink {
  return { before, after: later, atLeast, atMost }
}

function tasksOf(
  specification: Specification,
  each: number,
  planning: PlanningFacts = nothingHappened,
  job: Job = plainJob(),
) {
  return tasksFromSpecification(job, specification, minutesOf(specification.steps, each), planning)
}

test('one plain room becomes one task a step, with its drying time as a wait', () => {
  const { problem, relaxed } = tasksOf(plainSpecification, 100)
  expect(validateProblem(problem)).toEqual([])
  expect(relaxed).toEqual([])
  expect(problem.tasks.map((task) => task.id)).toEqual(plainSpecification.steps.map((step) => step.key))
  expect(problem.links).toContainEqual({
    from: 'study/walls/coat-1',
    to: 'study/walls/coat-2',
    measuredFrom: 'end',
    atLeast: 240,
    atMost: null,
  })
  const coat = problem.tasks.find((task) => task.id === 'study/walls/coat-2')
  // 100 person-minutes let a second person in, 12 ft x 10 ft would hold two.
  expect(coat).toMatchObject({
    work: 100,
    crew: { min: 1, max: 2 },
    skills: ['painting'],
    product: 'wall-paint/linen',
    effects: { wetFor: 60, dusty: false, fumesFor: null, closedFor: 60 },
  })
})

test('small steps that follow one another are done in one go', () => {
  const steps = ['a', 'b', 'c'].map((key) => handStep(key, {}))
  const { problem, groups } = tasksOf(specificationOf(steps, [after('a', 'b'), after('b', 'c')]), 20)
  expect(problem.tasks).toHaveLength(1)
  expect(problem.tasks[0]?.work).toBe(20 + 20 + 20)
  expect(groups.get('a')?.steps.map((step) => step.key)).toEqual(['a', 'b', 'c'])
})

test('what has a wait between, another mess, another paint or another room stays apart', () => {
  const wallPaint = 'wall-paint' as Step['productId']
  const plain = handStep('a', {})
  const wet = handStep('a', { effects: { ...plain.effects, wet: true }, productId: wallPaint })
  const apart: readonly (readonly [Step, Partial<Step>, StepLink])[] = [
    [plain, {}, after('a', 'b', 30)],
    [plain, {}, after('a', 'b', 0, 30)],
    [wet, { effects: { ...plain.effects, dusty: true } }, after('a', 'b')],
    [wet, { productId: 'ceiling-paint' as Step['productId'] }, after('a', 'b')],
    [wet, { productId: wallPaint, colourId: 'linen' as Step['colourId'] }, after('a', 'b')],
    [plain, { roomId: 'den' as RoomId }, after('a', 'b')],
  ]
  for (const [first, changes, link] of apart) {
    const steps = [first, handStep('b', changes)]
    expect(groupSteps(steps, [link], minutesOf(steps, 4))).toHaveLength(2)
  }
  const large = [plain, handStep('b', {})]
  expect(groupSteps(large, [after('a', 'b')], minutesOf(large, 90))).toHaveLength(2)
})

test('a tiny step joins one that wants another skill, and somebody with both skills does the two', () => {
  const steps = [handStep('dust', { skill: 'preparation' }), handStep('coat', { skill: 'fineBrush' })]
  const specification = specificationOf(steps, [after('dust', 'coat')])
  const { problem } = tasksOf(specification, 4)
  expect(problem.tasks.map((task) => [task.id, task.skills])).toEqual([
    ['dust', ['fineBrush', 'preparation']],
  ])
  expect(tasksOf(specification, 30).problem.tasks).toHaveLength(2)
})

test('several done in one go leave the room as the worst of them does', () => {
  const { effects } = handStep('a', {})
  const steps = [
    handStep('dust', {}),
    handStep('coat', {
      effects: { wet: true, dusty: false, fumes: true, closesRoom: true },
      touchDry: elapsedMinutes(90),
    }),
    handStep('tidy', { effects, splittable: 'break' }),
  ]
  const { problem } = tasksOf(specificationOf(steps, [after('dust', 'coat'), after('coat', 'tidy')]), 15)
  expect(problem.tasks).toHaveLength(1)
  expect(problem.tasks[0]).toMatchObject({
    splitting: 'break',
    effects: { wetFor: 90, dusty: false, fumesFor: 90, closedFor: 90 },
  })
})

test('two steps are not joined around one that must come between them', () => {
  const between = { ...handStep('x', {}).effects, dusty: true }
  const wet = { ...handStep('x', {}).effects, wet: true }
  const steps = [
    handStep('a', { effects: wet }),
    handStep('x', { effects: between, roomId: 'den' as RoomId }),
    handStep('b', { effects: wet }),
  ]
  const links = [after('a', 'x'), after('x', 'b')]
  expect(groupSteps(steps, links, minutesOf(steps, 10)).map((group) => group.key)).toEqual(['a', 'x', 'b'])
})

test('joining never makes two tasks wait for one another', () => {
  // a1 -> b2 and b1 -> a2: the pair a and the pair b cannot both be one task.
  const den = 'den' as RoomId
  const steps = [
    handStep('a1', {}),
    handStep('b1', { roomId: den }),
    handStep('a2', {}),
    handStep('b2', { roomId: den }),
  ]
  const links = [after('a1', 'b2'), after('b1', 'a2')]
  const groups = groupSteps(steps, links, minutesOf(steps, 10))
  expect(groups.map((group) => group.steps.map((step) => step.key))).toEqual([['a1', 'a2'], ['b1'], ['b2']])
})

test('a skipped step hands its place on, and the coat before it still dries', () => {
  const steps = ['coat', 'sand', 'coat-again'].map((key) => handStep(key, {}))
  const specification = specificationOf(steps, [after('coat', 'sand', 240), after('sand', 'coat-again')])
  const planned = (key: string) => key !== 'sand'
  expect(stepLinks(specification, planned, () => false)).toEqual([after('coat', 'coat-again', 240)])
  const dropped: StepFact = { kind: 'dropped', stepKey: 'sand' }
  const { problem } = tasksOf(specification, 60, { ...nothingHappened, facts: [dropped] })
  expect(problem.tasks.map((task) => task.id)).toEqual(['coat', 'coat-again'])
  expect(problem.links).toEqual([
    { from: 'coat', to: 'coat-again', measuredFrom: 'end', atLeast: 240, atMost: null },
  ])
})

test('daily steps are chores, not tasks', () => {
  const steps = [handStep('cover', { daily: true, operation: 'coverAlarm' }), handStep('work', {})]
  const { problem } = tasksOf(specificationOf(steps, [after('cover', 'work')]), 30)
  expect(problem.tasks.map((task) => task.id)).toEqual(['work'])
  expect(problem.links).toEqual([])
})

test('what is done or begun stays so, and only what is open goes on in one go', () => {
  const steps = ['a', 'b', 'c', 'd'].map((key) => handStep(key, {}))
  const specification = specificationOf(steps, [after('a', 'b'), after('b', 'c'), after('c', 'd')])
  const facts: readonly StepFact[] = [
    {
      kind: 'done',
      stepKey: 'a',
      startedAt: '2027-03-29T08:15',
      endedAt: '2027-03-29T08:35',
      crewMemberIds: [ada],
    },
    {
      kind: 'started',
      stepKey: 'b',
      startedAt: '2027-03-29T08:35',
      crewMemberIds: [ada],
      leftMinutes: workingMinutes(12),
    },
  ]
  const { problem } = tasksOf(specification, 20, { now: '2027-03-29T08:47', facts, promises: [] })
  expect(validateProblem(problem)).toEqual([])
  // The clock starts at the next five minutes.
  expect(problem.clock.start).toBe(localInstant('2027-03-29T08:50', 'America/New_York'))
  expect(problem.tasks.map((task) => [task.id, task.state.kind, task.work])).toEqual([
    ['a', 'done', 5],
    ['b', 'started', 12],
    ['c', 'open', 20 + 20],
  ])
})

test('a pin holds an open task, and one that cannot is said to be lost', () => {
  const pin = (id: string, taskKey: string, startsAt: string): Pin => ({
    id: id as PinId,
    taskKey,
    startsAt,
    crewMemberIds: [ada],
  })
  const pins = {
    held: pin('held', 'study/walls/coat-1', '2027-03-30T09:02'),
    gone: pin('gone', 'study/floor/coat-1', '2027-03-30T09:00'),
    past: pin('past', 'study/protect', '2027-03-20T09:00'),
  }
  const { problem, relaxed } = tasksOf(plainSpecification, 100, nothingHappened, plainJob({ pins }))
  expect(problem.tasks.find((task) => task.id === 'study/walls/coat-1')?.state).toEqual({
    kind: 'pinned',
    start: localInstant('2027-03-30T09:00', 'America/New_York'),
    people: [ada],
  })
  expect(relaxed).toEqual([
    { what: 'pinLost', id: 'gone' },
    { what: 'pinLost', id: 'past' },
  ])
})

test('work longer than a morning pauses over the break although it should not, and that is said', () => {
  const steps = [handStep('long', { splittable: 'no', skill: 'fineBrush' })]
  // Only Ada has the fine brush: 8:00-12:00 less 50 min of chores leaves less than 300 min.
  const { problem, relaxed } = tasksOf(specificationOf(steps, []), 300)
  expect(problem.tasks[0]?.splitting).toBe('break')
  expect(relaxed).toEqual([{ what: 'splitOverBreak', id: 'long' }])
  expect(tasksOf(specificationOf(steps, []), 60).problem.tasks[0]?.splitting).toBe('none')
  expect(tasksOf(specificationOf(steps, []), 900).problem.tasks[0]?.splitting).toBe('night')
})

test('hours shrink to the five-minute grid and breaks grow to it', () => {
  const member = plainJob().crew.ada
  if (!member) throw new Error('Ada is missing')
  const odd = {
    ...member,
    week: { ...member.week, monday: [{ from: '08:03', to: '16:28' }] },
    breaks: [{ from: '12:01', to: '12:29' }],
    partDays: [{ date: '2027-04-01', from: '09:00', to: '12:00' }],
  } as const
  const person = personOf(odd, 5)
  expect(person.week[1]).toEqual([{ from: 8 * 60 + 5, to: 16 * 60 + 25 }])
  expect(person.breaks).toEqual([{ from: 12 * 60, to: 12 * 60 + 30 }])
  expect(person.partDays).toEqual([{ date: '2027-04-01', windows: [{ from: 540, to: 720 }] }])
  expect(person.week[0]).toEqual([])
})

test('work starts when the site opens on the first day, or now if that is later', () => {
  const job = plainJob()
  const zone = job.header.timeZone
  expect(siteClock(job, null, 5).start).toBe(localInstant('2027-03-29T08:00', zone))
  expect(siteClock(job, '2027-03-20T10:00', 5).start).toBe(localInstant('2027-03-29T08:00', zone))
  expect(siteClock(job, '2027-03-30T10:01', 5).start).toBe(localInstant('2027-03-30T10:05', zone))
})

test('the old house: what is open to what, and which halls cannot be avoided', () => {
  const house = oldHouse()
  const open = openNeighbours(house)
  expect(open.get('living' as RoomId)).toEqual(['entry', 'dining'])
  expect(open.get('bath' as RoomId)).toEqual([])
  const halls = hallsOnTheWay(house)
  // Upstairs is reached only through the entry, up the stair, and along the upper hall; the kitchen has a door of its own.
  // The entry can be reached from the back door too, so it is on nobody's only way but the stair's.
  expect(halls.get('east-closet' as RoomId)).toEqual(['entry', 'stair-hall', 'upper-hall'])
  expect(halls.get('kitchen' as RoomId)).toEqual([])
  expect(halls.get('broom-closet' as RoomId)).toEqual(['passage'])
})

test('where more rooms are begun than may be out of use, as many stay so and that is said', () => {
  const steps = ['hall', 'den', 'bath'].flatMap((room) =>
    ['1', '2'].map((which) => handStep(`${room} ${which}`, { roomId: room as RoomId })),
  )
  const facts = (rooms: readonly string[]): readonly StepFact[] =>
    rooms.map((room) => ({
      kind: 'done',
      stepKey: `${room} 1`,
      startedAt: '2027-03-29T08:15',
      endedAt: '2027-03-29T09:15',
      crewMemberIds: [ada],
    }))
  const job = plainJob({ houseRules: { ...plainJob().houseRules, maxRoomsOutOfUse: 1 } })
  const planned = (rooms: readonly string[]) =>
    tasksOf(
      specificationOf(steps, []),
      100,
      { now: '2027-03-29T12:00', facts: facts(rooms), promises: [] },
      job,
    )
  const one = planned(['den'])
  expect(one.problem.rules.roomsOutOfUse).toBe(1)
  expect(one.relaxed).toEqual([])
  const two = planned(['hall', 'den'])
  expect(two.problem.rules.roomsOutOfUse).toBe(2)
  expect(two.relaxed).toEqual([
    { what: 'roomBegun', id: 'hall' },
    { what: 'roomBegun', id: 'den' },
  ])
})

test('house rules follow the job: nobody sleeps in an empty house, and a rule switched off is off', () => {
  const specification = plainSpecification
  const lived = tasksOf(specification, 100).problem.rules
  expect(lived).toMatchObject({
    noDustNearWet: true,
    hallsLast: true,
    noFumesWhileSleeping: { from: 1260, to: 420 },
  })
  const empty = plainJob({ header: { ...plainJob().header, occupied: false } })
  expect(tasksOf(specification, 100, nothingHappened, empty).problem.rules.noFumesWhileSleeping).toBeNull()
  const id = 'schedule-halls-last' as RuleId
  const switched = plainJob({ rules: { [id]: { id, on: false, numbers: {} } } })
  expect(tasksOf(specification, 100, nothingHappened, switched).problem.rules.hallsLast).toBe(false)
})
