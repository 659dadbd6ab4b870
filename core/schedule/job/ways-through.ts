import { type Job, records } from '../../project/job.ts'
import type { Opening, RoomId } from '../../project/sketch-records.ts'

/** Openings people can walk through. */
function isWalkThrough(opening: Opening): boolean {
  return opening.kind === 'door' || opening.kind === 'casedOpening'
}

/** Rooms that dust and fumes reach freely from each room: through cased openings without a door. */
export function openNeighbours(job: Job): ReadonlyMap<RoomId, readonly RoomId[]> {
  return neighbours(job, (opening) => isWalkThrough(opening) && opening.slab === null)
}

/**
 * For every room the halls and stairs one cannot avoid on the way in from outside: without such a hall there is no way left. Outside
 * doors count as ways in; a house drawn without one is entered through its entry. A room no way leads to has none.
 */
export function hallsOnTheWay(job: Job): ReadonlyMap<RoomId, readonly RoomId[]> {
  const ways = neighbours(job, isWalkThrough)
  const halls = records(job.rooms).filter((room) => room.wayOut)
  const entrances = waysIn(job)
  const all = reachable(ways, entrances, null)
  const without = halls.map((hall) => [hall.id, reachable(ways, entrances, hall.id)] as const)
  return new Map(
    records(job.rooms).map(({ id }) => [
      id,
      without.flatMap(([hall, reached]) => (hall !== id && all.has(id) && !reached.has(id) ? [hall] : [])),
    ]),
  )
}

function waysIn(job: Job): readonly RoomId[] {
  const doors = records(job.openings).filter((opening) => opening.kind === 'door' && opening.far === null)
  const outside = doors.filter((opening) =>
    job.rooms[opening.roomId]?.corners.some(
      (corner) => corner.wallId === opening.wallId && corner.behind === 'outside',
    ),
  )
  if (outside.length > 0) return outside.map((opening) => opening.roomId)
  return records(job.rooms).flatMap((room) => (room.use === 'entry' ? [room.id] : []))
}

function neighbours(job: Job, joins: (opening: Opening) => boolean): ReadonlyMap<RoomId, readonly RoomId[]> {
  const pairs = records(job.openings).flatMap((opening): (readonly [RoomId, RoomId])[] => {
    if (opening.far === null || !joins(opening)) return []
    return [
      [opening.roomId, opening.far.roomId],
      [opening.far.roomId, opening.roomId],
    ]
  })
  return new Map(
    records(job.rooms).map(({ id }) => [
      id,
      [...new Set(pairs.flatMap(([one, other]) => (one === id ? [other] : [])))],
    ]),
  )
}

function reachable(
  ways: ReadonlyMap<RoomId, readonly RoomId[]>,
  from: readonly RoomId[],
  closed: RoomId | null,
): ReadonlySet<RoomId> {
  const seen = new Set<RoomId>(from.filter((room) => room !== closed))
  const waiting = [...seen]
  for (let here = waiting.pop(); here !== undefined; here = waiting.pop()) {
    for (const next of ways.get(here) ?? []) {
      if (next === closed || seen.has(next)) continue
      seen.add(next)
      waiting.push(next)
    }
  }
  return seen
}
