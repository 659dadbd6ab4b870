import type { Opening, OpeningId } from '../../project/sketch-records.ts'
import { boundsOf, contactOf, type Facing, isFreePlace, type RoomRectangle, sprawlOf } from './rectangles.ts'

/** A door or cased opening of a room drawn before that leads into no room yet; plan coordinates along its wall, casings with it. */
export interface EarlierWay {
  readonly openingId: OpeningId
  readonly kind: Opening['kind']
  readonly room: RoomRectangle
  /** The side of the earlier room that it is on. */
  readonly side: Facing
  readonly from: number
  readonly to: number
}

type Extent = Pick<RoomRectangle, 'width' | 'depth'>

/** The place at one of the ways that is clear of all rooms and makes the smallest house; null where none is. */
export function placeAtWay(
  room: Extent,
  ways: Iterable<EarlierWay>,
  all: readonly RoomRectangle[],
  clear: readonly RoomRectangle[],
  gap: number,
): { readonly way: EarlierWay; readonly place: RoomRectangle } | null {
  const bounds = boundsOf(all)
  const found = [...ways].flatMap((way) =>
    placesAt(room, way, gap)
      .filter((place) => leadsInto(way, place, gap) && isFreePlace(place, all, clear, gap))
      .map((place) => ({ way, place, size: sprawlOf(boundsOf([bounds, place])) })),
  )
  return found.toSorted((a, b) => a.size - b.size)[0] ?? null
}

/** Whether the whole of a way is in a wall of the room at this place. */
export function leadsInto(way: EarlierWay, place: RoomRectangle, gap: number): boolean {
  const contact = contactOf(way.room, place, gap)
  return contact !== null && contact.side === way.side && contact.from <= way.from && contact.to >= way.to
}

/** Flush with either end of the earlier room, with the way in the middle, or just beside one end of it. */
function placesAt({ width, depth }: Extent, way: EarlierWay, gap: number): readonly RoomRectangle[] {
  const { room, side, from, to } = way
  const alongX = side === 'north' || side === 'south'
  const own = alongX ? width : depth
  const [start, length] = alongX ? [room.x, room.width] : [room.y, room.depth]
  const stops = [start, start + length - own, Math.round((from + to - own) / 2), from, to - own]
  const isBefore = side === 'north' || side === 'west'
  const x = isBefore ? room.x - gap - width : room.x + room.width + gap
  const y = isBefore ? room.y - gap - depth : room.y + room.depth + gap
  return stops.map((at) => (alongX ? { x: at, y, width, depth } : { x, y: at, width, depth }))
}
