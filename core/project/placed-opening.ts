import type { SidedOpening } from './room-parts.ts'
import type { Opening } from './sketch-records.ts'
import { farPlace, findWall, type OpeningPlace, openingPlace, type Wall } from './walls.ts'

/** An opening found on a wall of the room it is looked at from. */
export interface PlacedOpening {
  readonly opening: Opening
  readonly side: 'near' | 'far'
  readonly wall: Wall
  readonly place: OpeningPlace
}

/** Where an opening shows in one of its rooms; null when its wall is not there or does not face the near one. */
export function placeOpening(sided: SidedOpening): PlacedOpening | null {
  const { opening, side, nearRoom, farRoom } = sided
  const nearWall = findWall(nearRoom, opening.wallId)
  if (nearWall === null) return null
  if (side === 'near') {
    return { opening, side, wall: nearWall, place: openingPlace(nearRoom, nearWall, opening) }
  }
  const farWall = farRoom && opening.far ? findWall(farRoom, opening.far.wallId) : null
  const place = farRoom && farWall && farPlace(nearWall, farRoom, farWall, opening)
  return farWall && place ? { opening, side, wall: farWall, place } : null
}
