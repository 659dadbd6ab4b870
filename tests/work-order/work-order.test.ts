import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { feet } from '../../core/units/length.ts'
import { type DocumentPart, workOrderHtml } from '../../core/work-order/html.ts'
import { planSize } from '../../core/work-order/plan-drawing.ts'
import { shoppingLines } from '../../core/work-order/shopping.ts'
import { workOrder } from '../../core/work-order/work-order.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'
import { sampleInput, sampleOrder } from './sample-order.ts'

const order = sampleOrder()
const study = order.rooms[0]

test('room sets stand in the order the plan starts them, those not planned last', () => {
  expect(order.cover.rooms.map((room) => [room.number, room.name, room.firstDay, room.lastDay])).toEqual([
    [1, 'Study', '2027-03-29', '2027-03-30'],
    [2, 'Parlour & library <with "bay">', null, null],
  ])
})

test('the cover has the days of each phase of a room, as the plan works them', () => {
  expect(order.cover.rooms[0]?.phases).toEqual([
    { phase: 'prepare', days: ['2027-03-29'] },
    { phase: 'ceiling', days: ['2027-03-29'] },
    { phase: 'walls', days: ['2027-03-29', '2027-03-30'] },
  ])
})

test('a room is free when its last work has ended and its last coat is dry to the touch', () => {
  // Second wall coat ends at 10:25 and is touch dry 60 minutes later.
  expect(study?.freeAt).toBe('2027-03-30T11:25')
})

test('the lead of a room is who works longest in it', () => {
  expect([study?.lead, order.rooms[1]?.lead]).toEqual(['Ada', null])
})

test('a pass says after which other it may begin at the earliest, as a wait and not as a time', () => {
  expect(study?.passes.map(({ number, name, waits }) => [number, name, waits])).toEqual([
    [1, 'Set up', []],
    [2, 'Ceiling', []],
    [3, 'Walls, first coat', [{ after: 2, afterName: 'Ceiling', atLeast: 60, atMost: null }]],
    [4, 'Walls, second coat', [{ after: 3, afterName: 'Walls, first coat', atLeast: 240, atMost: null }]],
  ])
  const page = workOrderHtml(order, 'letter', ['rooms'])
  expect(page).toContain('4 h after 3 walls, first coat')
  expect(page).not.toMatch(/\d:\d\d (am|pm)/)
})

test('the hours of the passes add up to those of the room', () => {
  for (const room of order.rooms) {
    const passes = room.passes.reduce((sum, pass) => sum + pass.personMinutes, 0)
    expect(room.personMinutes).toBeCloseTo(passes, 9)
    for (const pass of room.passes) {
      const lines = pass.lines.reduce((sum, line) => sum + line.personMinutes, 0)
      expect(pass.personMinutes).toBeCloseTo(lines, 9)
    }
  }
})

test('the table of colors has product, color, sheen, coats, amount and what all coats take', () => {
  // Ceiling 12 ft x 10 ft; walls 44 ft x 8 ft, nothing taken off by this fixture.
  expect(
    study?.colors.map(({ surface, color, sheen, coats, amount }) => [surface, color, sheen, coats, amount]),
  ).toEqual([
    ['Ceiling', '', 'flat', 1, '120 sq ft'],
    ['Walls', 'Linen', 'eggshell', 2, '352 sq ft'],
  ])
  expect(study?.colors[1]?.gallons).toBeCloseTo(2 * 1.03, 1)
})

test('openings have letters that go on from those of the walls', () => {
  expect(study?.openings.map(({ letter, words }) => `${letter} ${words}`)).toEqual([
    'E window',
    'F window "east window"',
    'G fireplace',
    'H door to Parlour & library <with "bay">',
    'I cased opening',
  ])
  const letters = study?.plans[0]?.openings.map(({ letter }) => letter)
  expect(letters).toEqual(['E', 'F', 'G', 'H', 'I'])
})

