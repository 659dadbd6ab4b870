import { expect, test } from 'vitest'
import type { RoomId, WallId } from '../../core/project/sketch-records.ts'
import type { Finish, FinishId, Scope } from '../../core/project/survey-records.ts'
import { recordAt, recordFor, scopesOf } from '../../renderer/panels/parts/scope-choices.ts'

const roomId = 'study' as RoomId
const surface = { kind: 'wall', roomId, wallId: 'north' as WallId, zone: 'whole' } as const
const place = { surfaceClass: 'walls', roomId, surface } as const
const [own, ofRoom, ofHouse] = scopesOf(place) as [Scope, Scope, Scope]

function finish(id: string, scope: Scope): Finish {
  return { id: id as FinishId, scope, paint: true, colourId: null, sheen: 'matte', productClass: 'latexWall' }
}

test('the narrowest scope that says something holds: surface, then room, then house', () => {
  const house = finish('house', ofHouse)
  const room = finish('room', ofRoom)
  const wall = finish('wall', own)
  expect(recordFor({ house }, place)).toBe(house)
  expect(recordFor({ house, room }, place)).toBe(room)
  expect(recordFor({ house, room, wall }, place)).toBe(wall)
  expect(recordFor({}, place)).toBeNull()
})

test('what is said of another wall, room or kind of surface does not hold here', () => {
  const otherWall = finish('otherWall', {
    level: 'surface',
    surface: { ...surface, wallId: 'east' as WallId },
  })
  const otherRoom = finish('otherRoom', { level: 'room', roomId: 'hall' as RoomId, surfaceClass: 'walls' })
  const trim = finish('trim', { level: 'house', surfaceClass: 'trim' })
  expect(recordFor({ otherWall, otherRoom, trim }, place)).toBeNull()
  expect(recordAt({ otherRoom }, ofRoom)).toBeNull()
})
