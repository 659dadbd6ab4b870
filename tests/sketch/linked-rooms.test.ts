import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import type { OpeningId } from '../../core/project/sketch-records.ts'
import { applyCommands } from '../../core/sketch/apply-command.ts'
import { choiceOfMove, type MoveChoice } from '../../core/sketch/linked-rooms.ts'
import { feet } from '../../core/units/length.ts'
import { granted } from '../storage/books.ts'
import { cornersInFeet, door, parlour, study, twoRooms } from './two-rooms.ts'

const own = 'own-door' as OpeningId

function choice(job: Job, dx: number, dy: number): MoveChoice | null {
  return choiceOfMove(job, { kind: 'moveRooms', roomIds: [study], dx: feet(dx), dy: feet(dy) }, () => own)
}

function gone(job: Job, found: MoveChoice | null, label: string): Job {
  const way = found?.ways.find((one) => one.label === label)
  if (way === undefined) throw new Error(`No way is called ${label}`)
  return granted(applyCommands(job, way.commands))
}

test('a move that pulls a shared door apart has two ways, in words', () => {
  const found = choice(twoRooms(), -10, 0)
  expect(found?.sentence).toBe('Study shares one door with Parlour. This move would pull it apart.')
  expect(found?.ways.map(({ label }) => label)).toEqual(['Give each room its own door', 'Take Parlour along'])
})

test('each room gets a door of its own, where it was on its wall, with what was said of its side', () => {
  const job = twoRooms()
  const after = gone(job, choice(job, -10, 0), 'Give each room its own door')
  expect(cornersInFeet(after, study)[0]).toEqual([-10, 0])
  expect(cornersInFeet(after, parlour)).toEqual(cornersInFeet(job, parlour))
  const [near, far] = [after.openings[door], after.openings[own]]
  expect(near).toMatchObject({ roomId: study, wallId: 'east', offset: feet(3), far: null, casingFar: null })
  // The parlour's west wall runs up the plan from 10 ft to 0, and the door lies 3 ft to 5 ft 8 in down.
  expect(far).toMatchObject({ roomId: parlour, wallId: 'west', offset: feet(4, 4), far: null })
  expect(far?.casingNear).toEqual(job.openings[door]?.casingFar)
  expect(after.finishes['far-casing']?.scope).toMatchObject({ surface: { openingId: own, side: 'near' } })
  expect(after.keptItems.lock?.on).toEqual({ kind: 'opening', openingId: own })
})

test('the other room comes along, and the door stays one', () => {
  const job = twoRooms()
  const after = gone(job, choice(job, -10, 3), 'Take Parlour along')
  expect(cornersInFeet(after, study)[0]).toEqual([-10, 3])
  expect(after.openings).toEqual(job.openings)
  expect((after.rooms[parlour]?.corners[0]?.y ?? 0) - (job.rooms[parlour]?.corners[0]?.y ?? 0)).toBe(feet(3))
})

test('nothing is asked where the door still leads from one room to the other', () => {
  expect(choice(twoRooms(), -1, 0)).toBeNull()
  expect(choice(twoRooms(), 0, 2)).toBeNull()
})

test('rooms that are linked only to a room that comes along come along too', () => {
  const job = twoRooms()
  const third = { ...job.rooms[study], id: 'attic', name: 'Attic' } as NonNullable<Job['rooms'][string]>
  const shift = feet(26, 10) - feet(0)
  const corners = third.corners.map((corner) => ({ ...corner, x: (corner.x + shift) as typeof corner.x }))
  const second = {
    ...job.openings[door],
    id: 'second',
    roomId: parlour,
    wallId: 'east',
    far: { roomId: 'attic', wallId: 'west' },
  } as NonNullable<Job['openings'][string]>
  const row: Job = {
    ...job,
    rooms: { ...job.rooms, attic: { ...third, corners } },
    openings: { ...job.openings, second },
  }
  const found = choice(row, -10, 0)
  expect(found?.ways[1]?.label).toBe('Take Parlour and Attic along')
  expect(gone(row, found, 'Take Parlour and Attic along').openings).toEqual(row.openings)
})
