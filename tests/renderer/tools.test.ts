import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { records } from '../../core/project/job.ts'
import type { StoreyId } from '../../core/project/sketch-records.ts'
import { applyCommand } from '../../core/sketch/apply-command.ts'
import { feet } from '../../core/units/length.ts'
import {
  type Gesture,
  type Input,
  resting,
  type Surroundings,
  type ToolName,
  type ToolStep,
} from '../../renderer/canvas/tools/tool.ts'
import { tools } from '../../renderer/canvas/tools/tools.ts'
import type { NewId } from '../../renderer/state/new-id.ts'
import { study, twoRooms } from '../sketch/two-rooms.ts'

const noKeys = { adds: false, free: false }

function around(job: Job, selectedIds: readonly string[] = []): Surroundings {
  let count = 0
  // A counted name may stand for any kind of id here.
  const newId: NewId = (prefix) => `${prefix}-${++count}` as never
  return {
    job,
    storeyId: records(job.storeys)[0]?.id ?? ('none' as StoreyId),
    selectedIds,
    tolerance: feet(0, 4),
    grid: feet(0, 6),
    partition: feet(0, 5),
    newId,
  }
}

function at(xFeet: number, yFeet: number) {
  return { x: feet(xFeet), y: feet(yFeet) }
}

/** Gives a tool one input after another; answers the last step. */
function play(tool: ToolName, surroundings: Surroundings, inputs: readonly Input[]): ToolStep {
  let gesture: Gesture = resting
  let step: ToolStep = { gesture }
  for (const input of inputs) {
    step = tools[tool].step(gesture, input, surroundings)
    gesture = step.gesture
  }
  return step
}

function down(xFeet: number, yFeet: number): Input {
  return { kind: 'down', point: at(xFeet, yFeet), ...noKeys }
}
function move(xFeet: number, yFeet: number): Input {
  return { kind: 'move', point: at(xFeet, yFeet), free: false }
}
function up(xFeet: number, yFeet: number): Input {
  return { kind: 'up', point: at(xFeet, yFeet), free: false }
}
function keys(text: string): readonly Input[] {
  return [...text].map((key) => ({ kind: 'key', key }))
}
const enter: Input = { kind: 'key', key: 'Enter' }

test('a dragged rectangle is one action that draws one room of that size, caught on the grid', () => {
  const job = twoRooms()
  const step = play('rectangle', around(job), [down(0, 20), move(5, 24), move(12.1, 30.05), up(12.1, 30.05)])
  const command = step.action?.commands[0]
  if (command?.kind !== 'addRoom') throw new Error('no room')
  expect(step.gesture).toEqual(resting)
  expect(command.corners.map(({ x, y }) => [x, y])).toEqual([
    [feet(0), feet(20)],
    [feet(12), feet(20)],
    [feet(12), feet(30)],
    [feet(0), feet(30)],
  ])
  expect(applyCommand(job, command).ok).toBe(true)
})

test('a rectangle takes typed sides, across then down, on the side where the pointer is', () => {
  const step = play('rectangle', around(twoRooms()), [
    down(0, 20),
    up(0, 20),
    move(-3, 22),
    ...keys(`10'6 x 8'`),
    enter,
  ])
  const command = step.action?.commands[0]
  if (command?.kind !== 'addRoom') throw new Error('no room')
  expect(command.corners.map(({ x, y }) => [x, y])).toEqual([
    [feet(-10, -6), feet(20)],
    [feet(0), feet(20)],
    [feet(0), feet(28)],
    [feet(-10, -6), feet(28)],
  ])
})

test('what is typed but cannot be read is said at the place, and the drawing goes on', () => {
  const step = play('rectangle', around(twoRooms()), [down(0, 20), up(0, 20), ...keys('abc'), enter])
  expect(step.refusal?.sentence).toContain('"abc" is not a length')
  expect(step.gesture.kind).toBe('drawingRectangle')
  expect(step.action).toBeUndefined()
})

test('an outline is drawn by clicks and typed lengths and closed with Enter', () => {
  const step = play('outline', around(twoRooms()), [
    down(0, 20),
    move(5, 20.2),
    ...keys('14'),
    enter,
    move(14, 25),
    ...keys(`9' 6`),
    enter,
    down(0, 29.5),
    enter,
  ])
  const command = step.action?.commands[0]
  if (command?.kind !== 'addRoom') throw new Error('no room')
  expect(command.corners.map(({ x, y }) => [x, y])).toEqual([
    [feet(0), feet(20)],
    [feet(14), feet(20)],
    [feet(14), feet(29, 6)],
    [feet(0), feet(29, 6)],
  ])
})

