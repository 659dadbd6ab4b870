import type { Job, Table } from './job.ts'
import type { BuiltItem, CeilingOpening, Opening, Room, RoomId, TrimRun } from './sketch-records.ts'

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
  return room === undefined ? null : partsOf(job, room)
}

/** Parts of every room in the order of the file. */
export function allRoomParts(job: Job): readonly RoomParts[] {
  return Object.values(job.rooms).map((room) => partsOf(job, room))
}

function partsOf(job: Job, room: Room): RoomParts {
  return {
    room,
    openings: (openingsByRoom(job.openings).get(room.id) ?? []).flatMap(({ opening, side }) => {
      const nearRoom = job.rooms[opening.roomId]
      const farRoom = opening.far === null ? null : (job.rooms[opening.far.roomId] ?? null)
      return nearRoom === undefined ? [] : [{ opening, side, nearRoom, farRoom }]
    }),
    trimRuns: recordsByRoom(job.trimRuns).get(room.id) ?? [],
    ceilingOpenings: recordsByRoom(job.ceilingOpenings).get(room.id) ?? [],
    builtItems: recordsByRoom(job.builtItems).get(room.id) ?? [],
  }
}

type Side = Pick<SidedOpening, 'opening' | 'side'>

/** Tables never change in place, so each is sorted into rooms once. */
const sortedTables = new WeakMap<object, ReadonlyMap<string, readonly unknown[]>>()

function recordsByRoom<Item extends { readonly roomId: RoomId }>(
  table: Table<Item>,
): ReadonlyMap<string, readonly Item[]> {
  return sorted(table, (add) => {
    for (const item of Object.values(table)) add(item.roomId, item)
  })
}

function openingsByRoom(table: Table<Opening>): ReadonlyMap<string, readonly Side[]> {
  return sorted<Side>(table, (add) => {
    for (const opening of Object.values(table)) {
      add(opening.roomId, { opening, side: 'near' })
      if (opening.far !== null) add(opening.far.roomId, { opening, side: 'far' })
    }
  })
}

function sorted<Item>(
  table: object,
  fill: (add: (roomId: RoomId, item: Item) => void) => void,
): ReadonlyMap<string, readonly Item[]> {
  const known = sortedTables.get(table)
  if (known !== undefined) return known as ReadonlyMap<string, readonly Item[]>
  const groups = new Map<string, Item[]>()
  fill((roomId, item) => {
    const group = groups.get(roomId)
    if (group === undefined) groups.set(roomId, [item])
    else group.push(item)
  })
  sortedTables.set(table, groups)
  return groups
}