test('what was found is numbered as in the drawing, with its place and amount', () => {
  expect(study?.repairs.map((line) => [line.number, line.what, line.where, line.amount])).toEqual([
    [1, 'stress crack, moderate', 'ceiling', `9' 6"`],
    [2, 'popped fastener, slight', 'ceiling', '7'],
    [3, 'water stain, moderate', 'wall A', '4 sq ft'],
    [4, 'loose or peeling paint, severe', 'wall A', '13 sq ft'],
    [5, 'glossy old paint, moderate', 'trim', ''],
  ])
  expect(study?.repairs[2]?.note).toBe('suspected cause: leaking gutter (put right)')
})

test('cautions are listed once per room, and all of them on the cover', () => {
  expect(study?.cautions.map((caution) => caution.id)).toEqual(['alarm', 'air'])
  expect(order.cover.cautions).toHaveLength(2)
  expect(order.cover.toDecide.map((notice) => notice.kind)).toEqual(['cause'])
})

test('the register holds everything kept in the way with what to do with it', () => {
  expect(study?.register.map((line) => [line.count, line.where, line.handling, line.wired])).toEqual([
    [6, 'room', 'takeOff', false],
    [1, 'ceiling', 'coverDaily', true],
    [1, 'wall B', 'loosen', false],
  ])
})

test('the color record has every finish with its room, and what is bought of it to be kept', () => {
  expect(
    order.colorRecord.paints.map(({ product, color, sheen, roomNames }) => [
      product,
      color,
      sheen,
      roomNames,
    ]),
  ).toEqual([
    ['Ceiling paint', '', 'flat', ['Study']],
    ['Wall paint', 'Linen', 'eggshell', ['Study']],
  ])
  expect(order.colorRecord.leadPapers).toEqual([])
  expect(workOrderHtml(order, 'letter', ['colorRecord'])).not.toContain('$')
})

test('a day on site says who works where in which half, which cans to bring, and who covers the alarms', () => {
  const halves = order.days.map((day) => [
    day.date,
    day.people.map(({ name, morning, afternoon }) => [
      name,
      ...[morning, afternoon].map((half) =>
        half.map(({ roomName, passes }) => [roomName, ...passes].join(': ')),
      ),
    ]),
  ])
  // Ada's first coat on the walls goes on until 13:25 after the break at noon.
  expect(halves).toEqual([
    [
      '2027-03-29',
      [
        ['Ada', ['Study: Cover the floor and what stays: Coat 1: Mask off'], ['Study: Coat 1']],
        ['Ben', ['Study: Coat 1'], []],
      ],
    ],
    ['2027-03-30', [['Ada', ['Study: Coat 2'], []]]],
  ])
  const [first] = order.days
  expect(first?.people[0]?.cans).toEqual([
    { what: 'Ceiling paint, flat', roomNames: ['Study'] },
    { what: 'Wall paint, Linen, eggshell', roomNames: ['Study'] },
  ])
  expect(first?.chores).toEqual([{ kind: 'alarms', roomNames: ['Study'] }])
  // Ada stays longest.
  expect(first?.choresOwner).toBe('ada')
})

test('a pass whose steps are all ticked says that it is done, one taken back does not', () => {
  const mark = (id: string, stepKey: string, kind: string, at: string) => ({
    [id]: { id, stepKey, mark: kind, at, crewMemberIds: [], actualMinutes: null, note: '' },
  })
  const marks = {
    ...mark('one', 'study/protect', 'done', '2027-03-29T09:00'),
    ...mark('two', 'study/walls/mask', 'done', '2027-03-29T10:45'),
    ...mark('three', 'study/walls/mask', 'redo', '2027-03-29T11:00'),
  } as unknown as Job['marks']
  const [first] = sampleOrder({ marks }).days
  expect(first?.people[0]?.morning[0]?.passes).toEqual([
    'Cover the floor and what stays (done)',
    'Coat 1',
    'Mask off',
  ])
})

