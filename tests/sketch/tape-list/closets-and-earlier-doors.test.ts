import { expect, test } from 'vitest'
import { type Job, records } from '../../../core/project/job.ts'
import { openingSides } from '../../../core/project/walls.ts'
import { readTapeLine } from '../../../core/sketch/tape-list/read-line.ts'
import { sharedWith } from '../../../core/sketch/tape-list/room-words.ts'
import { feet } from '../../../core/units/length.ts'
import { buildJob } from '../../fixtures/job-builder.ts'
import { planned } from './plan-a-list.ts'

function roomNamed(job: Job, name: string) {
  return records(job.rooms).find((room) => room.name === name)
}

function neighbors(job: Job, name: string): readonly string[] {
  const room = roomNamed(job, name)
  return room === undefined ? [] : sharedWith(job, room.id)
}

test('a closet with its size is a room of its own behind a door of its room', () => {
  const { room } = readTapeLine('Bedroom 13 x 12, 2 win, 1 dr, closet 2-6 x 6', 1, 'imperial')
  expect(room).toMatchObject({ closets: 1, note: '' })
  expect(room?.closetRooms).toEqual([{ width: feet(2, 6), depth: feet(6), height: null }])
  const { job, drawn, roomIds } = planned(buildJob({}), 'Bedroom 13 x 12 x 9, 2 win, 1 dr, closet 2-6 x 6')
  expect(drawn.rooms.map(({ name, use }) => [name, use])).toEqual([
    ['Bedroom', 'bedroom'],
    ['Bedroom closet', 'closet'],
  ])
  expect(neighbors(job, 'Bedroom closet')).toEqual(['Bedroom'])
  expect(drawn.openings.filter(({ kind }) => kind === 'door')).toHaveLength(2)
  expect(drawn.rooms.map(({ ceiling }) => ceiling)).toEqual(Array(2).fill({ kind: 'flat', height: feet(9) }))
  expect(roomIds.get(1)).toBe(drawn.rooms[0]?.id)
})

test('two closets of one size are two rooms; one with a height keeps it', () => {
  const { drawn } = planned(buildJob({}), 'Bedroom 13 x 12, 2 closets 2-6 x 6 x 8')
  expect(drawn.rooms.map(({ name }) => name)).toEqual(['Bedroom', 'Bedroom closet 1', 'Bedroom closet 2'])
  expect(drawn.rooms[1]?.ceiling).toEqual({ kind: 'flat', height: feet(8) })
})

test('a closet without size or count has a door; behind the size alone it is the name', () => {
  expect(readTapeLine('Bedroom 13 x 12, 1 dr, closet', 1, 'imperial').room).toMatchObject({
    closets: 1,
    closetRooms: [],
    note: '',
  })
  expect(readTapeLine('4 x 6 closet', 1, 'imperial').room?.name).toBe('Closet')
})

test('a closet that cannot be stops its line', () => {
  for (const text of ['Bedroom 13 x 12, closet 2 x 6000', 'Bedroom 13 x 12, closet 2-13 x 6']) {
    expect([text, readTapeLine(text, 1, 'imperial').room]).toEqual([text, null])
  }
})

test('nobody walks through a bedroom or a bath to another room', () => {
  const { job } = planned(
    buildJob({}),
    'Hall 4 x 18, 1 dr\nBedroom 13 x 12, 2 win, 1 dr\nFront bedroom 14 x 13, 2 win, 1 dr\nBath 8 x 6, 1 win, 1 dr\nKitchen 12 x 11, 1 win, 2 dr',
  )
  for (const name of ['Front bedroom', 'Bath']) {
    expect(neighbors(job, name).filter((other) => other === 'Bedroom' && name !== 'Bath')).toEqual([])
    expect(neighbors(job, name)).not.toContain('Kitchen')
  }
})

test('rooms written later go to the doors of a hall drawn before, each once and as one door', () => {
  const before = planned(buildJob({}), 'Hall 4 x 24, 3 dr').job
  const { job, drawn, joins } = planned(before, 'Bedroom 12 x 11, 2 win, 1 dr\nStudy 10 x 9, 1 win, 1 dr')
  expect(neighbors(job, 'Hall').toSorted()).toEqual(['Bedroom', 'Study'])
  expect(joins).toHaveLength(2)
  expect(drawn.openings.filter(({ kind }) => kind === 'door')).toEqual([])
  expect(records(job.openings).filter(({ kind }) => kind === 'door')).toHaveLength(3)
  for (const { openingId } of joins) {
    const opening = job.openings[openingId]
    expect(opening && openingSides(job, opening).far).not.toBeNull()
    expect(opening?.casingFar).toEqual(opening?.casingNear)
  }
})

test('a door of an entry may be the house door, and a cased opening is no door: neither is a way for a bedroom', () => {
  const before = planned(buildJob({}), 'Entry 6 x 8, 1 dr\nHall 4 x 24, 1 cased opening').job
  const { job, joins } = planned(before, 'Bedroom 12 x 11, 2 win, 1 dr')
  expect(joins).toEqual([])
  expect(neighbors(job, 'Bedroom')).toEqual([])
})
