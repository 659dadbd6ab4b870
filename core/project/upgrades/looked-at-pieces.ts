import type { FileUpgrade } from './file-data.ts'

/** Until version 3 nobody could say that a piece of a room was looked at and is sound: nothing is said of any. */
export const withLookedAtPieces: FileUpgrade = (data) => {
  const { rooms } = data
  return Array.isArray(rooms) ? { ...data, rooms: rooms.map(withPieces) } : data
}

function withPieces(room: unknown): unknown {
  return typeof room === 'object' && room !== null ? { lookedAt: [], ...room } : room
}
