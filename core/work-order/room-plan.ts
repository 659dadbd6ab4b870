import { polygonHolds } from '../geometry/polygon.ts'
import { type Job, records } from '../project/job.ts'
import type { Corner, Opening, OpeningId, Room, RoomId, WallId } from '../project/sketch-records.ts'
import type { Condition } from '../project/survey-records.ts'
import { wallLetter } from '../project/walls.ts'
import { formatLength, toMillimetres } from '../units/length.ts'
import { type PlanSlope, planSlope } from './plan-slope.ts'

/** A place in millimetres from the plan's upper left corner, y down. */
export interface PlanPoint {
  readonly x: number
  readonly y: number
}

export interface PlanWall {
  readonly wallId: WallId
  /** A, B, C... in the order of the outline; the same letter stands in the tables. */
  readonly letter: string
  readonly from: PlanPoint
  readonly to: PlanPoint
  readonly length: string
}

export interface PlanOpening {
  readonly kind: Opening['kind']
  /** As on the room's sheet. */
  readonly letter: string
  readonly from: PlanPoint
  readonly to: PlanPoint
}

export interface PlanMarker {
  readonly number: number
  readonly at: PlanPoint
}

/** The drawing of one room: outline at the finished face, walls and openings lettered, and where things were found. */
export interface RoomPlan {
  readonly name: string
  readonly widthMm: number
  readonly depthMm: number
  /** Drawn a quarter to the left: what is up on the plan of the house lies left. */
  readonly isTurned: boolean
  readonly outline: readonly PlanPoint[]
  /** 1 where the inside lies to the right of a wall's direction (clockwise on a page with y down), else -1. */
  readonly turn: 1 | -1
  readonly walls: readonly PlanWall[]
  readonly openings: readonly PlanOpening[]
  readonly markers: readonly PlanMarker[]
  readonly slope: PlanSlope
}

/** How far markers stand from the wall they are on, and from each other; millimetres of the room. */
interface MarkerReach {
  readonly inset: number
  readonly spacing: number
}

/** A ring is 4.2 mm on paper, and the frame of an opening's letter reaches 4.4 mm into the room. */
const ringOnPaper = { inset: 6.6, spacing: 4.6 }

/** For rooms drawn side by side so many times smaller; in a narrow room markers stand in its middle. */
export function markerReach(scale: number, rooms: readonly Room[]): MarkerReach {
  const narrowest = Math.min(
    ...rooms.map(({ corners }) => Math.min(spread(corners, 'x'), spread(corners, 'y'))),
  )
  return { inset: Math.min(ringOnPaper.inset * scale, narrowest / 2), spacing: ringOnPaper.spacing * scale }
}

/** Width and depth of the rectangle around a room as it is drawn. */
export function sizeOf(corners: readonly Corner[]): Pick<RoomPlan, 'widthMm' | 'depthMm'> {
  const [across, down] = [spread(corners, 'x'), spread(corners, 'y')]
  return isTurned(corners) ? { widthMm: down, depthMm: across } : { widthMm: across, depthMm: down }
}

/** A hall that runs up the page is drawn lying, or it would be too small to read. */
function isTurned(corners: readonly Corner[]): boolean {
  return spread(corners, 'y') > 3.2 * spread(corners, 'x')
}

/** From the house's plan, millimetres, to the drawing of one room; turned, what was up lies left. */
function placeOf(corners: readonly Corner[]): (point: PlanPoint) => PlanPoint {
  const xs = corners.map((corner) => toMillimetres(corner.x))
  const ys = corners.map((corner) => toMillimetres(corner.y))
  const [left, right, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys)]
  return isTurned(corners)
    ? ({ x, y }) => ({ x: y - top, y: right - x })
    : ({ x, y }) => ({ x: x - left, y: y - top })
}

function spread(corners: readonly Corner[], axis: 'x' | 'y'): number {
  const along = corners.map((corner) => toMillimetres(corner[axis]))
  return Math.max(...along) - Math.min(...along)
}

/** A finding with the number it has on the sheet. */
export interface NumberedCondition {
  readonly number: number
  readonly condition: Condition
}

