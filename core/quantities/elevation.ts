import type { HeightPoint } from '../geometry/height-line.ts'
import type { Hole } from '../geometry/hole.ts'
import type { Interval } from '../geometry/interval.ts'
import type { Job } from '../project/job.ts'
import {
  type Light,
  lightCells,
  openingLayout,
  type SashFrame,
  sashFrames,
  sideFrames,
} from '../project/opening-layout.ts'
import { roomParts } from '../project/room-parts.ts'
import type { Opening, RoomId, TrimRun, WallId } from '../project/sketch-records.ts'
import { openingNoun, trimNoun, wallName } from '../project/sketch-words.ts'
import { type SurfaceRef, surfaceKey } from '../project/surface-ref.ts'
import { type DrawnEdge, drawnEdges } from './elevation-edges.ts'
import { hasStool, stoolLength } from './opening-outline.ts'
import { surveyRoom, takeOffRules } from './room-survey.ts'
import type { BandView, HoleView, OuterEdges, WallView } from './wall-view.ts'

/**
 * A wall seen square on from inside the room, to be drawn to scale. Places run along the wall from its start, heights go up from the
 * room's floor datum, both in length units.
 */
export interface WallElevation {
  readonly roomId: RoomId
  readonly wallId: WallId
  /** `wall B`. */
  readonly name: string
  readonly length: number
  /** On which hand the wall's start is for somebody who stands in the room and looks at it. */
  readonly startsAt: 'left' | 'right'
  readonly floor: readonly HeightPoint[]
  readonly ceiling: readonly HeightPoint[]
  /** From the floor up. */
  readonly zones: readonly ElevationZone[]
  readonly openings: readonly ElevationOpening[]
  readonly trim: readonly ElevationTrim[]
  /** Where the wall's own paint is cut in or masked. */
  readonly edges: readonly DrawnEdge[]
}

interface ElevationZone {
  readonly key: string
  readonly surface: SurfaceRef
  readonly lower: readonly HeightPoint[]
  readonly upper: readonly HeightPoint[]
}

export interface ElevationOpening {
  readonly openingId: Opening['id']
  readonly side: 'near' | 'far'
  readonly name: string
  readonly hole: Hole
  /** Outer edges of the casing; null where there is none. */
  readonly casing: OuterEdges | null
  /** Stool with its apron. */
  readonly stool: OuterEdges | null
  /** The door, under its transom and between its sidelights. */
  readonly slab: Light | null
  readonly sash: readonly Light[]
  /** Panes of glass; those under an arch are drawn as far as the arch lets them. */
  readonly lights: readonly Light[]
}

interface ElevationTrim {
  readonly trimRunId: TrimRun['id']
  readonly key: string
  readonly name: string
  readonly lower: readonly HeightPoint[]
  readonly upper: readonly HeightPoint[]
  readonly stretches: readonly Interval[]
}

/** All walls of a room in the order of its outline. */
export function roomElevations(job: Job, roomId: RoomId): readonly WallElevation[] {
  const parts = roomParts(job, roomId)
  if (parts === null) return []
  const survey = surveyRoom(parts, takeOffRules(job))
  return survey.views.map((view, index) => ({
    roomId,
    wallId: view.wall.id,
    name: wallName(view.wall),
    length: view.wall.length,
    startsAt: view.wall.inside === 'right' ? 'left' : 'right',
    floor: view.floor,
    ceiling: view.ceiling,
    zones: view.zones.map(({ key, surface, lower, upper }) => ({ key, surface, lower, upper })),
    openings: view.holes.map(elevateOpening),
    trim: view.bands.map((band) => elevateTrim(view, band)),
    edges: drawnEdges(survey, index),
  }))
}

function elevateOpening(hole: HoleView): ElevationOpening {
  const { opening, side, place } = hole.placed
  const layout = openingLayout(opening, place)
  const frames: readonly SashFrame[] = [...sashFrames(opening, layout), ...sideFrames(opening, layout)]
  return {
    openingId: opening.id,
    side,
    name: openingNoun(opening),
    hole: hole.hole,
    casing: hole.casing === null ? null : casingEdges(hole),
    stool: stoolEdges(hole),
    slab: opening.slab === null ? null : layout.main,
    sash: frames.map(({ frame }) => frame),
    lights: frames.flatMap(lightCells),
  }
}

/** Over a stool the casing stands on it. */
function casingEdges(hole: HoleView): OuterEdges {
  return hasStool(hole) ? { ...hole.outer, bottom: hole.placed.place.bottom } : hole.outer
}

function stoolEdges(hole: HoleView): OuterEdges | null {
  const { opening, place } = hole.placed
  if (opening.stool === null || !hasStool(hole)) return null
  const horn = (stoolLength(hole) - hole.measure.bottomLength) / 2
  return { from: place.from - horn, to: place.to + horn, bottom: hole.outer.bottom, top: place.bottom }
}

function elevateTrim(view: WallView, band: BandView): ElevationTrim {
  return {
    trimRunId: band.run.id,
    key: surfaceKey({ kind: 'trim', roomId: view.room.id, trimRunId: band.run.id }),
    name: trimNoun(band.run),
    lower: band.lower,
    upper: band.upper,
    stretches: band.stretches,
  }
}
