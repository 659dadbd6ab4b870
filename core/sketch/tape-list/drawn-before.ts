import { polygonBounds } from '../../geometry/polygon.ts'
import { type Job, records } from '../../project/job.ts'
import type { Opening, StoreyId } from '../../project/sketch-records.ts'
import { openingSides } from '../../project/walls.ts'
import { unitsPerFoot } from '../../units/length.ts'
import type { DrawnBefore, RoomRectangle } from './arrange-rooms.ts'

/** Rooms of a storey that stand already, each as the rectangle around it, and what stays clear before openings that lead outdoors. */
export function drawnBefore(job: Job, storeyId: StoreyId): DrawnBefore {
  const rooms = records(job.rooms).filter((room) => room.storeyId === storeyId)
  const ids = new Set(rooms.map(({ id }) => id))
  const openings = records(job.openings).filter(({ roomId, far }) => far === null && ids.has(roomId))
  return {
    rooms: rooms.map(({ corners }) => rectangle(corners)),
    clear: openings.flatMap((opening) => before(job, opening) ?? []),
  }
}

function rectangle(points: readonly { readonly x: number; readonly y: number }[]): RoomRectangle {
  const { min, max } = polygonBounds(points)
  return { x: min.x, y: min.y, width: max.x - min.x, depth: max.y - min.y }
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
