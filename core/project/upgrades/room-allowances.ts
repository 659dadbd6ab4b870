import type { FileUpgrade } from './file-data.ts'

/** Version 1 had the same small damage in every room: a room without numbers of its own has the house's. */
export const withRoomAllowances: FileUpgrade = (data) => {
  const { rooms } = data
  return Array.isArray(rooms) ? { ...data, rooms: rooms.map(withAllowances) } : data
}

function withAllowances(room: unknown): unknown {
  return typeof room === 'object' && room !== null ? { allowances: null, ...room } : room
}
