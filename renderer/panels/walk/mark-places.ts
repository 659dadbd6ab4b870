import type { Room } from '../../../core/project/sketch-records.ts'
import { roomWalls, type Wall } from '../../../core/project/walls.ts'
import { toMillimetres } from '../../../core/units/length.ts'
import { labelPlace } from '../../../core/work-order/house-picture.ts'
import { alongWall, boxOf, inwardOf } from './survey-places.ts'

interface Spot {
  readonly x: number
  readonly y: number
}

/** A place that is taken, by its middle and half of its sides. */
interface Taken extends Spot {
  readonly across: number
  readonly down: number
}

/** Of a count's dot, in points of the screen. */
export const dotRadius = 8
const nameSize = 15
/** A name in one line is not drawn smaller than this while it can be parted at a space. */
const leastSize = 11
const lineHeight = 1.15

interface RoomMarks {
  readonly name: Spot & { readonly size: number; readonly lines: readonly string[] }
  readonly ceiling: Spot
  readonly walls: ReadonlyMap<string, Spot>
}

/** Where the name of a room and its counts go, in millimetres: a count that would lie on the name or on another one gives way along its wall. */
export function roomMarks(
  room: Room,
  countOn: (wall: Wall) => number,
  hasCeiling: boolean,
  openings: readonly Spot[],
  pixel: number,
): RoomMarks {
  const middle = labelPlace(
    room.corners.map((corner) => ({ x: toMillimetres(corner.x), y: toMillimetres(corner.y) })),
  )
  const box = boxOf([room], 0)
  const { size, lines } = nameIn(room.name, box.width, pixel)
  const radius = dotRadius * pixel
  const longest = Math.max(...lines.map(({ length }) => length))
  const taken: Taken[] = openings.map((spot) => ({ ...spot, across: radius, down: radius }))
  taken.push({ ...middle, across: 0.3 * size * longest, down: (lines.length * lineHeight * size) / 2 })

  /** The first of the places that is free, else the one that covers least. */
  function take(wanted: readonly Spot[]): Spot {
    const inside = wanted.filter(
      ({ x, y }) =>
        x >= box.x + radius &&
        x <= box.x + box.width - radius &&
        y >= box.y + radius &&
        y <= box.y + box.height - radius,
    )
    const covers = (spot: Spot) => taken.reduce((sum, other) => sum + covered(spot, other, radius), 0)
    const spot = inside.toSorted((one, other) => covers(one) - covers(other))[0] ?? wanted[0] ?? middle
    taken.push({ ...spot, across: radius, down: radius })
    return spot
  }

  const below = (lines.length * lineHeight * size) / 2 + 14 * pixel
  const ceiling = hasCeiling
    ? take([1, -1, 2, -2, 3, -3].map((way) => ({ x: middle.x, y: middle.y + way * below })))
    : middle
  const inward = Math.min(20 * pixel, 0.2 * Math.min(box.width, box.height))
  const walls = roomWalls(room)
    .filter((wall) => countOn(wall) > 0)
    .map((wall) => [wall.id, take(alongIts(wall, inward))] as const)
  return { name: { ...middle, size, lines }, ceiling, walls: new Map(walls) }
}

/** How much of what is there a dot would lie on. */
function covered(spot: Spot, other: Taken, radius: number): number {
  const across = radius + other.across - Math.abs(spot.x - other.x)
  const down = radius + other.down - Math.abs(spot.y - other.y)
  return across > 0 && down > 0 ? Math.min(across, 2 * radius) * Math.min(down, 2 * radius) : 0
}

/** As large as the room is wide, in two lines where one would be too small to read. */
function nameIn(name: string, width: number, pixel: number) {
  const sizeOf = (lines: readonly string[]) =>
    Math.min(
      nameSize * pixel,
      (width * (lines.length > 1 ? 1.2 : 1.5)) / Math.max(4, ...lines.map(({ length }) => length)),
    )
  const size = sizeOf([name])
  const words = name.split(' ')
  if (size >= leastSize * pixel || words.length === 1) return { size, lines: [name] }
  const half = Math.ceil(words.length / 2)
  const lines = [words.slice(0, half).join(' '), words.slice(half).join(' ')]
  return { size: sizeOf(lines), lines }
}

/** Places so far inside a wall, from its middle to its ends. */
function alongIts(wall: Wall, far: number): readonly Spot[] {
  const inward = inwardOf(wall)
  return [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8].map((share) => {
    const { x, y } = alongWall(wall, wall.length * share)
    return { x: x + inward.x * far, y: y + inward.y * far }
  })
}
