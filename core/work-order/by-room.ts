import { groupedBy } from '../lists/lists.ts'
import type { RoomId } from '../project/sketch-records.ts'

interface OfRoom {
  readonly roomId: RoomId | null
}

/** Lists never change in place, so each is parted once for all its rooms. */
const parted = new WeakMap<object, ReadonlyMap<RoomId | null, readonly OfRoom[]>>()

/** What a list holds of one room, in its order. Going through the whole list for each room would cost rooms times steps. */
export function inRoom<Item extends OfRoom>(items: readonly Item[], roomId: RoomId): readonly Item[] {
  const known =
    (parted.get(items) as ReadonlyMap<RoomId | null, readonly Item[]> | undefined) ??
    groupedBy(items, (item) => item.roomId)
  parted.set(items, known)
  return known.get(roomId) ?? []
}
