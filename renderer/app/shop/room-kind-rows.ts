import type { OwnRoomKind } from '../../../core/project/shop-records.ts'
import { type RoomUse, roomUses } from '../../../core/project/vocabulary.ts'
import { roomKinds } from '../../../core/sketch/room-kinds.ts'

/** A kind of room as the shop sheet shows it. */
export interface RoomKindRow {
  readonly key: string
  readonly kind: OwnRoomKind
  /** The shop's own record; null while the kind is as usual. */
  readonly own: OwnRoomKind | null
  /** One of those that every shop has. */
  readonly isUsual: boolean
}

/** The usual kinds in their order, as the shop changed them, then those it added. */
export function roomKindRows(own: readonly OwnRoomKind[]): readonly RoomKindRow[] {
  const usual = roomUses.map((use): RoomKindRow => {
    const usualKind = asOwn(use)
    const changed = own.find((each) => each.use === use && each.name === usualKind.name) ?? null
    return { key: use, kind: changed ?? usualKind, own: changed, isUsual: true }
  })
  const changed = new Set(usual.map((row) => row.own))
  const added = own.filter((each) => !changed.has(each))
  return [...usual, ...added.map((kind, index) => ({ key: `own ${index}`, kind, own: kind, isUsual: false }))]
}

/** What is usual for a use, in the form of the shop's own. */
function asOwn(use: RoomUse): OwnRoomKind {
  const { above: _above, ...kind } = roomKinds[use]
  return { ...kind, trim: [...kind.trim] }
}

/** The shop's kinds after a change in one row; a usual kind becomes the shop's own by it. */
export function withKind(
  own: readonly OwnRoomKind[],
  row: RoomKindRow,
  change: Partial<OwnRoomKind>,
): readonly OwnRoomKind[] {
  const next = { ...row.kind, ...change }
  return row.own === null ? [...own, next] : own.map((each) => (each === row.own ? next : each))
}

export function withoutKind(own: readonly OwnRoomKind[], row: RoomKindRow): readonly OwnRoomKind[] {
  return own.filter((each) => each !== row.own)
}

/** One more kind under a name that is free. */
export function withNewKind(own: readonly OwnRoomKind[]): readonly OwnRoomKind[] {
  const names = new Set(own.map(({ name }) => name))
  let number = 1
  while (names.has(`Own kind ${number}`)) number++
  return [...own, { ...asOwn('other'), name: `Own kind ${number}` }]
}

/** A name that another kind has would never be reached. */
export function isFreeKindName(own: readonly OwnRoomKind[], row: RoomKindRow, name: string): boolean {
  const wanted = name.trim().toLowerCase()
  return roomKindRows(own).every((each) => each.key === row.key || each.kind.name.toLowerCase() !== wanted)
}