/**
 * The floor plan of a room for its sheet, with the letters of its openings and the numbers of what was found.
 *
 * @param reach how far markers may stand outside
 */
export function roomPlan(
  job: Job,
  room: Room,
  letters: ReadonlyMap<OpeningId, string>,
  found: readonly NumberedCondition[],
  reach: MarkerReach,
): RoomPlan {
  const place = placeOf(room.corners)
  const outline = room.corners.map(({ x, y }) => place({ x: toMillimetres(x), y: toMillimetres(y) }))
  const walls = planWalls(job, room, outline)
  const turn = doubledArea(outline) >= 0 ? 1 : -1
  return {
    name: room.name,
    ...sizeOf(room.corners),
    isTurned: isTurned(room.corners),
    outline,
    turn,
    walls,
    openings: records(job.openings).flatMap((opening) =>
      planOpening(job, room.id, walls, opening, place).map((drawn) => ({
        ...drawn,
        letter: letters.get(opening.id) ?? '',
      })),
    ),
    slope: planSlope(room, place, job.header.unitSystem),
    markers: planMarkers(job, room.id, walls, outline, turn, found, reach),
  }
}

/** Twice the signed area: positive for an outline that runs clockwise on the page (y down). */
function doubledArea(outline: readonly PlanPoint[]): number {
  return outline.reduce((total, point, index) => {
    const next = outline[(index + 1) % outline.length] ?? point
    return total + point.x * next.y - next.x * point.y
  }, 0)
}

function planWalls(job: Job, room: Room, outline: readonly PlanPoint[]): readonly PlanWall[] {
  return room.corners.flatMap((corner, index) => {
    const from = outline[index]
    const to = outline[(index + 1) % outline.length]
    const next = room.corners[(index + 1) % room.corners.length]
    if (from === undefined || to === undefined || next === undefined) return []
    const length = formatLength(Math.hypot(next.x - corner.x, next.y - corner.y), job.header.unitSystem)
    return [{ wallId: corner.wallId, letter: wallLetter(index), from, to, length }]
  })
}

/** An opening is drawn where its near wall has it; seen from the far room it is projected onto the far wall. */
function planOpening(
  job: Job,
  roomId: RoomId,
  walls: readonly PlanWall[],
  opening: Opening,
  place: (point: PlanPoint) => PlanPoint,
): readonly Omit<PlanOpening, 'letter'>[] {
  const near = nearEnds(job, opening)
  if (near === null) return []
  const [first, second] = near.map(place)
  if (first === undefined || second === undefined) return []
  if (opening.roomId === roomId) return [{ kind: opening.kind, from: first, to: second }]
  if (opening.far?.roomId !== roomId) return []
  const wall = walls.find((each) => each.wallId === opening.far?.wallId)
  if (wall === undefined) return []
  return [{ kind: opening.kind, from: projected(first, wall), to: projected(second, wall) }]
}

function nearEnds(job: Job, opening: Opening): readonly [PlanPoint, PlanPoint] | null {
  const corners = job.rooms[opening.roomId]?.corners ?? []
  const index = corners.findIndex((corner) => corner.wallId === opening.wallId)
  const from = corners[index]
  const to = corners[(index + 1) % corners.length]
  if (from === undefined || to === undefined) return null
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  const along = (distance: number): PlanPoint => ({
    x: toMillimetres(from.x + ((to.x - from.x) * distance) / length),
    y: toMillimetres(from.y + ((to.y - from.y) * distance) / length),
  })
  return [along(opening.offset), along(opening.offset + opening.width)]
}

function projected(point: PlanPoint, wall: PlanWall): PlanPoint {
  const [dx, dy] = [wall.to.x - wall.from.x, wall.to.y - wall.from.y]
  const along = ((point.x - wall.from.x) * dx + (point.y - wall.from.y) * dy) / (dx * dx + dy * dy)
  return { x: wall.from.x + dx * along, y: wall.from.y + dy * along }
}

