import type { Job } from './job.ts'
import type { Opening, RoomId, WallId } from './sketch-records.ts'
import type { OpeningPart, SurfaceRef } from './surface-ref.ts'

/** Looks a record up by id without being fooled by names every object has. */
export function ownRecord<Item>(table: Readonly<Record<string, Item>>, id: string): Item | undefined {
  return Object.hasOwn(table, id) ? table[id] : undefined
}

/** False also where the room itself is not there. */
export function roomHasWall(job: Job, roomId: RoomId, wallId: WallId): boolean {
  return ownRecord(job.rooms, roomId)?.corners.some((corner) => corner.wallId === wallId) ?? false
}

/** Whether the surface a record speaks of is there to be painted: its room, wall, run, item, or part of an opening. */
export function surfaceExists(job: Job, ref: SurfaceRef): boolean {
  switch (ref.kind) {
    case 'wall':
      return roomHasWall(job, ref.roomId, ref.wallId)
    case 'ceiling':
    case 'floor':
      return ownRecord(job.rooms, ref.roomId) !== undefined
    case 'trim':
      return ownRecord(job.trimRuns, ref.trimRunId)?.roomId === ref.roomId
    case 'built':
      return ownRecord(job.builtItems, ref.builtItemId)?.roomId === ref.roomId
    case 'opening': {
      const opening = ownRecord(job.openings, ref.openingId)
      if (opening === undefined || (ref.side === 'far' && opening.far === null)) return false
      return openingHasPart(opening, ref.side, ref.part)
    }
  }
}

function openingHasPart(opening: Opening, side: 'near' | 'far', part: OpeningPart): boolean {
  switch (part) {
    case 'casing':
      return (side === 'near' ? opening.casingNear : opening.casingFar) !== null
    case 'jamb':
      return opening.jambDepth > 0
    case 'slab':
      return opening.slab !== null
    case 'sash':
      return opening.sash !== null || opening.transom !== null || opening.sidelights !== null
    case 'stool':
      return opening.stool !== null
  }
}
