import {
  highestBetween,
  largestGap,
  levelOf,
  lineLength,
  lowerLine,
  lowestBetween,
  raisedLine,
  smallestGap,
  stretchesBelow,
} from '../geometry/band.ts'
import { type HeightPoint, heightAt } from '../geometry/height-line.ts'
import { type Hole, type HoleMeasure, measureHole } from '../geometry/hole.ts'
import { type Interval, intervalsLeft } from '../geometry/interval.ts'
import { openingHole } from '../project/opening-layout.ts'
import { type PlacedOpening, placeOpening } from '../project/placed-opening.ts'
import type { RoomParts } from '../project/room-parts.ts'
import type { Casing, Room, TrimRun } from '../project/sketch-records.ts'
import { type SurfaceRef, surfaceKey, type WallZone } from '../project/surface-ref.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import { roomWalls, type Wall, wallCeiling, wallFloor } from '../project/walls.ts'
import type { FinishMark, MarkOf } from './finish-marks.ts'
import { type OpeningMarks, openingMarks } from './opening-parts.ts'

/** One wall of a room with all that sits on it: the common ground of wall, trim and edge figures and of the drawn elevation. */
export interface WallView {
  readonly room: Room
  readonly wall: Wall
  readonly floor: readonly HeightPoint[]
  readonly ceiling: readonly HeightPoint[]
  /** From the floor up; one, or two where a run divides the wall. */
  readonly zones: readonly ZoneView[]
  /** The chair rail or wainscot cap that divides it. */
  readonly divider: TrimRun | null
  readonly holes: readonly HoleView[]
  readonly bands: readonly BandView[]
}

export interface ZoneView {
  readonly zone: WallZone
  readonly surface: SurfaceRef
  readonly key: string
  readonly surfaceClass: SurfaceClass
  readonly mark: FinishMark
  readonly lower: readonly HeightPoint[]
  readonly upper: readonly HeightPoint[]
}

/** An opening on the wall with its casing on this side. */
export interface HoleView {
  readonly placed: PlacedOpening
  readonly hole: Hole
  readonly measure: HoleMeasure
  readonly casing: Casing | null
  readonly marks: OpeningMarks
  /** Whether the hole stands on the floor: no casing, jamb or reveal below it. */
  readonly onFloor: boolean
  /** The rectangle that trim runs stop at: the hole with its casing, stool and apron. */
  readonly outer: OuterEdges
}

export interface OuterEdges extends Interval {
  readonly bottom: number
  readonly top: number
}

/** A trim run where it runs along the wall: its edges and the stretches left between what it meets. */
export interface BandView {
  readonly run: TrimRun
  readonly lower: readonly HeightPoint[]
  readonly upper: readonly HeightPoint[]
  readonly stretches: readonly Interval[]
  readonly length: number
}

/** Walls as they are seen from inside the room, with what is cut out of them and the rails that part them. */
export function viewWalls(parts: RoomParts, markOf: MarkOf): readonly WallView[] {
  const placed = parts.openings.flatMap((sided) => placeOpening(sided) ?? [])
  return roomWalls(parts.room).map((wall) =>
    viewWall(
      parts,
      wall,
      placed.filter((each) => each.wall.id === wall.id),
      markOf,
    ),
  )
}

function viewWall(parts: RoomParts, wall: Wall, placed: readonly PlacedOpening[], markOf: MarkOf): WallView {
  const { room } = parts
  const floor = wallFloor(room, wall)
  const ceiling = wallCeiling(room, wall)
  const holes = placed.map((each) => viewHole(each, floor, ceiling, markOf))
  const runs = parts.trimRuns.filter((run) => run.walls === null || run.walls.includes(wall.id))
  const divider = dividingRun(runs)
  return {
    room,
    wall,
    floor,
    ceiling,
    zones: viewZones(room, wall, floor, ceiling, divider, markOf),
    divider,
    holes,
    bands: runs.map((run) => viewBand(run, wall, floor, ceiling, holes)),
  }
}

/** A wainscot cap divides its wall before a chair rail does; of several the lowest. */
function dividingRun(runs: readonly TrimRun[]): TrimRun | null {
  for (const kind of ['wainscotCap', 'chairRail'] as const) {
    const rails = runs.filter((run) => run.kind === kind)
    if (rails.length > 0) return rails.reduce((low, run) => (run.level < low.level ? run : low))
  }
  return null
}

