import type { Job } from '../../../core/project/job.ts'
import type { Opening, Room, RoomId } from '../../../core/project/sketch-records.ts'
import { surfaceKey } from '../../../core/project/surface-ref.ts'
import { openingSides, type Wall } from '../../../core/project/walls.ts'
import { toMillimetres } from '../../../core/units/length.ts'

const margin = 500

export interface DrawnSide {
  readonly side: 'near' | 'far'
  readonly room: Room
  readonly wall: Wall
  readonly from: number
  readonly to: number
}

export function sidesOf(job: Job, opening: Opening): readonly DrawnSide[] {
  const { near, far } = openingSides(job, opening)
  return [
    ...(near === null ? [] : [{ side: 'near', ...near, from: near.place.from, to: near.place.to } as const]),
    ...(far === null ? [] : [{ side: 'far', ...far, from: far.place.from, to: far.place.to } as const]),
  ]
}

/** The part a click on an opening means first: what is largest to look at. */
export function firstPart(opening: Opening, side: 'near' | 'far'): 'slab' | 'sash' | 'casing' | 'jamb' {
  const { slab } = opening
  if (slab !== null && (side === 'near' ? slab.paintNear : slab.paintFar)) return 'slab'
  if (opening.sash !== null && side === 'near') return 'sash'
  return (side === 'near' ? opening.casingNear : opening.casingFar) === null ? 'jamb' : 'casing'
}

type Counts = ReadonlyMap<string, number>

function sumOf(counts: Counts, keys: readonly string[]): number {
  return keys.reduce((total, key) => total + (counts.get(key) ?? 0), 0)
}

/** Keys of a wall, whole or in the zones a rail parts it into. */
export function wallKeys(roomId: RoomId, wall: Wall): readonly string[] {
  return (['whole', 'lower', 'upper'] as const).map((zone) =>
    surfaceKey({ kind: 'wall', roomId, wallId: wall.id, zone }),
  )
}

export function wallCount(counts: Counts, roomId: RoomId, wall: Wall): number {
  return sumOf(counts, wallKeys(roomId, wall))
}

/** Keys of the parts that one side of an opening may have. */
export function openingKeys({ id }: Opening, side: 'near' | 'far'): readonly string[] {
  return (['casing', 'jamb', 'slab', 'sash', 'stool'] as const).map((part) =>
    surfaceKey({ kind: 'opening', openingId: id, side, part }),
  )
}

export function openingCount(counts: Counts, opening: Opening, { side }: DrawnSide): number {
  return sumOf(counts, openingKeys(opening, side))
}

/** Where the count of an opening is drawn on one side of it. */
export function openingMark({ wall, from, to }: DrawnSide, pixel: number) {
  const { x, y } = alongWall(wall, (from + to) / 2)
  const inward = inwardOf(wall)
  return { x: x + inward.x * 14 * pixel, y: y + inward.y * 14 * pixel }
}

export function alongWall(wall: Wall, at: number) {
  const share = at / wall.length
  return {
    x: toMillimetres(wall.start.x + (wall.end.x - wall.start.x) * share),
    y: toMillimetres(wall.start.y + (wall.end.y - wall.start.y) * share),
  }
}

/** Unit vector from the wall into its room; y points down. */
export function inwardOf(wall: Wall) {
  const turn = wall.inside === 'right' ? 1 : -1
  return {
    x: (-(wall.end.y - wall.start.y) / wall.length) * turn,
    y: ((wall.end.x - wall.start.x) / wall.length) * turn,
  }
}

export function boxOf(rooms: readonly Room[], around = margin) {
  const xs = rooms.flatMap((room) => room.corners.map((corner) => toMillimetres(corner.x)))
  const ys = rooms.flatMap((room) => room.corners.map((corner) => toMillimetres(corner.y)))
  const [left, top] = [Math.min(...xs), Math.min(...ys)]
  return {
    x: left - around,
    y: top - around,
    width: Math.max(...xs) - left + 2 * around,
    height: Math.max(...ys) - top + 2 * around,
  }
}
