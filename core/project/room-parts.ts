import type { BuiltItem } from './built-records.ts'
import { type Job, records, type Table } from './job.ts'
import type { CeilingOpening, Opening, Room, RoomId, TrimRun } from './sketch-records.ts'

/** An opening as one of its rooms has it. */
export interface SidedOpening {
  readonly opening: Opening
  readonly side: 'near' | 'far'
  readonly nearRoom: Room
  readonly farRoom: Room | null
}

/** A room with everything drawn in it: all that its problems and its quantities can depend on. */
export interface RoomParts {
  readonly room: Room
  readonly openings: readonly SidedOpening[]
  readonly trimRuns: readonly TrimRun[]
  readonly ceilingOpenings: readonly CeilingOpening[]
  readonly builtItems: readonly BuiltItem[]
}

/** Parts of one room; null when the job has no such room. Records keep the order of the file. */
export function roomParts(job: Job, roomId: RoomId): RoomParts | null {
  const room = job.rooms[roomId]
  if (room === undefined) return null
  return {
    room,
    openings: sidesIn(job, roomId),
    trimRuns: recordsIn(job.trimRuns, roomId),
    ceilingOpenings: recordsIn(job.ceilingOpenings, roomId),
    builtItems: recordsIn(job.builtItems, roomId),
  }
}

function recordsIn<Item extends { readonly roomId: RoomId }>(
  table: Table<Item>,
  roomId: RoomId,
): readonly Item[] {
  return records(table).filter((item) => item.roomId === roomId)
}

function sidesIn(job: Job, roomId: RoomId): readonly SidedOpening[] {
  const found: SidedOpening[] = []
  for (const opening of records(job.openings)) {
    if (opening.roomId === roomId) addSide(job, found, opening, 'near')
    if (opening.far?.roomId === roomId) addSide(job, found, opening, 'far')
  }
  return found
}

function addSide(job: Job, sides: SidedOpening[], opening: Opening, side: 'near' | 'far'): void {
  const nearRoom = job.rooms[opening.roomId]
  const farRoom = opening.far === null ? null : (job.rooms[opening.far.roomId] ?? null)
  if (nearRoom !== undefined) sides.push({ opening, side, nearRoom, farRoom })
}

/** Parts of every room in the order of the file, each table gone through once. */
export function allRoomParts(job: Job): readonly RoomParts[] {
  const openings = openingsByRoom(job)
  const trimRuns = recordsByRoom(job.trimRuns)
  const ceilingOpenings = recordsByRoom(job.ceilingOpenings)
  const builtItems = recordsByRoom(job.builtItems)
  return records(job.rooms).map((room) => ({
    room,
    openings: openings.get(room.id) ?? [],
    trimRuns: trimRuns.get(room.id) ?? [],
    ceilingOpenings: ceilingOpenings.get(room.id) ?? [],
    builtItems: builtItems.get(room.id) ?? [],
  }))
}

function recordsByRoom<Item extends { readonly roomId: RoomId }>(
  table: Table<Item>,
): ReadonlyMap<RoomId, readonly Item[]> {
  const groups = new Map<RoomId, Item[]>()
  for (const item of records(table)) groupOf(groups, item.roomId).push(item)
  return groups
}

function openingsByRoom(job: Job): ReadonlyMap<RoomId, readonly SidedOpening[]> {
  const groups = new Map<RoomId, SidedOpening[]>()
  for (const opening of records(job.openings)) {
    addSide(job, groupOf(groups, opening.roomId), opening, 'near')
    if (opening.far !== null) addSide(job, groupOf(groups, opening.far.roomId), opening, 'far')
  }
  return groups
}

function groupOf<Item>(groups: Map<RoomId, Item[]>, roomId: RoomId): Item[] {
  const known = groups.get(roomId)
  if (known !== undefined) return known
  const group: Item[] = []
  groups.set(roomId, group)
  return group
}

/** Whether two looks at a room found the very same records in it. */
export function sameParts(one: RoomParts, other: RoomParts): boolean {
  return (
    one.room === other.room &&
    allAlike(one.openings, other.openings, sameSide) &&
    allAlike(one.trimRuns, other.trimRuns, Object.is) &&
    allAlike(one.ceilingOpenings, other.ceilingOpenings, Object.is) &&
    allAlike(one.builtItems, other.builtItems, Object.is)
  )
}

function sameSide(one: SidedOpening, other: SidedOpening): boolean {
  return (
    one.opening === other.opening &&
    one.side === other.side &&
    one.nearRoom === other.nearRoom &&
    one.farRoom === other.farRoom
  )
}

function allAlike<Item>(
  ones: readonly Item[],
  others: readonly Item[],
  isAlike: (one: Item, other: Item) => boolean,
): boolean {
  return (
    ones.length === others.length &&
    ones.every((one, index) => {
      const other = others[index]
      return other !== undefined && isAlike(one, other)
    })
  )
}