test('the shopping list goes by container and by the day it is first needed', () => {
  const lines = shoppingLines(order.shopping)
  expect(lines.map((line) => [line.count, line.container, line.item, line.neededOn])).toEqual([
    [1, 'gallon', 'Ceiling paint', '2027-03-29'],
    [3, 'gallon', 'Wall paint', '2027-03-29'],
    [1, 'piece', 'Masking tape, roll of 180 ft', '2027-03-29'],
    [1, 'piece', 'Roller cover, 9 in, 3/8 in nap', '2027-03-29'],
    [1, 'piece', 'Angled brush, 2 1/2 in', '2027-03-29'],
    [1, 'piece', 'Floor protection, per room', '2027-03-29'],
  ])
  // The walls' color is mixed to order and comes in three cans; the ceiling's is not, and both leave a spare.
  expect(lines.slice(0, 3).map((line) => line.advice)).toEqual([
    'keep the rest',
    'one batch, boxed; keep the rest',
    '',
  ])
})

test('the proposal shares the price over rooms, its payments make the whole, and it shows no wage, rate or margin', () => {
  const { floors, beforeTax, tax, total, payments } = order.proposal
  const rooms = floors.flatMap((floor) => floor.rooms)
  expect(rooms.reduce((sum, room) => sum + room.cents, 0)).toBe(beforeTax)
  expect(beforeTax + tax).toBe(total)
  expect(payments.reduce((sum, { cents }) => sum + cents, 0)).toBe(total)
  expect(rooms[0]?.scope).toEqual([
    'Ceiling 120 sq ft: one coat of latex ceiling paint, color to be chosen, flat.',
    'Walls 352 sq ft: two coats of latex wall paint, Linen, eggshell.',
  ])
  expect(JSON.stringify({ ...order.proposal, doubts: [] })).not.toMatch(/wage|burden|margin|markup/i)
})

test('the plan letters the walls and draws an opening from both of its sides', () => {
  expect(study?.plans[0]?.walls.map((wall) => [wall.letter, wall.length])).toEqual([
    ['A', `12' 0"`],
    ['B', `10' 0"`],
    ['C', `12' 0"`],
    ['D', `10' 0"`],
  ])
  const foot = 304.8
  // South wall runs from (12, 10) to (0, 10); the door starts 1 ft along it and is 3 ft wide.
  const near = study?.plans[0]?.openings.find((opening) => opening.kind === 'door')
  expect(near?.from.x).toBeCloseTo(11 * foot, 6)
  expect(near?.to.x).toBeCloseTo(8 * foot, 6)
  expect(near?.from.y).toBeCloseTo(10 * foot, 6)
  // From the parlour it lies in the parlour's own north wall, at the top of that drawing.
  const far = order.rooms[1]?.plans[0]?.openings
  expect(far).toHaveLength(1)
  expect(far?.[0]?.from).toEqual({ x: expect.closeTo(11 * foot, 6), y: expect.closeTo(0, 6) })
})

test('markers of a wall stand inside the room beside that wall', () => {
  const markers = study?.plans[0]?.markers ?? []
  const onNorth = markers.filter((marker) => marker.number === 3 || marker.number === 4)
  // The 10 ft of depth get 27 mm on paper, and a ring stands 6.6 mm from its wall.
  const inset = (6.6 * 3048) / 27
  expect(onNorth.map((marker) => marker.at.y)).toEqual([expect.closeTo(inset, 6), expect.closeTo(inset, 6)])
  expect(onNorth[0]?.at.x).toBeCloseTo((12 * 304.8) / 3, 6)
})

test('an outline drawn the other way round has its inside on the other side', () => {
  const job = plainJob()
  const room = job.rooms[roomId]
  if (room === undefined) throw new RangeError(roomId)
  const turned = { ...room, corners: room.corners.toReversed() }
  const other = sampleOrder({ rooms: { [roomId]: turned } })
  expect(study?.plans[0]?.turn).toBe(1)
  expect(other.rooms[0]?.plans[0]?.turn).toBe(-1)
})

