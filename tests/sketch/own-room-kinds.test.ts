import { expect, test } from 'vitest'
import type { OwnRoomKind } from '../../core/project/shop-records.ts'
import { keptProposals } from '../../core/sketch/kept-proposals.ts'
import { roomKindOf, roomKinds, roomUseByName } from '../../core/sketch/room-kinds.ts'
import { feet } from '../../core/units/length.ts'
import {
  isFreeKindName,
  roomKindRows,
  withKind,
  withNewKind,
  withoutKind,
} from '../../renderer/app/shop/room-kind-rows.ts'
import { buildJob, rectangularRoom } from '../fixtures/job-builder.ts'
import { planned } from './tape-list/plan-a-list.ts'

const mudroom: OwnRoomKind = {
  name: 'Mudroom',
  use: 'utility',
  height: feet(8),
  trim: ['baseboard', 'chairRail'],
  doors: 2,
  windows: 1,
  plates: 4,
  lights: 1,
}
const tallBedroom: OwnRoomKind = { ...mudroom, name: 'Bedroom', use: 'bedroom', height: feet(10), windows: 3 }
const shop = (...roomKinds: readonly OwnRoomKind[]) => buildJob({ houseRules: { roomKinds } })

test('a word in the name of a room finds the kind of the shop, else its use does', () => {
  const job = shop(mudroom, tallBedroom)
  expect(roomUseByName(job, 'Back mudroom')).toBe('utility')
  expect(roomKindOf(job, { name: 'Back mudroom', use: 'utility' })).toMatchObject({ windows: 1, plates: 4 })
  expect(roomKindOf(job, { name: 'Guest', use: 'bedroom' })).toMatchObject({ windows: 3, height: feet(10) })
  expect(roomKindOf(job, { name: 'Laundry', use: 'utility' })).toBe(roomKinds.utility)
  // The use was set by hand: then the name says nothing.
  expect(roomKindOf(job, { name: 'Mudroom', use: 'kitchen' })).toBe(roomKinds.kitchen)
})

test('of two kinds in one name the longer counts', () => {
  const job = shop(tallBedroom, { ...mudroom, name: 'Bunk bedroom', use: 'bedroom', plates: 9 })
  expect(roomKindOf(job, { name: 'Bunk bedroom 2', use: 'bedroom' }).plates).toBe(9)
})

test('a list of rooms and what stays there follow the kinds of the shop', () => {
  const { drawn, job } = planned(shop(mudroom), 'Mudroom 8 x 10')
  expect(drawn.rooms[0]).toMatchObject({ use: 'utility', ceiling: { kind: 'flat', height: feet(8) } })
  expect(drawn.openings.map(({ kind }) => kind).toSorted()).toEqual(['door', 'door', 'window'])
  expect(drawn.trimRuns.map(({ kind }) => kind)).toEqual(['baseboard', 'chairRail'])
  expect(drawn.keptItems.find(({ kind }) => kind === 'plate')?.count).toBe(4)
  expect(job.houseRules.roomKinds).toEqual([mudroom])
  const bare = rectangularRoom('m', 8, 10, { name: 'Mudroom', use: 'utility' })
  expect(keptProposals(shop(mudroom), bare).find(({ kind }) => kind === 'plate')?.count).toBe(4)
})

test('the shop sheet shows every kind; a change makes it the shop’s own, and it can be put back', () => {
  const rows = roomKindRows([])
  expect(rows.map(({ own }) => own)).toEqual(Array(14).fill(null))
  const bath = rows.find(({ kind }) => kind.use === 'bath')
  if (bath === undefined) throw new Error('there is no bath')
  const own = withKind([], bath, { windows: 0 })
  const changed = roomKindRows(own).find(({ kind }) => kind.use === 'bath')
  expect(changed).toMatchObject({ isUsual: true, kind: { windows: 0, doors: roomKinds.bath.doors } })
  expect(roomKindOf(shop(...own), { name: 'Upper bath', use: 'bath' }).windows).toBe(0)
  expect(withoutKind(own, changed ?? bath)).toEqual([])
})

test('a kind that is added has a free name', () => {
  const own = withNewKind(withNewKind([mudroom]))
  expect(own.map(({ name }) => name)).toEqual(['Mudroom', 'Own kind 1', 'Own kind 2'])
  const row = roomKindRows(own).find(({ kind }) => kind.name === 'Own kind 1')
  if (row === undefined) throw new Error('the new kind is not shown')
  expect(isFreeKindName(own, row, 'mudroom ')).toBe(false)
  expect(isFreeKindName(own, row, 'Bath')).toBe(false)
  expect(isFreeKindName(own, row, 'Sunroom')).toBe(true)
})
