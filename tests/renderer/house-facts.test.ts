import { beforeEach, expect, test } from 'vitest'
import { present } from '../../core/lists/lists.ts'
import { type Job, records } from '../../core/project/job.ts'
import { surfaceKey } from '../../core/project/surface-ref.ts'
import { createTakeOff } from '../../core/quantities/take-off.ts'
import { pickMany } from '../../core/sketch/many/picked.ts'
import { feet, inches } from '../../core/units/length.ts'
import { isOpenedUp, whyItStays } from '../../renderer/panels/house/floor-list.ts'
import { firstMeasure, putStair } from '../../renderer/panels/house/heights/stair-measures.ts'
import { common, pickedWords } from '../../renderer/panels/house/many/common.ts'
import { pickPlaceOf, pickPlaces } from '../../renderer/panels/house/many/pick-places.ts'
import { litBy, mainFigure, surfaceTitle } from '../../renderer/panels/house/surface-facts.ts'
import { giveUsual, usualWords } from '../../renderer/panels/house/usual-room.ts'
import {
  door,
  east,
  window as light,
  north,
  parlour,
  south,
  study,
  twoRooms,
  west,
} from '../sketch/two-rooms.ts'
import { openOnPage, pageJob } from './open-on-page.ts'

const job = twoRooms()
const roomOf = (from: Job, id: string) => present(from.rooms[id])

test('many are picked in the house, in the picked rooms, on a floor or by use, and nowhere else', () => {
  expect(pickPlaces(job, 0).map(({ label }) => label)).toEqual([
    'Whole house',
    'Ground storey',
    'Living room: all of them',
    'Study: all of them',
  ])
  expect(pickPlaces(job, 1)[1]?.label).toBe('The picked room')
  expect(pickPlaces(job, 2)[1]?.label).toBe('The 2 picked rooms')
  const roomsAt = (id: string) => pickMany(job, 'rooms', pickPlaceOf(job, id, [roomOf(job, study)]))
  expect(roomsAt('picked')).toEqual([study])
  expect(roomsAt('use living')).toEqual([parlour])
  expect(roomsAt(pickPlaces(job, 0)[1]?.id ?? '')).toEqual([study, parlour])
  expect(roomsAt('of a floor that is gone')).toEqual([study, parlour])
})

test('what is picked is counted by kind, and has a value in common only where all agree', () => {
  const rooms = records(job.rooms)
  const openings = records(job.openings)
  expect(pickedWords({ rooms, openings, walls: [] })).toBe('2 rooms, 1 door, 1 window')
  expect(common(rooms, ({ above }) => above)).toBe(rooms[0]?.above)
  expect(common(rooms, ({ use }) => use)).toBeNull()
  expect(common([], () => 1)).toBeNull()
})

test('a surface is named by where it is, shows its length or its area, and lights what it comes from', () => {
  const takeoff = createTakeOff()(job)
  const ofDoor = { kind: 'opening', openingId: door, side: 'far', part: 'casing' } as const
  expect(surfaceTitle(job, ofDoor)).toMatch(/west wall.*: casing$|wall D.*: casing$/)
  const wall = present(
    takeoff.byKey.get(surfaceKey({ kind: 'wall', roomId: study, wallId: east, zone: 'whole' })),
  )
  expect(mainFigure(wall, 'imperial')).toMatch(/sq ft$/)
  expect(litBy(job, roomOf(job, study), wall)).toEqual(expect.arrayContaining([`${study}/${east}`, door]))
  // 44 ft of walls less the door and its casings.
  const run = present(
    takeoff.surfaces.find(({ surface, roomId }) => surface.kind === 'trim' && roomId === study),
  )
  expect(mainFigure(run, 'imperial')).toBe('41 ft')
  expect(litBy(job, roomOf(job, study), run)).toEqual(
    expect.arrayContaining([north, east, south, west].map((wallId) => `${study}/${wallId}`)),
  )
})

test('a floor stays while it is the only one or has rooms; a room lists its openings while one of them is picked', () => {
  expect(whyItStays({ isOnly: true, roomCount: 0 })).toBe('A job has at least one floor')
  expect(whyItStays({ isOnly: false, roomCount: 2 })).toBe('Remove or move its rooms first')
  expect(whyItStays({ isOnly: false, roomCount: 0 })).toBeUndefined()
  expect(isOpenedUp(job, study, [study])).toBe(true)
  expect(isOpenedUp(job, study, [door])).toBe(true)
  expect(isOpenedUp(job, parlour, [door])).toBe(true)
  expect(isOpenedUp(job, study, [light])).toBe(false)
})

test('a stair begins with as many treads as the room has length for, and its slope follows from rise and run', () => {
  const room = roomOf(job, study)
  const measure = firstMeasure(room)
  expect(measure.treads * measure.run).toBeLessThanOrEqual(feet(12))
  expect((measure.treads + 1) * measure.run).toBeGreaterThan(feet(10))
  const { record } = putStair(room, { ...measure, rise: inches(9), run: inches(12), treads: 3 }) as {
    readonly record: Readonly<Record<string, unknown>>
  }
  // 3 treads of 12 in over 4 risers of 9 in: 36 in along and 36 in up.
  expect(record).toMatchObject({ treads: 3, risers: 4, balusters: 6 })
  expect(record.stringerLength).toBe(Math.round(inches(36) * Math.SQRT2))
})

beforeEach(() => openOnPage(job))

test('what is usual is offered to a room that has nothing yet, and given as one action', () => {
  expect(usualWords(job, roomOf(job, study))).toBe('')
  const bare = { ...job, openings: {}, keptItems: {} }
  openOnPage(bare)
  expect(usualWords(bare, roomOf(bare, study))).toMatch(/^1 door, /)
  giveUsual(roomOf(bare, study))
  const given = records(pageJob().openings).filter(({ roomId }) => roomId === study)
  expect(given.some(({ kind }) => kind === 'door')).toBe(true)
  expect(records(pageJob().keptItems).length).toBeGreaterThan(0)
  expect(usualWords(pageJob(), roomOf(pageJob(), study))).toBe('')
})
