import type { Opening } from '../project/sketch-records.ts'
import { openingNoun } from '../project/sketch-words.ts'
import type { OpeningPart } from '../project/surface-ref.ts'
import { areaFromSquareUnits, rectangleArea, zeroArea } from '../units/area.ts'
import { lengthFromUnits } from '../units/length.ts'
import { doorSurface } from './door-surface.ts'
import type { Edge, FinishMark } from './finish-marks.ts'
import { narrowWork } from './girth-policies.ts'
import {
  casedBelow,
  casingLength,
  liningLength,
  outerLengthByZone,
  stoolLength,
  stoolOutlineByZone,
} from './opening-outline.ts'
import { partClass, partRef } from './opening-parts.ts'
import { revealsAdded } from './opening-policies.ts'
import type { OpeningSight, RoomSurvey } from './room-survey.ts'
import { sashSurface } from './sash-surface.ts'
import { areaLine, faceOf, type SurfaceDraft, type SurfaceFace } from './surface-draft.ts'
import type { HoleView, WallView } from './wall-view.ts'

/** Everything of wood, glass and plaster in the openings of a room, each painted from the side it is listed under. */
export function openingSurfaces(survey: RoomSurvey): readonly SurfaceDraft[] {
  const drafts: SurfaceDraft[] = []
  for (const view of survey.views) {
    for (const hole of view.holes) {
      const sight = { survey, view, hole }
      for (const part of hole.marks.parts) drafts.push(draftPart(sight, part))
    }
  }
  return drafts
}

function draftPart(sight: OpeningSight, part: OpeningPart): SurfaceDraft {
  const face = partFace(sight, part)
  switch (part) {
    case 'casing':
      return casing(sight, face)
    case 'jamb':
      return jamb(sight, face)
    case 'slab':
      return doorSurface(sight, face, topOf(sight))
    case 'sash':
      return sashSurface(sight, face, topOf(sight))
    case 'stool':
      return stool(sight, face)
  }
}

function partFace({ survey, view, hole }: OpeningSight, part: OpeningPart): SurfaceFace {
  const { opening, side } = hole.placed
  return faceOf(partRef(opening, side, part), view.room.id, partClass(opening, part), survey.rules.markOf)
}

/** Highest point of the opening over the floor that its painter stands on. */
function topOf({ view, hole }: OpeningSight): number {
  const { bottom, top } = hole.placed.place
  return top - (hole.onFloor ? bottom : lowestFloor(view))
}

function lowestFloor(view: WallView): number {
  return Math.min(...view.floor.map((point) => point.height))
}

function casing(sight: OpeningSight, face: SurfaceFace): SurfaceDraft {
  const { survey, view, hole } = sight
  const { width, girth, style } = hole.casing as NonNullable<HoleView['casing']>
  const blocks = style === 'plinthAndCornerBlocks'
  const edges = zoneEdges(view, outerLengthByZone(view, hole))
  edges.push(edge(hole.marks.behindCasing, liningLength(hole), 'jamb'))
  if (hole.onFloor) edges.push(edge(survey.floorMark, 2 * width, 'floor'))
  return narrowPart(sight, face, {
    girth,
    run: casingLength(hole),
    count: blocks ? cornerBlocks(hole) : 0,
    edges,
    reach: topOf(sight) + width,
    counts: true,
    what: blocks ? 'casing with blocks' : 'casing',
  })
}

/** A plinth under each leg that stands on the floor, and a block at each corner. */
function cornerBlocks(hole: HoleView): number {
  return hole.onFloor || casedBelow(hole) ? 4 : 2
}

function jamb(sight: OpeningSight, face: SurfaceFace): SurfaceDraft {
  const { survey, hole } = sight
  const { opening } = hole.placed
  const holeArea = areaFromSquareUnits(hole.measure.area)
  return narrowPart(sight, face, {
    girth: opening.jambDepth,
    run: liningLength(hole),
    count: 0,
    edges: jambEdges(sight),
    reach: topOf(sight),
    counts: opening.jambOf === 'wood' || revealsAdded(survey.rules.openingPolicy, holeArea),
    what: opening.jambOf === 'wall' ? 'reveal' : 'jamb',
  })
}

/** Casing or wall on this side, casing on the other, the sash in between, the floor at its feet. */
function jambEdges({ survey, view, hole }: OpeningSight): readonly Edge[] {
  const { casing, casingBeyond, sash } = hole.marks
  const along = liningLength(hole)
  const edges = [
    casing === undefined
      ? edge(view.zones.at(-1)?.mark ?? null, along, 'wall')
      : edge(casing, along, 'casing'),
  ]
  if (casingBeyond !== undefined) edges.push(edge(casingBeyond, along, 'casing on the other side'))
  if (sash !== undefined) edges.push(edge(sash, along, 'sash'))
  if (hole.onFloor) edges.push(edge(survey.floorMark, 2 * hole.placed.opening.jambDepth, 'floor'))
  return edges
}

function stool(sight: OpeningSight, face: SurfaceFace): SurfaceDraft {
  const { view, hole } = sight
  const { depth, thickness, apron } = hole.placed.opening.stool as NonNullable<Opening['stool']>
  const edges = zoneEdges(view, stoolOutlineByZone(view, hole))
  edges.push(edge(hole.marks.filling ?? null, hole.measure.bottomLength, 'sash'))
  return narrowPart(sight, face, {
    girth: depth + thickness + apron,
    run: stoolLength(hole),
    count: 0,
    edges,
    reach: hole.placed.place.bottom - lowestFloor(view),
    counts: true,
    what: 'stool and apron',
  })
}

function edge(neighbour: FinishMark, length: number, along: string): Edge {
  return { neighbour, length, along }
}

function zoneEdges(view: WallView, lengths: readonly number[]): Edge[] {
  return lengths.map((length, index) => edge(view.zones[index]?.mark ?? null, length, 'wall'))
}

interface NarrowPart {
  /** Length units. */
  readonly girth: number
  readonly run: number
  readonly count: number
  readonly edges: readonly Edge[]
  readonly reach: number
  /** Whether the job's policy for openings counts it at all. */
  readonly counts: boolean
  readonly what: string
}

/** Narrow work: run x girth, and what the job's rule for girths makes of it. */
function narrowPart(sight: OpeningSight, face: SurfaceFace, part: NarrowPart): SurfaceDraft {
  const { words, rules } = sight.survey
  const length = lengthFromUnits(part.run)
  const grossArea = rectangleArea(part.girth, length)
  return {
    face,
    grossArea,
    policyArea: part.counts ? narrowWork(rules.girthPolicy, part.girth, length).area : zeroArea,
    length,
    count: part.count,
    edges: part.edges,
    reach: part.reach,
    derivation: () => {
      const { opening } = sight.hole.placed
      const text = `${part.what} of the ${openingNoun(opening)} ${words.length(length)} x girth ${words.small(part.girth)}`
      return [areaLine('gross', text, grossArea, opening.id)]
    },
  }
}