/** Markers on a wall stand side by side along it; those of the ceiling, the floor and the room as a whole in the middle. */
function planMarkers(
  job: Job,
  roomId: RoomId,
  walls: readonly PlanWall[],
  outline: readonly PlanPoint[],
  turn: 1 | -1,
  found: readonly NumberedCondition[],
  { inset, spacing }: MarkerReach,
): readonly PlanMarker[] {
  const places = found.map(({ condition }) => wallOf(job, roomId, condition))
  const taken = new Map<WallId | null, number>()
  const wanted = places.map((wallId, index) => {
    const order = taken.get(wallId) ?? 0
    taken.set(wallId, order + 1)
    const many = places.filter((place) => place === wallId).length
    const wall = walls.find((each) => each.wallId === wallId)
    const at =
      wall === undefined
        ? besideMiddle(outline, order, many, { inset, spacing })
        : alongWall(wall, turn, (order + 1) / (many + 1), inset)
    return { number: found[index]?.number ?? 0, at }
  })
  return apart(wanted, outline, spacing)
}

/** In a narrow room markers of opposite walls meet: each takes the nearest place inside the room that is free, along its longer side first. */
function apart(
  wanted: readonly PlanMarker[],
  outline: readonly PlanPoint[],
  spacing: number,
): readonly PlanMarker[] {
  const spreadOf = (of: (point: PlanPoint) => number) =>
    Math.max(...outline.map(of)) - Math.min(...outline.map(of))
  const isDeep = spreadOf((point) => point.y) > spreadOf((point) => point.x)
  const steps = wanted.flatMap((_, index) => (index === 0 ? [0] : [index, -index]))
  const moves = steps
    .flatMap((along) => steps.map((aside) => ({ along, aside })))
    .toSorted((a, b) => farness(a) - farness(b))
  const placed: PlanMarker[] = []
  for (const { number, at: start } of wanted) {
    const tries = moves.map(({ along, aside }) => ({
      x: start.x + (isDeep ? aside : along) * spacing,
      y: start.y + (isDeep ? along : aside) * spacing,
    }))
    const free = tries.filter((at) =>
      placed.every((other) => Math.hypot(other.at.x - at.x, other.at.y - at.y) >= spacing - 1),
    )
    const at = free.find((each) => polygonHolds(outline, each)) ?? free[0] ?? start
    placed.push({ number, at })
  }
  return placed
}

/** Aside counts more than along. */
function farness({ along, aside }: { readonly along: number; readonly aside: number }): number {
  return Math.abs(along) + 1.5 * Math.abs(aside)
}

/** The wall of the room a finding is on, that of its opening too; null for ceiling, floor, trim and the room as a whole. */
export function wallOf(job: Job, roomId: RoomId, condition: Condition): WallId | null {
  if (condition.on.level !== 'surface') return null
  const { surface } = condition.on
  if (surface.kind === 'wall') return surface.wallId
  if (surface.kind !== 'opening') return null
  const opening = job.openings[surface.openingId]
  return (opening?.roomId === roomId ? opening.wallId : opening?.far?.wallId) ?? null
}

function alongWall(wall: PlanWall, turn: 1 | -1, share: number, inset: number): PlanPoint {
  const [dx, dy] = [wall.to.x - wall.from.x, wall.to.y - wall.from.y]
  const length = Math.hypot(dx, dy)
  return {
    x: wall.from.x + dx * share - (dy / length) * inset * turn,
    y: wall.from.y + dy * share + (dx / length) * inset * turn,
  }
}

/** Rows about the middle of the corners, of five at most and no longer than the room is wide. */
function besideMiddle(
  outline: readonly PlanPoint[],
  order: number,
  many: number,
  { inset, spacing }: MarkerReach,
): PlanPoint {
  const middle = {
    x: outline.reduce((total, point) => total + point.x, 0) / outline.length,
    y: outline.reduce((total, point) => total + point.y, 0) / outline.length,
  }
  const xs = outline.map((point) => point.x)
  const width = Math.max(...xs) - Math.min(...xs)
  const most = Math.max(1, Math.min(5, Math.floor((width - 2 * inset) / spacing) + 1))
  const row = Math.floor(order / most)
  const inRow = Math.min(most, many - row * most)
  return {
    x: middle.x + ((order % most) - (inRow - 1) / 2) * spacing,
    y: middle.y + (row - (Math.ceil(many / most) - 1) / 2) * spacing,
  }
}