test('Backspace takes back the typed figures first and then the corners', () => {
  const back: Input = { kind: 'key', key: 'Backspace' }
  const typed = play('outline', around(twoRooms()), [down(0, 20), down(10, 20), ...keys('7'), back])
  expect(typed.gesture).toMatchObject({ kind: 'drawingOutline', typed: '', corners: [at(0, 20), at(10, 20)] })
  const corner = play('outline', around(twoRooms()), [down(0, 20), down(10, 20), back])
  expect(corner.gesture).toMatchObject({ kind: 'drawingOutline', corners: [at(0, 20)] })
})

test('two corners do not close an outline', () => {
  const step = play('outline', around(twoRooms()), [down(0, 20), down(10, 20), enter])
  expect(step.refusal?.sentence).toContain('three corners')
  expect(step.action).toBeUndefined()
})

test('a door set on a wall with a room right behind it is shared by both', () => {
  const step = play('door', around(twoRooms()), [move(12, 8), down(12, 8)])
  const command = step.action?.commands[0]
  if (command?.kind !== 'addOpening') throw new Error('no opening')
  expect(command.opening.far).not.toBeNull()
  expect([command.opening.roomId, command.opening.far?.roomId].sort()).toEqual(['parlour', 'study'])
})

test('an opening away from any wall is refused in words at the place', () => {
  const step = play('window', around(twoRooms()), [down(6, 5)])
  expect(step.refusal).toEqual({ sentence: expect.stringContaining('No wall is here'), at: at(6, 5) })
})

test('a click picks what is under it; Shift adds and takes away', () => {
  const job = twoRooms()
  expect(play('pick', around(job), [down(6, 5), up(6, 5)]).select).toEqual([study])
  const adding: Input = { kind: 'down', point: at(20, 5), adds: true, free: false }
  expect(play('pick', around(job, [study]), [adding, up(20, 5)]).select).toEqual([study, 'parlour'])
  const again: Input = { kind: 'down', point: at(6, 5), adds: true, free: false }
  expect(play('pick', around(job, [study]), [again, up(6, 5)]).select).toEqual([])
})

test('dragging a corner of a selected room is one action; Escape drops it', () => {
  const job = twoRooms()
  const step = play('pick', around(job, [study]), [down(0, 0), move(-1, 0), move(-2, 0.1), up(-2, 0)])
  expect(step.action?.commands).toEqual([
    { kind: 'moveCorner', roomId: study, wallId: 'north', x: feet(-2), y: feet(0) },
  ])
  const dropped = play('pick', around(job, [study]), [
    down(0, 0),
    move(-2, 0),
    { kind: 'key', key: 'Escape' },
  ])
  expect(dropped).toEqual({ gesture: resting })
})

test('dragging a wall outward moves it by the distance of the hand from its line', () => {
  const step = play('pick', around(twoRooms()), [down(6, 10), move(6, 11), move(6, 12), up(6, 12)])
  expect(step.action?.commands).toEqual([
    { kind: 'moveWall', roomId: study, wallId: 'south', by: feet(2), withFacing: true },
  ])
})

test('an opening slides with the place where it was taken hold of, within its wall', () => {
  const step = play('pick', around(twoRooms()), [down(12, 4), move(12, 5), move(12, 30), up(12, 30)])
  expect(step.action?.commands).toEqual([
    { kind: 'moveOpening', openingId: 'door', offset: feet(10) - feet(2, 8) },
  ])
})

test('sweeping over empty paper selects what lies wholly inside', () => {
  const step = play('pick', around(twoRooms()), [down(-2, -3), move(5, 5), move(13, 12), up(13, 12)])
  expect(step.select).toContain(study)
  expect(step.select).not.toContain('parlour')
})

test('nothing is recorded in the middle of a gesture; the draft shows what it would end in', () => {
  const surroundings = around(twoRooms())
  const step = play('pick', surroundings, [down(6, 5), move(7, 6), move(8, 25)])
  expect(step.action).toBeUndefined()
  expect(tools.pick.draft(step.gesture, surroundings)).toMatchObject([
    { kind: 'moveRooms', roomIds: [study] },
  ])
})
