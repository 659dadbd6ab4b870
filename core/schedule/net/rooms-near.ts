import type { ScheduleRoom, ScheduleRoomId } from '../model.ts'

/** For each room the rooms that dust and fumes reach from it, itself first; openness said on one side counts for both. */
export function roomsNear(
  rooms: readonly ScheduleRoom[],
): ReadonlyMap<ScheduleRoomId, readonly ScheduleRoomId[]> {
  const near = new Map(rooms.map(({ id }) => [id, new Set([id])]))
  for (const { id, openTo } of rooms) {
    for (const other of openTo) {
      near.get(id)?.add(other)
      near.get(other)?.add(id)
    }
  }
  return new Map([...near].map(([id, others]) => [id, [...others]]))
}
