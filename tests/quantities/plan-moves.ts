import type { Job } from '../../core/project/job.ts'
import type { CeilingShape, FloorShape, LinePoint, Room } from '../../core/project/sketch-records.ts'
import { lengthFromUnits } from '../../core/units/length.ts'

/** A turn, mirroring or shift of the whole plan that keeps corners on whole length units and axes on axes. */
export interface PlanMove {
  readonly name: string
  readonly spot: (x: number, y: number) => readonly [number, number]
  /** The axis that a plan axis becomes, and whether it now runs the other way. */
  readonly axis: (axis: 'x' | 'y') => { readonly along: 'x' | 'y'; readonly reversed: boolean }
}

const kept = (reversed: boolean) => (along: 'x' | 'y') => ({ along, reversed })

export const planMoves: readonly PlanMove[] = [
  {
    name: 'turned a quarter',
    spot: (x, y) => [-y, x],
    axis: (axis) => (axis === 'x' ? { along: 'y', reversed: false } : { along: 'x', reversed: true }),
  },
  { name: 'turned half round', spot: (x, y) => [-x, -y], axis: kept(true) },
  {
    name: 'turned three quarters',
    spot: (x, y) => [y, -x],
    axis: (axis) => (axis === 'x' ? { along: 'y', reversed: true } : { along: 'x', reversed: false }),
  },
  {
    name: 'mirrored',
    spot: (x, y) => [-x, y],
    axis: (axis) => ({ along: axis, reversed: axis === 'x' }),
  },
  { name: 'shifted', spot: (x, y) => [x + 123_456_789, y - 98_765_431], axis: kept(false) },
]

export function moveJob(job: Job, move: PlanMove): Job {
  return {
    ...job,
    rooms: mapTable(job.rooms, (room) => moveRoom(room, move)),
    ceilingOpenings: mapTable(job.ceilingOpenings, (hole) => {
      const [x1, y1] = move.spot(hole.x, hole.y)
      const [x2, y2] = move.spot(hole.x + hole.width, hole.y + hole.depth)
      return {
        ...hole,
        x: lengthFromUnits(Math.min(x1, x2)),
        y: lengthFromUnits(Math.min(y1, y2)),
        width: lengthFromUnits(Math.abs(x2 - x1)),
        depth: lengthFromUnits(Math.abs(y2 - y1)),
      }
    }),
  }
}

export function mapTable<Item>(
  table: Readonly<Record<string, Item>>,
  change: (item: Item) => Item,
): Readonly<Record<string, Item>> {
  return Object.fromEntries(Object.entries(table).map(([id, item]) => [id, change(item)]))
}

function moveRoom(room: Room, move: PlanMove): Room {
  const span = (axis: 'x' | 'y') => {
    const places = room.corners.map((corner) => corner[axis])
    return Math.max(...places) - Math.min(...places)
  }
  return {
    ...room,
    corners: room.corners.map((corner) => {
      const [x, y] = move.spot(corner.x, corner.y)
      return { ...corner, x: lengthFromUnits(x), y: lengthFromUnits(y) }
    }),
    ceiling: moveCeiling(room.ceiling, move, span),
    floor: moveFloor(room.floor, move, span),
  }
}

function moveCeiling(shape: CeilingShape, move: PlanMove, span: (axis: 'x' | 'y') => number): CeilingShape {
  if (shape.kind === 'flat') return shape
  const { along, reversed } = move.axis(shape.along)
  if (shape.kind === 'stair') {
    return { ...shape, along, line: reversed ? turnLine(shape.line, span(shape.along)) : shape.line }
  }
  if (!reversed) return { ...shape, along }
  const ends = { along, startHeight: shape.endHeight, endHeight: shape.startHeight }
  const back = (at: number) => lengthFromUnits(span(shape.along) - at)
  if (shape.kind === 'gable') return { ...shape, ...ends, ridgeAt: back(shape.ridgeAt) }
  if (shape.kind === 'vault')
    return { ...shape, ...ends, flatFrom: back(shape.flatTo), flatTo: back(shape.flatFrom) }
  return { ...shape, ...ends }
}

function moveFloor(shape: FloorShape, move: PlanMove, span: (axis: 'x' | 'y') => number): FloorShape {
  if (shape.kind === 'level') return shape
  const { along, reversed } = move.axis(shape.along)
  return { ...shape, along, line: reversed ? turnLine(shape.line, span(shape.along)) : shape.line }
}

function turnLine(line: readonly LinePoint[], span: number): readonly LinePoint[] {
  return [...line].reverse().map(({ at, height }) => ({ at: lengthFromUnits(span - at), height }))
}