/** The wall divides at the rail's lower edge; trim is not taken off a wall, so that the parts add up to the whole. */
function viewZones(
  room: Room,
  wall: Wall,
  floor: readonly HeightPoint[],
  ceiling: readonly HeightPoint[],
  rail: TrimRun | null,
  markOf: MarkOf,
): readonly ZoneView[] {
  if (rail === null) return [viewZone(room, wall, 'whole', 'walls', floor, ceiling, markOf)]
  const split = lowerLine(raisedLine(floor, rail.level), ceiling, 0, wall.length)
  const lowerClass = rail.kind === 'wainscotCap' ? 'wainscot' : 'walls'
  return [
    viewZone(room, wall, 'lower', lowerClass, floor, split, markOf),
    viewZone(room, wall, 'upper', 'walls', split, ceiling, markOf),
  ]
}

function viewZone(
  room: Room,
  wall: Wall,
  zone: WallZone,
  surfaceClass: SurfaceClass,
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
  markOf: MarkOf,
): ZoneView {
  const surface: SurfaceRef = { kind: 'wall', roomId: room.id, wallId: wall.id, zone }
  const key = surfaceKey(surface)
  return { zone, surface, key, surfaceClass, mark: markOf(surface, room.id, surfaceClass), lower, upper }
}

function viewHole(
  placed: PlacedOpening,
  floor: readonly HeightPoint[],
  ceiling: readonly HeightPoint[],
  markOf: MarkOf,
): HoleView {
  const { opening, side, place } = placed
  const hole = openingHole(opening, place)
  const casing = side === 'near' ? opening.casingNear : opening.casingFar
  const onFloor = place.bottom <= Math.max(heightAt(floor, place.from), heightAt(floor, place.to))
  const width = casing?.width ?? 0
  const under =
    opening.stool !== null && side === 'near' ? opening.stool.thickness + opening.stool.apron : width
  return {
    placed,
    hole,
    measure: measureHole(hole, floor, ceiling),
    casing,
    marks: openingMarks(opening, side, markOf),
    onFloor,
    outer: {
      from: place.from - width,
      to: place.to + width,
      bottom: onFloor ? place.bottom : place.bottom - under,
      top: place.top + width,
    },
  }
}

function viewBand(
  run: TrimRun,
  wall: Wall,
  floor: readonly HeightPoint[],
  ceiling: readonly HeightPoint[],
  holes: readonly HoleView[],
): BandView {
  const lower =
    run.kind === 'crown'
      ? raisedLine(ceiling, -run.height)
      : raisedLine(floor, run.kind === 'baseboard' ? 0 : run.level)
  const upper = run.kind === 'crown' ? ceiling : raisedLine(lower, run.height)
  const stretches = intervalsLeft({ from: 0, to: wall.length }, [
    ...tooLow(lower, upper, floor, ceiling, wall.length),
    ...holes.flatMap((hole) => blocked(hole.outer, lower, upper)),
  ])
  const along = run.kind === 'crown' ? upper : lower
  return {
    run,
    lower,
    upper,
    stretches,
    length: stretches.reduce((sum, each) => sum + lineLength(along, each.from, each.to), 0),
  }
}

/** Where the wall is lower than the run needs, as towards the eaves. */
function tooLow(
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
  floor: readonly HeightPoint[],
  ceiling: readonly HeightPoint[],
  length: number,
): readonly Interval[] {
  if (smallestGap(upper, ceiling, 0, length) >= 0 && smallestGap(floor, lower, 0, length) >= 0) return []
  if (largestGap(upper, ceiling, 0, length) < 0) return [{ from: 0, to: length }]
  return [...stretchesBelow(ceiling, upper, 0, length), ...stretchesBelow(lower, floor, 0, length)]
}

/** The stretches on which an opening with its casing stands in the way of a run. */
function blocked(
  outer: OuterEdges,
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
): readonly Interval[] {
  const lowerLevel = levelOf(lower)
  const upperLevel = levelOf(upper)
  if (lowerLevel !== null && upperLevel !== null) {
    return outer.bottom < upperLevel && outer.top > lowerLevel ? [outer] : []
  }
  const clear =
    outer.top <= lowestBetween(lower, outer.from, outer.to) ||
    outer.bottom >= highestBetween(upper, outer.from, outer.to)
  if (clear) return []
  const bottom = [{ at: outer.from, height: outer.bottom }]
  const top = [{ at: outer.from, height: outer.top }]
  const over = stretchesBelow(bottom, upper, outer.from, outer.to)
  const under = stretchesBelow(lower, top, outer.from, outer.to)
  return over.flatMap((one) =>
    under.flatMap((other) => {
      const both = { from: Math.max(one.from, other.from), to: Math.min(one.to, other.to) }
      return both.from < both.to ? [both] : []
    }),
  )
}