test('no two markers cover each other, however narrow the room', () => {
  const job = plainJob()
  const room = job.rooms[roomId]
  if (room === undefined) throw new RangeError(roomId)
  const narrow = {
    ...room,
    corners: room.corners.map((each) => ({ ...each, x: Math.round(each.x / 4) as typeof each.x })),
  }
  const plan = sampleOrder({ rooms: { [roomId]: narrow }, openings: {} }).rooms[0]?.plans[0]
  if (plan === undefined) throw new RangeError('no plan')
  const { markers } = plan
  // 3 ft x 10 ft: drawn lying.
  expect(plan.isTurned).toBe(true)
  const ring = 4.2 * planSize([plan], 66, 42).scale
  expect(markers).toHaveLength(5)
  for (const one of markers) {
    for (const other of markers) {
      if (one.number >= other.number) continue
      expect(Math.hypot(one.at.x - other.at.x, one.at.y - other.at.y)).toBeGreaterThanOrEqual(ring)
    }
  }
})

test('a day of a person carries the caution of lead and asbestos work it lists, and no other', () => {
  const input = sampleInput()
  const cautions = ['asbestos', 'lead', 'ladder'].map((id) => ({
    id,
    text: `Mind the ${id}.`,
    rule: 'a rule',
  }))
  const specification = {
    ...input.specification,
    steps: input.specification.steps.map((step) =>
      step.key === 'study/ceiling/coat-1' ? { ...step, cautions } : step,
    ),
  }
  const { days } = workOrder(input.job, input.takeoff, specification, input.estimate, input.plan)
  const carried = days.flatMap(({ date, people }) =>
    people.map((person) => [person.name, date, person.cautions.map(({ id }) => id)]),
  )
  expect(carried).toEqual([
    ['Ada', '2027-03-29', ['lead', 'asbestos']],
    ['Ben', '2027-03-29', ['lead', 'asbestos']],
    ['Ada', '2027-03-30', []],
  ])
  const pages = workOrderHtml(
    workOrder(input.job, input.takeoff, specification, input.estimate, input.plan),
    'letter',
    ['weeks'],
  )
  expect(pages.split('Mind the lead.')).toHaveLength(2)
  expect(pages).not.toContain('Mind the ladder.')
})

test('a safety rule that is left out stands with its reason on the cover and on the sheet of the room', () => {
  const input = sampleInput()
  const sentence = '“Lead-safe work” is left out. Tested by I. Spector, report R-7.'
  const notice = { kind: 'leftOut', surfaceKeys: [], sentence, source: '40 CFR', hold: false } as const
  const notices = [
    { ...notice, roomId: null },
    { ...notice, roomId },
  ]
  const specification = { ...input.specification, notices }
  const given = workOrder(input.job, input.takeoff, specification, input.estimate, input.plan)
  const said = (part: DocumentPart) => workOrderHtml(given, 'letter', [part]).split('report R-7').length - 1
  expect([said('cover'), said('rooms')]).toEqual([1, 1])
  expect(workOrderHtml(given, 'letter', ['cover'])).toContain('Safety rules left out')
})

test('the heights of a sloping ceiling stand on the floor plan with the line of its ridge, those of a flat one do not', () => {
  const room = plainJob().rooms[roomId]
  if (room === undefined) throw new RangeError(roomId)
  // 10 ft across: low at both sides, the ridge over the middle.
  const ceiling = {
    kind: 'gable',
    along: 'x',
    startHeight: feet(7),
    endHeight: feet(6, 6),
    ridgeAt: feet(5),
    ridgeHeight: feet(9),
  } as const
  const order = sampleOrder({ rooms: { [roomId]: { ...room, ceiling } }, openings: {} })
  const slope = order.rooms[0]?.plans[0]?.slope
  expect(slope?.heights.map(({ text }) => text)).toEqual([`low 7' 0"`, `ridge 9' 0"`, `low 6' 6"`])
  expect(slope?.heights[1]?.at.x).toBeCloseTo(1524, 3)
  expect(slope?.bends.map(([from, to]) => [from.x, to.x].map(Math.round))).toEqual([[1524, 1524]])
  expect(workOrderHtml(order, 'letter', ['rooms'])).toContain('>ridge 9')
  expect(study?.plans[0]?.slope).toEqual({ heights: [], bends: [] })
})
