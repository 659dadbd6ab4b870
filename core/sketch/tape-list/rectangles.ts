/** A rectangle on the plan from its least corner; length units, x right, y down. */
export interface RoomRectangle {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly depth: number
}

export type Facing = 'east' | 'west' | 'south' | 'north'

/** The stretch along which two places stand back to back, in plan coordinates along their walls. */
export interface Contact {
  readonly side: Facing
  readonly from: number
  readonly to: number
}

/** Where one place backs on another with just `gap` between them; null where it does not. */
export function contactOf(one: RoomRectangle, other: RoomRectangle, gap: number): Contact | null {
  const alongX = { from: Math.max(one.x, other.x), to: Math.min(one.x + one.width, other.x + other.width) }
  const alongY = { from: Math.max(one.y, other.y), to: Math.min(one.y + one.depth, other.y + other.depth) }
  if (alongX.to > alongX.from) {
    if (other.y === one.y + one.depth + gap) return { side: 'south', ...alongX }
    if (one.y === other.y + other.depth + gap) return { side: 'north', ...alongX }
  }
  if (alongY.to > alongY.from) {
    if (other.x === one.x + one.width + gap) return { side: 'east', ...alongY }
    if (one.x === other.x + other.width + gap) return { side: 'west', ...alongY }
  }
  return null
}

export const opposite: Readonly<Record<Facing, Facing>> = {
  east: 'west',
  west: 'east',
  north: 'south',
  south: 'north',
}

/** Whether a place has at least `gap` between it and all rooms, and lies on nothing that stays clear. */
export function isFreePlace(
  place: RoomRectangle,
  all: readonly RoomRectangle[],
  clear: readonly RoomRectangle[],
  gap: number,
): boolean {
  return all.every((other) => isClear(place, other, gap)) && clear.every((one) => isClear(place, one, 0))
}

function isClear(one: RoomRectangle, other: RoomRectangle, gap: number): boolean {
  return (
    one.x >= other.x + other.width + gap ||
    other.x >= one.x + one.width + gap ||
    one.y >= other.y + other.depth + gap ||
    other.y >= one.y + one.depth + gap
  )
}

/** The rectangle around all of them; there is at least one. */
export function boundsOf(places: readonly RoomRectangle[]): RoomRectangle {
  const x = Math.min(...places.map((place) => place.x))
  const y = Math.min(...places.map((place) => place.y))
  const width = Math.max(...places.map((place) => place.x + place.width)) - x
  const depth = Math.max(...places.map((place) => place.y + place.depth)) - y
  return { x, y, width, depth }
}

/** Area, with a weight on houses that grow long and thin. */
export function sprawlOf({ width, depth }: RoomRectangle): number {
  return width * depth + (width - depth) ** 2 / 4
}
