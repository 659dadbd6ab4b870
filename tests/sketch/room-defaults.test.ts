import { expect, test } from 'vitest'
import type { RoomId, StoreyId, TrimRun, TrimRunId } from '../../core/project/sketch-records.ts'
import { firstRoomDefaults, roomDefaultsFor, runsOfLastRoom } from '../../core/sketch/room-defaults.ts'
import { feet, inches } from '../../core/units/length.ts'
import { buildJob, rectangularRoom } from '../fixtures/job-builder.ts'

const ground = 'ground' as StoreyId

function run(id: string, roomId: string, kind: TrimRun['kind'], changes: Partial<TrimRun> = {}): TrimRun {
  return {
    id: id as TrimRunId,
    roomId: roomId as RoomId,
    walls: null,
    kind,
    height: inches(5),
    girth: inches(6),
    level: inches(0),
    profiled: false,
    ...changes,
  }
}

const upper = { id: 'upper' as StoreyId, name: 'Upper', level: 1 }
const high = { kind: 'flat', height: feet(10) } as const
const vaulted = {
  kind: 'shed',
  lowWall: 'north',
  low: feet(8),
  high: feet(9),
} as never
const base = buildJob({})
const job = buildJob({
  storeys: [...Object.values(base.storeys), upper],
  rooms: [
    rectangularRoom('parlour', 12, 10),
    rectangularRoom('hall', 8, 8, { ceiling: high, above: 'unheated' }),
    rectangularRoom('loft', 8, 8, { storeyId: upper.id }),
  ],
  trimRuns: [
    run('parlour-base', 'parlour', 'baseboard'),
    run('parlour-crown', 'parlour', 'crown'),
    run('hall-base', 'hall', 'baseboard', { height: inches(9) }),
    run('hall-rail', 'hall', 'chairRail', { walls: ['north' as never] }),
    run('loft-picture', 'loft', 'pictureRail'),
  ],
})

test('a new room takes after the one room drawn last on its storey, not after all of them', () => {
  let serial = 0
  const defaults = roomDefaultsFor(job, ground, () => `new-${++serial}`)
  expect(defaults).toMatchObject({ ceiling: high, above: 'unheated' })
  expect(defaults.trim.map(({ id, kind, height }) => [id, kind, height])).toEqual([
    ['new-1', 'baseboard', inches(9)],
  ])
})

test('crown and rails of one room are not drawn on the next', () => {
  const kinds = (storeyId: StoreyId) =>
    roomDefaultsFor(job, storeyId, () => 'new').trim.map(({ kind }) => kind)
  expect(kinds(ground)).toEqual(['baseboard'])
  expect(kinds(upper.id)).toEqual(['baseboard'])
})

test('the first room of a storey begins with the shop’s own', () => {
  const defaults = roomDefaultsFor(base, ground, () => 'new')
  expect(defaults.ceiling).toEqual(firstRoomDefaults.ceiling)
  expect(defaults.trim.map(({ kind }) => kind)).toEqual(['baseboard'])
})

test('a room under a slope is no model for the next', () => {
  const rooms = { ...job.rooms, slope: rectangularRoom('slope', 8, 8, { ceiling: vaulted }) }
  expect(roomDefaultsFor({ ...job, rooms }, ground, () => 'new').ceiling).toEqual(high)
})

test('a room takes the crown of the last room only when that is asked for, and nothing it has already', () => {
  const found = runsOfLastRoom(job, 'hall' as RoomId)
  expect(found?.lastRoom.id).toBe('parlour')
  expect(found?.runs.map(({ kind, roomId, walls }) => [kind, roomId, walls])).toEqual([
    ['crown', 'hall', null],
  ])
  expect(runsOfLastRoom(job, 'parlour' as RoomId)).toBeNull()
})
