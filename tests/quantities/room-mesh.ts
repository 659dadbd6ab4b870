import earcut from 'earcut'
import type { CeilingOpening, Opening, Room } from '../../core/project/sketch-records.ts'

/**
 * A room as a 3-D mesh, made without the code under test: ceiling and floor heights from the records, each face triangulated by a
 * library, areas summed triangle by triangle. Square length units. Openings must lie inside their wall or stand on a level floor.
 */
export interface MeshAreas {
  readonly walls: ReadonlyMap<string, number>
  readonly ceiling: number
  readonly floor: number
}

type Point2 = readonly [number, number]
type Point3 = readonly [number, number, number]
interface Bend {
  readonly at: number
  readonly height: number
}

export function meshAreas(
  room: Room,
  openings: readonly Opening[],
  holes: readonly CeilingOpening[],
): MeshAreas {
  const plan = room.corners.map((corner): Point2 => [corner.x, corner.y])
  const walls = room.corners.map((corner, index) => {
    const start = plan[index] as Point2
    const end = plan[(index + 1) % plan.length] as Point2
    const own = openings.filter((opening) => opening.wallId === corner.wallId)
    return [corner.wallId, wallArea(room, start, end, own)] as const
  })
  const cuts = holes.map(({ x, y, width, depth }): Point2[] => [
    [x, y],
    [x + width, y],
    [x + width, y + depth],
    [x, y + depth],
  ])
  return {
    walls: new Map(walls),
    ceiling: slopedArea(plan, cuts, ceilingAxis(room), ceilingBends(room)),
    floor: slopedArea(plan, [], floorAxis(room), floorBends(room)),
  }
}

function least(room: Room, axis: 'x' | 'y'): number {
  return Math.min(...room.corners.map((corner) => corner[axis]))
}

function ceilingAxis(room: Room): 'x' | 'y' {
  return room.ceiling.kind === 'flat' ? 'x' : room.ceiling.along
}

function floorAxis(room: Room): 'x' | 'y' {
  return room.floor.kind === 'level' ? 'x' : room.floor.along
}

function ceilingBends(room: Room): readonly Bend[] {
  const { ceiling } = room
  if (ceiling.kind === 'flat') return [{ at: 0, height: ceiling.height }]
  const start = least(room, ceiling.along)
  const end = Math.max(...room.corners.map((corner) => corner[ceiling.along]))
  const ends = (inner: readonly Bend[], first: number, last: number) => [
    { at: start, height: first },
    ...inner.map(({ at, height }) => ({ at: start + at, height })),
    { at: end, height: last },
  ]
  switch (ceiling.kind) {
    case 'shed':
      return ends([], ceiling.startHeight, ceiling.endHeight)
    case 'gable':
      return ends(
        [{ at: ceiling.ridgeAt, height: ceiling.ridgeHeight }],
        ceiling.startHeight,
        ceiling.endHeight,
      )
    case 'vault':
      return ends(
        [ceiling.flatFrom, ceiling.flatTo].map((at) => ({ at, height: ceiling.flatHeight })),
        ceiling.startHeight,
        ceiling.endHeight,
      )
    case 'stair':
      return ceiling.line.map(({ at, height }) => ({ at: start + at, height }))
  }
}

function floorBends(room: Room): readonly Bend[] {
  const { floor } = room
  if (floor.kind === 'level') return [{ at: 0, height: 0 }]
  const start = least(room, floor.along)
  return floor.line.map(({ at, height }) => ({ at: start + at, height }))
}

/** Straight between bends, level beyond them. */
function heightOn(bends: readonly Bend[], at: number): number {
  const after = bends.findIndex((bend) => bend.at >= at)
  if (after === 0) return (bends[0] as Bend).height
  if (after < 0) return (bends.at(-1) as Bend).height
  const [a, b] = [bends[after - 1] as Bend, bends[after] as Bend]
  return a.height + ((b.height - a.height) * (at - a.at)) / (b.at - a.at)
}

