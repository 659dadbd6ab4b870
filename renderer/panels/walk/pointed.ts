import { type Point, pointBetween, pointsDistance } from '../../../core/geometry/point.ts'
import { polygonHolds } from '../../../core/geometry/polygon.ts'
import { segmentShareAt } from '../../../core/geometry/segment.ts'
import type { Opening, Room } from '../../../core/project/sketch-records.ts'
import type { SurfaceRef } from '../../../core/project/surface-ref.ts'
import { roomWalls, type Wall } from '../../../core/project/walls.ts'
import { unitsPerMillimetre } from '../../../core/units/length.ts'
import { type DrawnSide, firstPart } from './survey-places.ts'

/** Picks are broad: a hand on a touch pad hits a wall within so many millimetres inside its line. */
export const pickBand = 320

export interface OpeningSide {
  readonly opening: Opening
  readonly side: DrawnSide
}

/** What lies under the pointer: an opening, else a wall, else the room, which means its ceiling. */
export type Pointed =
  | ({ readonly kind: 'opening' } & OpeningSide)
  | { readonly kind: 'wall'; readonly room: Room; readonly wall: Wall }
  | { readonly kind: 'ceiling'; readonly room: Room }

/** `at` in plan units; an opening is hit within `reach` millimetres of its line. */
export function pointedAt(
  rooms: readonly Room[],
  sides: readonly OpeningSide[],
  at: Point,
  reach: number,
): Pointed | null {
  const sided = nearest(sides, reach, ({ side }) => offWall(side.wall, at, side.from, side.to))
  if (sided !== undefined) return { kind: 'opening', ...sided }
  const room = rooms.findLast(({ corners }) => polygonHolds(corners, at))
  if (room === undefined) return null
  const wall = nearest(roomWalls(room), pickBand, (each) => offWall(each, at, 0, each.length))
  return wall === undefined ? { kind: 'ceiling', room } : { kind: 'wall', room, wall }
}

export function surfaceOf(pointed: Pointed): SurfaceRef {
  switch (pointed.kind) {
    case 'opening': {
      const { opening, side } = pointed
      return {
        kind: 'opening',
        openingId: opening.id,
        side: side.side,
        part: firstPart(opening, side.side),
      }
    }
    case 'wall':
      return { kind: 'wall', roomId: pointed.room.id, wallId: pointed.wall.id, zone: 'whole' }
    case 'ceiling':
      return { kind: 'ceiling', roomId: pointed.room.id }
  }
}

/** Millimetres from a wall's line, for a place beside the part of it from `from` to `to`; no end beside the rest. */
function offWall(wall: Wall, at: Point, from: number, to: number): number {
  const share = segmentShareAt(wall, at)
  const along = share * wall.length
  if (along < from || along > to) return Number.POSITIVE_INFINITY
  return pointsDistance(pointBetween(wall.start, wall.end, share), at) / unitsPerMillimetre
}

function nearest<Item>(
  items: readonly Item[],
  reach: number,
  distanceOf: (item: Item) => number,
): Item | undefined {
  let best: Item | undefined
  let least = reach
  for (const item of items) {
    const distance = distanceOf(item)
    if (distance > least) continue
    best = item
    least = distance
  }
  return best
}
