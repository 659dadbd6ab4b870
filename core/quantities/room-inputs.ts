import type { Job } from '../project/job.ts'
import type { RoomParts } from '../project/room-parts.ts'
import { roomOfSurface } from '../project/scopes.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Finish, Scope } from '../project/survey-records.ts'

/**
 * Everything the figures of one room depend on, as one flat list: the same list, item by item, means the same figures. Records never
 * change in place, so that comparing them by identity is enough.
 */
export type RoomInputs = readonly unknown[]

export function sameInputs(one: RoomInputs | undefined, other: RoomInputs): boolean {
  if (one === undefined || one.length !== other.length) return false
  for (let index = 0; index < other.length; index++) if (one[index] !== other[index]) return false
  return true
}

/** Finishes by where they reach: the house, or a room and the openings it shares. */
export interface ReachingFinishes {
  readonly house: readonly Finish[]
  readonly rooms: ReadonlyMap<RoomId, readonly Finish[]>
}

export function reachingFinishes(job: Job): ReachingFinishes {
  const house: Finish[] = []
  const rooms = new Map<RoomId, Finish[]>()
  for (const finish of Object.values(job.finishes)) {
    const roomId = roomOfScope(job, finish.scope)
    if (roomId === null) house.push(finish)
    else if (rooms.has(roomId)) rooms.get(roomId)?.push(finish)
    else rooms.set(roomId, [finish])
  }
  return { house, rooms }
}

/** Null for the house, and for a surface that is nowhere. */
function roomOfScope(job: Job, scope: Scope): RoomId | null {
  switch (scope.level) {
    case 'house':
      return null
    case 'room':
      return scope.roomId
    case 'surface':
      return roomOfSurface(job, scope.surface)
  }
}

/** A room depends on the rooms behind its openings by their finishes, and by their outline where they are the near side. */
export function roomInputs(job: Job, parts: RoomParts, finishes: ReachingFinishes): RoomInputs {
  const { header, houseRules } = job
  const inputs: unknown[] = [header.unitSystem, houseRules.openingPolicy, houseRules.girthPolicy, parts.room]
  inputs.push('finishes', ...finishes.house, ...(finishes.rooms.get(parts.room.id) ?? []))
  for (const { opening, side, nearRoom, farRoom } of parts.openings) {
    inputs.push(side, opening, side === 'near' ? null : nearRoom)
    const other = side === 'near' ? farRoom : nearRoom
    if (other !== null) inputs.push(other.id, ...(finishes.rooms.get(other.id) ?? []))
  }
  inputs.push('trim', ...parts.trimRuns, 'ceiling', ...parts.ceilingOpenings, 'built', ...parts.builtItems)
  return inputs
}
