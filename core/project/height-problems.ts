import { largestGap, smallestGap } from '../geometry/band.ts'
import { type HeightLine, type HeightPoint, heightLineAt } from '../geometry/height-line.ts'
import { polygonHolds } from '../geometry/polygon.ts'
import { formatLength, type LengthUnitSystem } from '../units/length.ts'
import { ceilingLine, floorLine, roomSpan } from './heights.ts'
import { type Problem, problem } from './problem.ts'
import type { Room } from './sketch-records.ts'
import { wallName } from './sketch-words.ts'
import { roomWalls, wallCeiling, wallFloor } from './walls.ts'

/** A ceiling or floor line that cannot be, or a ceiling that comes under the floor. The outline must be sound. */
export function heightProblems(room: Room, system: LengthUnitSystem): readonly Problem[] {
  const lines = [
    ...lineProblems(room, 'ceiling', ceilingLine(room), system),
    ...lineProblems(room, 'floor', floorLine(room), system),
  ]
  return lines.length > 0 ? lines : ceilingProblems(room, system)
}

/** Points must run forward without steps and stay within the room: a ridge or a rake beyond its walls has nothing to rest on. */
function lineProblems(
  room: Room,
  which: 'ceiling' | 'floor',
  line: HeightLine,
  system: LengthUnitSystem,
): readonly Problem[] {
  const start = Math.min(...room.corners.map((corner) => corner[line.axis]))
  const span = roomSpan(room, line.axis)
  const beyond = line.points.length > 1 ? line.points.find((point) => point.at - start > span) : undefined
  if (beyond !== undefined) {
    return [
      problem(
        'ceilingLineWrong',
        `${room.name}: the ${which} line bends at ${formatLength(beyond.at - start, system)}, but the room is only ${formatLength(span, system)} across there. Move the bend inside the room.`,
        [room.id],
      ),
    ]
  }
  const step = line.points.find((point, index) => isStep(line.points[index - 1], point))
  if (step === undefined) return []
  return [
    problem(
      'ceilingLineWrong',
      `${room.name}: the ${which} line turns back or steps at ${formatLength(step.at - start, system)}. Give each point its own place, further along than the one before.`,
      [room.id],
    ),
  ]
}

function isStep(before: HeightPoint | undefined, point: HeightPoint): boolean {
  if (before === undefined) return false
  return point.at < before.at || (point.at === before.at && point.height !== before.height)
}

function ceilingProblems(room: Room, system: LengthUnitSystem): readonly Problem[] {
  const walls = roomWalls(room)
  for (const wall of walls) {
    const gap = smallestGap(wallFloor(room, wall), wallCeiling(room, wall), 0, wall.length)
    if (gap < 0) {
      const sentence = `${room.name}, ${wallName(wall)}: the ceiling comes ${formatLength(-gap, system)} below the floor. Raise the ceiling there or make its slope less steep.`
      return [problem('ceilingBelowFloor', sentence, [room.id, wall.id])]
    }
  }
  if (innerGap(room) < 0) {
    const sentence = `${room.name}: the ceiling comes below the floor in the middle of the room. Raise the ceiling there.`
    return [problem('ceilingBelowFloor', sentence, [room.id])]
  }
  const highest = Math.max(
    ...walls.map((wall) => largestGap(wallFloor(room, wall), wallCeiling(room, wall), 0, wall.length)),
  )
  if (highest > 0) return []
  return [
    problem('ceilingBelowFloor', `${room.name}: the ceiling lies on the floor. Raise the ceiling.`, [
      room.id,
    ]),
  ]
}

/** Where ceiling and floor bend along different axes, their lowest gap may lie where two bends cross inside the outline. */
function innerGap(room: Room): number {
  const ceiling = ceilingLine(room)
  const floor = floorLine(room)
  if (ceiling.axis === floor.axis) return 0
  const gaps = ceiling.points.flatMap((above) =>
    floor.points.map((below) => {
      const crossing = ceiling.axis === 'x' ? { x: above.at, y: below.at } : { x: below.at, y: above.at }
      return polygonHolds(room.corners, crossing)
        ? heightLineAt(ceiling, above.at) - heightLineAt(floor, below.at)
        : 0
    }),
  )
  return Math.min(0, ...gaps)
}