function wallArea(room: Room, start: Point2, end: Point2, openings: readonly Opening[]): number {
  const length = Math.hypot(end[0] - start[0], end[1] - start[1])
  const line = (axis: 'x' | 'y', bends: readonly Bend[]): readonly Point2[] => {
    const [from, to] = axis === 'x' ? [start[0], end[0]] : [start[1], end[1]]
    const inner = bends
      .filter((bend) => (bend.at - from) * (bend.at - to) < 0)
      .map((bend): Point2 => [((bend.at - from) / (to - from)) * length, bend.height])
      .sort((a, b) => a[0] - b[0])
    return [[0, heightOn(bends, from)], ...inner, [length, heightOn(bends, to)]]
  }
  const bottom = line(floorAxis(room), floorBends(room))
  const top = line(ceilingAxis(room), ceilingBends(room))
  const standing = openings.filter((opening) => opening.sill === 0)
  const inside = openings.filter((opening) => opening.sill !== 0)
  const ring = [...notched(bottom, standing), ...[...top].reverse()]
  return triangles(
    ring,
    inside.map((opening) => rectangle(opening, heightAlong(bottom, opening.offset) + opening.sill)),
  ).reduce((sum, triangle) => sum + area3(triangle.map(([x, y]): Point3 => [x, 0, y])), 0)
}

function heightAlong(line: readonly Point2[], at: number): number {
  return heightOn(
    line.map(([place, height]) => ({ at: place, height })),
    at,
  )
}

function rectangle({ offset, width, height }: Opening, bottom: number): Point2[] {
  return [
    [offset, bottom],
    [offset + width, bottom],
    [offset + width, bottom + height],
    [offset, bottom + height],
  ]
}

/** Openings that stand on a level floor are notches in the lower edge. */
function notched(bottom: readonly Point2[], standing: readonly Opening[]): readonly Point2[] {
  if (standing.length === 0) return bottom
  const first = bottom[0] as Point2
  const last = bottom.at(-1) as Point2
  const level = first[1]
  const notches = [...standing]
    .sort((a, b) => a.offset - b.offset)
    .flatMap(({ offset, width, height }): Point2[] => [
      [offset, level],
      [offset, level + height],
      [offset + width, level + height],
      [offset + width, level],
    ])
  return [first, ...notches, last]
}

function triangles(ring: readonly Point2[], holes: readonly (readonly Point2[])[]): readonly Point2[][] {
  const points = [...ring, ...holes.flat()]
  const starts = holes.map((_, index) =>
    [ring, ...holes.slice(0, index)].reduce((sum, part) => sum + part.length, 0),
  )
  const corners = earcut(points.flat(), starts)
  return Array.from({ length: corners.length / 3 }, (_, index) =>
    [0, 1, 2].map((corner) => points[corners[3 * index + corner] as number] as Point2),
  )
}

function area3(points: readonly Point3[]): number {
  const [a, b, c] = points as readonly [Point3, Point3, Point3]
  const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const
  const v = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const
  return (
    Math.sqrt(
      (u[1] * v[2] - u[2] * v[1]) ** 2 + (u[2] * v[0] - u[0] * v[2]) ** 2 + (u[0] * v[1] - u[1] * v[0]) ** 2,
    ) / 2
  )
}

/** Triangles of the plan, cut where the surface bends, lifted to their heights. */
function slopedArea(
  plan: readonly Point2[],
  holes: readonly (readonly Point2[])[],
  axis: 'x' | 'y',
  bends: readonly Bend[],
): number {
  const coordinate = axis === 'x' ? 0 : 1
  const lift = ([x, y]: Point2): Point3 => [x, y, heightOn(bends, axis === 'x' ? x : y)]
  const strips = [Number.NEGATIVE_INFINITY, ...bends.map((bend) => bend.at), Number.POSITIVE_INFINITY]
  return triangles(plan, holes).reduce(
    (total, triangle) =>
      total +
      strips.slice(1).reduce((sum, to, index) => {
        const piece = cutConvex(
          cutConvex(triangle, coordinate, strips[index] as number, 1),
          coordinate,
          to,
          -1,
        )
        return sum + fanArea(piece.map(lift))
      }, 0),
    0,
  )
}

function cutConvex(
  points: readonly Point2[],
  coordinate: 0 | 1,
  line: number,
  sign: 1 | -1,
): readonly Point2[] {
  if (!Number.isFinite(line)) return points
  return points.flatMap((point, index) => {
    const next = points[(index + 1) % points.length] as Point2
    const here = (point[coordinate] - line) * sign
    const there = (next[coordinate] - line) * sign
    const kept: Point2[] = here >= 0 ? [point] : []
    if (here * there >= 0) return kept
    const share = here / (here - there)
    const crossing = [0, 1].map((index) =>
      index === coordinate
        ? line
        : (point[index] as number) + share * ((next[index] as number) - (point[index] as number)),
    )
    return [...kept, crossing as unknown as Point2]
  })
}

function fanArea(points: readonly Point3[]): number {
  let sum = 0
  for (let index = 1; index + 1 < points.length; index++) {
    sum += area3([points[0] as Point3, points[index] as Point3, points[index + 1] as Point3])
  }
  return sum
}
