import { polygonBounds } from '../../geometry/polygon.ts'
import { type Job, records } from '../../project/job.ts'
import type { Opening, StoreyId } from '../../project/sketch-records.ts'
import { openingSides } from '../../project/walls.ts'
import { unitsPerFoot } from '../../units/length.ts'
import type { DrawnBefore } from './arrange-rooms.ts'
import type { EarlierWay } from './earlier-ways.ts'
import type { Facing, RoomRectangle } from './rectangles.ts'

/**
 * Rooms of a storey that stand already, each as the rectangle around it, what stays clear before openings that lead outdoors, and the ways
 * that lead into no room yet.
 */
export function drawnBefore(job: Job, storeyId: StoreyId): DrawnBefore {
  const rooms = records(job.rooms).filter((room) => room.storeyId === storeyId)
  const ids = new Set(rooms.map(({ id }) => id))
  const openings = records(job.openings).filter(({ roomId, far }) => far === null && ids.has(roomId))
  const inner = openings.filter((opening) => leadsToRoom(job, opening))
  const outer = openings.filter((opening) => !inner.includes(opening))
  return {
    rooms: rooms.map(({ corners }) => rectangle(corners)),
    clear: outer.flatMap((opening) => before(job, opening) ?? []),
    ways: inner.flatMap((opening) => wayOf(job, opening) ?? []),
  }
}

function rectangle(points: readonly { readonly x: number; readonly y: number }[]): RoomRectangle {
  const { min, max } = polygonBounds(points)
  return { x: min.x, y: min.y, width: max.x - min.x, depth: max.y - min.y }
}

/**
 * Whether an opening that leads nowhere yet is taken to lead into a room: doors of a hall do. Those of an entry and of other rooms with
 * nothing behind may be house doors, which nothing in the record tells.
 */
function leadsToRoom(job: Job, { kind, roomId }: Opening): boolean {
  const use = job.rooms[roomId]?.use
  return (kind === 'door' || kind === 'casedOpening') && (use === 'hall' || use === 'stairHall')
}

function wayOf(job: Job, opening: Opening): EarlierWay | null {
  const { near } = openingSides(job, opening)
  if (near === null) return null
  const { start, end, length } = near.wall
  const room = rectangle(near.room.corners)
  const side = sideAt(room, start, end)
  if (side === null) return null
  const alongX = side === 'north' || side === 'south'
  const casing = opening.casingNear?.width ?? 0
  const [first, last] = [near.place.from - casing, near.place.to + casing].map((distance) =>
    alongX
      ? start.x + ((end.x - start.x) / length) * distance
      : start.y + ((end.y - start.y) / length) * distance,
  )
  if (first === undefined || last === undefined) return null
  const { id: openingId, kind } = opening
  return { openingId, kind, room, side, from: Math.min(first, last), to: Math.max(first, last) }
}

/** The side of the rectangle that a wall lies on; null where it lies inside or slants. */
function sideAt(
  { x, y, width, depth }: RoomRectangle,
  start: { readonly x: number; readonly y: number },
  end: { readonly x: number; readonly y: number },
): Facing | null {
  if (start.y === end.y) return start.y === y ? 'north' : start.y === y + depth ? 'south' : null
  if (start.x === end.x) return start.x === x ? 'west' : start.x === x + width ? 'east' : null
  return null
}

/** Two feet out from a window, or from another opening in an outside wall. */
function before(job: Job, opening: Opening): RoomRectangle | null {
  const { near } = openingSides(job, opening)
  if (near === null || (opening.kind !== 'window' && near.wall.behind !== 'outside')) return null
  const { start, end, length } = near.wall
  const along = { x: (end.x - start.x) / length, y: (end.y - start.y) / length }
  const reach = 2 * unitsPerFoot
  // Which way the corners run is not known, so both sides of the wall are kept; inside there is the room anyway.
  const at = (distance: number, out: number) => ({
    x: start.x + along.x * distance + along.y * out,
    y: start.y + along.y * distance - along.x * out,
  })
  const { from, to } = near.place
  return rectangle([at(from, -reach), at(to, -reach), at(from, reach), at(to, reach)])
}
