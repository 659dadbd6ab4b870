import { present } from '../../lists/lists.ts'
import type { RoomUse } from '../../project/vocabulary.ts'
import { isPassage } from '../room-kinds.ts'
import { type EarlierWay, placeAtWay } from './earlier-ways.ts'
import { boundsOf, contactOf, isFreePlace, type RoomRectangle, sprawlOf } from './rectangles.ts'

interface RoomToPlace {
  readonly width: number
  readonly depth: number
  readonly use: RoomUse
}

/** What is on the storey already: rooms, places in front of their windows that stay clear, and doors that lead nowhere yet. */
export interface DrawnBefore {
  readonly rooms: readonly RoomRectangle[]
  readonly clear: readonly RoomRectangle[]
  readonly ways: readonly EarlierWay[]
}

/** The room that each room wants to share a door with: a closet with the room above it in the list, others with the hall. */
export function partnersOf(rooms: readonly RoomToPlace[]): readonly (number | null)[] {
  const hub = hubOf(rooms)
  return rooms.map((room, index) => {
    if (index === hub) return null
    if (room.use !== 'closet') return hub
    const before = rooms.findLastIndex(
      (other, at) => at < index && !isPassage(other.use) && other.use !== 'closet',
    )
    return before < 0 ? hub : before
  })
}

/** The longest hall, else the first room that is no closet. */
function hubOf(rooms: readonly RoomToPlace[]): number {
  const length = (index: number) => Math.max(rooms[index]?.width ?? 0, rooms[index]?.depth ?? 0)
  const passages = rooms.flatMap((room, index) => (isPassage(room.use) ? [index] : []))
  const longest = passages.reduce(
    (best, index) => (length(index) > length(best) ? index : best),
    passages[0] ?? -1,
  )
  return longest >= 0
    ? longest
    : Math.max(
        0,
        rooms.findIndex(({ use }) => use !== 'closet'),
      )
}

/**
 * Sets rooms against each other with `gap` between their faces, each where it touches its partner for at least `door`, and all of them as close
 * together as that allows. The first is at the origin, or beside what is `drawn` before; the room that nobody is partner before, and every room of a list
 * without a hall, goes to a door of an earlier room that leads nowhere yet. The answer has the order of the rooms.
 */
export function arrangeRooms(
  rooms: readonly RoomToPlace[],
  gap: number,
  door: number,
  drawn: DrawnBefore,
): readonly RoomRectangle[] {
  const partners = partnersOf(rooms)
  const order = placingOrder(rooms, partners)
  const placed = new Map<number, RoomRectangle>()
  const open = new Set(drawn.ways)
  const hasHall = rooms.some(({ use }) => isPassage(use))
  for (const index of order) {
    const room = present(rooms[index])
    const partner = partners[index] ?? null
    const beside = partner === null ? undefined : placed.get(partner)
    const all = [...drawn.rooms, ...placed.values()]
    const goesToWay = room.use !== 'closet' && (partner === null || !hasHall)
    const atWay = goesToWay ? placeAtWay(room, open, all, drawn.clear, gap) : null
    if (atWay !== null) open.delete(atWay.way)
    const place =
      atWay?.place ??
      (beside && bestPlace(room, [beside], all, drawn.clear, gap, door)) ??
      bestPlace(room, all, all, drawn.clear, gap, door) ??
      bestPlace(room, all, all, drawn.clear, gap, 0)
    placed.set(
      index,
      place ?? { ...rightOf([...all, ...drawn.clear], gap), width: room.width, depth: room.depth },
    )
  }
  return rooms.map((_, index) => present(placed.get(index)))
}

function rightOf(all: readonly RoomRectangle[], gap: number): { readonly x: number; readonly y: number } {
  if (all.length === 0) return { x: 0, y: 0 }
  const { x, y, width } = boundsOf(all)
  return { x: x + width + gap, y }
}

/** The room nobody is partner before, then its neighbours large before small, closets after all. */
function placingOrder(
  rooms: readonly RoomToPlace[],
  partners: readonly (number | null)[],
): readonly number[] {
  const rank = (index: number) => (partners[index] === null ? 0 : rooms[index]?.use === 'closet' ? 2 : 1)
  return rooms.map((_, index) => index).sort((a, b) => rank(a) - rank(b) || a - b)
}

/** The place beside one of `neighbors` that is clear of all and makes the smallest house; null where none touches for `least`. */
function bestPlace(
  room: RoomToPlace,
  neighbors: readonly RoomRectangle[],
  all: readonly RoomRectangle[],
  clear: readonly RoomRectangle[],
  gap: number,
  least: number,
): RoomRectangle | null {
  const bounds = boundsOf(all)
  let best: { readonly place: RoomRectangle; readonly score: number } | null = null
  for (const neighbor of neighbors) {
    for (const place of placesBeside(room, neighbor, all, gap)) {
      const contact = contactOf(neighbor, place, gap)
      if (contact === null || contact.to - contact.from < least) continue
      const score = sprawlOf(boundsOf([bounds, place]))
      if (best !== null && score >= best.score) continue
      if (isFreePlace(place, all, clear, gap)) best = { place, score }
    }
  }
  return best?.place ?? null
}

function placesBeside(
  { width, depth }: RoomToPlace,
  neighbor: RoomRectangle,
  all: readonly RoomRectangle[],
  gap: number,
): readonly RoomRectangle[] {
  const xs = stops(
    neighbor.x,
    neighbor.width,
    width,
    gap,
    all.map((one) => [one.x, one.width] as const),
  )
  const ys = stops(
    neighbor.y,
    neighbor.depth,
    depth,
    gap,
    all.map((one) => [one.y, one.depth] as const),
  )
  return [
    ...xs.flatMap((x) =>
      [neighbor.y + neighbor.depth + gap, neighbor.y - gap - depth].map((y) => ({ x, y, width, depth })),
    ),
    ...ys.flatMap((y) =>
      [neighbor.x + neighbor.width + gap, neighbor.x - gap - width].map((x) => ({ x, y, width, depth })),
    ),
  ]
}

/** Where a room may begin along a wall: flush with either end of it, or right beside a room that stands there. */
function stops(
  start: number,
  length: number,
  own: number,
  gap: number,
  others: readonly (readonly [number, number])[],
): readonly number[] {
  const beside = others.flatMap(([from, size]) => [from + size + gap, from - gap - own])
  const touching = beside.filter((at) => at < start + length && at + own > start)
  return [...new Set([start, start + length - own, ...touching])]
}
