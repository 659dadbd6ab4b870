import { present } from '../lists/lists.ts'
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
import type { RoomSurvey, SeenOpening } from './room-survey.ts'
import { sashSurface } from './sash-surface.ts'
import { areaLine, faceOf, type SurfaceDraft, type SurfaceFace } from './surface-draft.ts'
import type { HoleView, WallView } from './wall-view.ts'

/** Everything of wood, glass and plaster in the openings of a room, each painted from the side it is listed under. */
export function openingSurfaces(survey: RoomSurvey): readonly SurfaceDraft[] {
  const drafts: SurfaceDraft[] = []
  for (const view of survey.views) {
    for (const hole of view.holes) {
      const seen = { survey, view, hole }
      for (const part of hole.marks.parts) drafts.push(draftPart(seen, part))
    }
  }
  return drafts
}

function draftPart(seen: SeenOpening, part: OpeningPart): SurfaceDraft {
  const face = partFace(seen, part)
  switch (part) {
    case 'casing':
      return casing(seen, face)
    case 'jamb':
      return jamb(seen, face)
    case 'slab':
      return doorSurface(seen, face, topOf(seen))
    case 'sash':
      return sashSurface(seen, face, topOf(seen))
    case 'stool':
      return stool(seen, face)
  }
}

function partFace({ survey, view, hole }: SeenOpening, part: OpeningPart): SurfaceFace {
  const { opening, side } = hole.placed
  return faceOf(partRef(opening, side, part), view.room.id, partClass(opening, part), survey.rules.markOf)
}

/** Highest point of the opening over the floor that its painter stands on. */
function topOf({ view, hole }: SeenOpening): number {
  const { bottom, top } = hole.placed.place
  return top - (hole.onFloor ? bottom : lowestFloor(view))
}

function lowestFloor(view: WallView): number {
  return Math.min(...view.floor.map((point) => point.height))
}

function casing(seen: SeenOpening, face: SurfaceFace): SurfaceDraft {
  const { survey, view, hole } = seen
  const { width, girth, style } = present(hole.casing)
  const blocks = style === 'plinthAndCornerBlocks'
  const edges = zoneEdges(view, outerLengthByZone(view, hole))
  edges.push(edge(hole.marks.behindCasing, liningLength(hole), 'jamb'))
  if (hole.onFloor) edges.push(edge(survey.floorMark, 2 * width, 'floor'))
  return narrowPart(seen, face, {
    girth,
    run: casingLength(hole),
    count: blocks ? cornerBlocks(hole) : 0,
    edges,
    reach: topOf(seen) + width,
    counts: true,
    what: blocks ? 'casing with blocks' : 'casing',
  })
}

/** A plinth under each leg that stands on the floor, and a block at each corner. */
function cornerBlocks(hole: HoleView): number {
  return hole.onFloor || casedBelow(hole) ? 4 : 2
}

function jamb(seen: SeenOpening, face: SurfaceFace): SurfaceDraft {
  const { survey, hole } = seen
  const { opening } = hole.placed
  const holeArea = areaFromSquareUnits(hole.measure.area)
  return narrowPart(seen, face, {
    girth: opening.jambDepth,
    run: liningLength(hole),
    count: 0,
    edges: jambEdges(seen),
    reach: topOf(seen),
    counts: opening.jambOf === 'wood' || revealsAdded(survey.rules.openingPolicy, holeArea),
    what: opening.jambOf === 'wall' ? 'reveal' : 'jamb',
  })
}

/** Casing or wall on this side, casing on the other, the sash in between, the floor at its feet. */
function jambEdges({ survey, view, hole }: SeenOpening): readonly Edge[] {
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

function stool(seen: SeenOpening, face: SurfaceFace): SurfaceDraft {
  const { view, hole } = seen
  const { depth, thickness, apron } = present(hole.placed.opening.stool)
  const edges = zoneEdges(view, stoolOutlineByZone(view, hole))
  edges.push(edge(hole.marks.filling ?? null, hole.measure.bottomLength, 'sash'))
  return narrowPart(seen, face, {
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
function narrowPart(seen: SeenOpening, face: SurfaceFace, part: NarrowPart): SurfaceDraft {
  const { words, rules } = seen.survey
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
      const { opening } = seen.hole.placed
      const text = `${part.what} of the ${openingNoun(opening)} ${words.length(length)} x girth ${words.small(part.girth)}`
      return [areaLine('gross', text, grossArea, opening.id)]
    },
  }
}
