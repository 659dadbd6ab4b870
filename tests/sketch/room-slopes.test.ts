import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { applyCommand, applyTogether } from '../../core/sketch/apply-command.ts'
import {
  firstCeiling,
  lowSide,
  slopeFrom,
  slopeMarks,
  stairShape,
  turnedCeiling,
  usualSlopeAxis,
} from '../../core/sketch/room-slopes.ts'
import { feet, inches } from '../../core/units/length.ts'
import { door, east, north, parlour, study, twoRooms, west, window } from './two-rooms.ts'

function roomOf(job: Job, id: string): Room {
  const room = job.rooms[id]
  if (room === undefined) throw new Error('no such room')
  return room
}

test('ridge and low sides run with the long walls, unless they are turned, and turning keeps shares of the room', () => {
  const job = twoRooms()
  // The study is 12 ft x 10 ft: it slopes over its 10 ft.
  const room = roomOf(job, study)
  expect(usualSlopeAxis(room)).toBe('y')
  const gable = firstCeiling(job, room, 'gable')
  expect(gable).toMatchObject({ along: 'y', ridgeAt: feet(5) })
  const turned = turnedCeiling(room, gable, 'x')
  expect(turned).toMatchObject({ along: 'x', ridgeAt: feet(6) })
  expect(turnedCeiling(room, turned, 'y')).toEqual(gable)
})

test('every first shape of every room may be stored, a window on the low side or not', () => {
  const job = twoRooms()
  for (const id of [study, parlour] as const) {
    for (const kind of ['flat', 'shed', 'gable', 'vault', 'stair'] as const) {
      const outcome = applyCommand(job, {
        kind: 'setCeiling',
        roomId: id,
        ceiling: firstCeiling(job, roomOf(job, id), kind),
      })
      expect(outcome.ok ? '' : `${id} ${kind}: ${outcome.problem.sentence}`).toBe('')
    }
  }
})

test('a slope one way is entered by its low side and both heights at once', () => {
  const job = twoRooms()
  for (const side of ['left', 'right', 'top', 'bottom'] as const) {
    const ceiling = slopeFrom(side, feet(7), feet(9))
    if (ceiling.kind !== 'shed') throw new Error('no slope')
    expect(lowSide(ceiling)).toBe(side)
    expect(applyCommand(job, { kind: 'setCeiling', roomId: parlour, ceiling }).ok).toBe(true)
  }
  // The window in the north wall of the parlour does not go under 3 ft.
  const low = applyCommand(job, {
    kind: 'setCeiling',
    roomId: parlour,
    ceiling: slopeFrom('top', feet(3), feet(9)),
  })
  expect(low.ok ? '' : low.problem.sentence).toMatch(/Parlour/)
  // With the window made lower in the same action it does.
  const both = applyTogether(job, [
    { kind: 'setOpening', openingId: door, change: { height: inches(30) } },
    { kind: 'setOpening', openingId: window, change: { height: feet(2), sill: inches(6) } },
    { kind: 'setCeiling', roomId: parlour, ceiling: slopeFrom('top', feet(3), feet(9)) },
  ])
  expect(both.ok).toBe(true)
})

test('a stair goes by rise, run and treads, from any side, with the ceiling over it', () => {
  const room: Room = { ...roomOf(twoRooms(), study), ceiling: { kind: 'flat', height: feet(16) } }
  const measure = { rise: inches(7.5), run: inches(10), treads: 12, headroom: feet(7) }
  const up = stairShape(room, { ...measure, foot: 'left' }, 'imperial')
  if (!up.ok) throw new Error(up.problem.sentence)
  const top = inches(7.5 * 13)
  expect(up.value.floor).toEqual({
    kind: 'stair',
    along: 'x',
    line: [
      { at: 0, height: 0 },
      { at: inches(120), height: top },
      { at: feet(12), height: top },
    ],
  })
  expect(up.value.ceiling).toMatchObject({ line: [{ height: feet(7) }, { height: top + feet(7) }, {}] })
  const down = stairShape(room, { ...measure, foot: 'right', headroom: null }, 'imperial')
  expect(
    down.ok && down.value.floor.kind === 'stair' ? down.value.floor.line.map(({ at }) => at) : [],
  ).toEqual([0, feet(2), feet(12)])
  const long = stairShape(room, { ...measure, foot: 'top', treads: 13 }, 'imperial')
  expect(long.ok ? '' : long.problem.sentence).toMatch(
    /13 treads of 0' 10" are 10' 10" long, but the room is only 10' 0"/,
  )
})

test('what is behind a wall follows the plan until a hand says otherwise', () => {
  const job = twoRooms()
  const behind = (now: Job, id: string) => roomOf(now, id).corners.map((corner) => corner.behind)
  // Records that were there before say what they said.
  expect(behind(job, study)).toEqual(['heated', 'heated', 'heated', 'heated'])
  const copied = applyCommand(job, {
    kind: 'addDrawn',
    joins: [],
    drawn: {
      storeys: [],
      openings: [],
      trimRuns: [],
      keptItems: [],
      builtItems: [],
      rooms: [
        {
          ...roomOf(job, study),
          id: 'new' as typeof study,
          corners: roomOf(job, study).corners.map((corner) => ({
            ...corner,
            y: (corner.y + feet(10, 5)) as typeof corner.y,
          })),
        },
      ],
    },
  })
  if (!copied.ok) throw new Error(copied.problem.sentence)
  // The new room lies south of the study.
  const walls = roomOf(copied.value, 'new').corners.map(({ wallId, behind: what }) => [wallId, what])
  expect(Object.fromEntries(walls)).toMatchObject({ [north]: 'heated', [east]: 'outside', [west]: 'outside' })
  const moved = applyCommand(copied.value, {
    kind: 'moveRooms',
    roomIds: ['new' as typeof study],
    dx: 0,
    dy: feet(20),
  })
  if (!moved.ok) throw new Error(moved.problem.sentence)
  expect(behind(moved.value, 'new')).toEqual(['outside', 'outside', 'outside', 'outside'])
  const said = applyCommand(copied.value, {
    kind: 'setWallBehind',
    roomId: 'new' as typeof study,
    wallId: east,
    behind: 'unheated',
  })
  if (!said.ok) throw new Error(said.problem.sentence)
  const after = applyCommand(said.value, {
    kind: 'moveRooms',
    roomIds: ['new' as typeof study],
    dx: 0,
    dy: feet(20),
  })
  expect(after.ok ? behind(after.value, 'new').filter((what) => what === 'unheated') : []).toHaveLength(1)
})

test('the plan says how high a slope is at both sides, and which is the low one', () => {
  const job = twoRooms()
  const room = roomOf(job, study)
  const attic = { ...room, ceiling: slopeFrom('right', feet(5), feet(8)) }
  const marks = slopeMarks(attic).map(({ word, height, place }) => [
    word,
    height / feet(1),
    Number((place.x / feet(1)).toFixed(2)),
    place.y / feet(1),
  ])
  // 12 ft x 10 ft: 4 % inside of either side, and a fifth of the way down.
  expect(marks).toEqual([
    ['high', 8, 0.48, 2],
    ['low', 5, 11.52, 2],
  ])
  const wordsOf = (kind: 'flat' | 'gable' | 'vault' | 'stair') =>
    slopeMarks({ ...room, ceiling: firstCeiling(job, room, kind) }).map(({ word }) => word)
  expect(wordsOf('gable')).toEqual(['low', 'ridge', 'low'])
  expect(wordsOf('vault')).toEqual(['low', 'flat', 'flat', 'low'])
  expect([...wordsOf('flat'), ...wordsOf('stair')]).toEqual([])
})
