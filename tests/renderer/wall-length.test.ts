import { expect, test } from 'vitest'
import type { Room, RoomId, WallId } from '../../core/project/sketch-records.ts'
import { findWall } from '../../core/project/walls.ts'
import { feet } from '../../core/units/length.ts'
import { withWallLength } from '../../renderer/canvas/wall-length.ts'
import { north, parlour, study, twoRooms } from '../sketch/two-rooms.ts'
import { granted, problemOf } from '../storage/books.ts'

test('a wall that ends at a shared door is lengthened at its other end, and the room behind stays', () => {
  const job = twoRooms()
  const next = granted(withWallLength(job, study, north, feet(13)))
  // The study's east wall, 12 ft from the origin, holds the shared door: the west wall moves 1 ft out.
  const wall = findWall(next.rooms[study] as Room, north)
  expect(wall?.start.x).toBe(feet(-1))
  expect(wall?.end.x).toBe(feet(12))
  expect(next.rooms[parlour]).toBe(job.rooms[parlour])
})

test('a wall that is free at its far end is lengthened there', () => {
  const next = granted(withWallLength(twoRooms(), parlour, north, feet(15)))
  const wall = findWall(next.rooms[parlour] as Room, north)
  expect(wall?.start.x).toBe(feet(12, 5))
  expect(wall?.end.x).toBe(feet(27, 5))
})

test('a wall that is not there is refused', () => {
  const none = withWallLength(twoRooms(), 'nowhere' as RoomId, 'none' as WallId, feet(4))
  expect(problemOf(none)).toBe('notFound')
})
