import type { Opening } from '../project/sketch-records.ts'
import { openingNoun } from '../project/sketch-words.ts'
import { type OpeningPart, surfaceKey } from '../project/surface-ref.ts'
import { areaFromSquareUnits, rectangleArea, zeroArea } from '../units/area.ts'
import { type Length, lengthFromUnits } from '../units/length.ts'
import { doorSurface } from './door-surface.ts'
import type { Edge, FinishMark } from './finish-marks.ts'
import { narrowWork } from './girth-policies.ts'
import {
  casedBelow,
  casingLength,
  hasStool,
  liningLength,
  outerLengthByZone,
  stoolLength,
  stoolOutlineByZone,
} from './opening-outline.ts'
import { behindCasingMark, fillingMark, hasPart, partClass, partMark, partRef } from './opening-parts.ts'
import { revealsAdded } from './opening-policies.ts'
import type { OpeningSight, RoomSurvey } from './room-survey.ts'
import { sashSurface } from './sash-surface.ts'
import { areaLine, type SurfaceDraft } from './surface-draft.ts'
import type { HoleView, WallView } from './wall-view.ts'

/** Everything of wood, glass and plaster in the openings of a room, each painted from the side it is listed under. */
export function openingSurfaces(survey: RoomSurvey): readonly SurfaceDraft[] {
  return survey.views.flatMap((view) =>
    view.holes.flatMap((hole) => {
      const sight = { survey, view, hole }
      const { opening, side } = hole.placed
      return openingPartOrder.flatMap((part) =>
        hasPart(opening, side, part, survey.rules.markOf) ? [draftPart(sight, part)] : [],
      )
    }),
  )
}

const openingPartOrder = ['casing', 'jamb', 'slab', 'sash', 'stool'] as const

function draftPart(sight: OpeningSight, part: OpeningPart): SurfaceDraft {
  switch (part) {
    case 'casing':
      return casing(sight)
    case 'jamb':
      return jamb(sight)
    case 'slab':
      return { ...startPart(sight, part), ...doorSurface(sight) }
    case 'sash':
      return { ...startPart(sight, part), ...sashSurface(sight) }
    case 'stool':
      return stool(sight)
  }
}

type PartStart = Pick<SurfaceDraft, 'key' | 'surface' | 'roomId' | 'surfaceClass' | 'mark' | 'reach'>

function startPart({ survey, view, hole }: OpeningSight, part: OpeningPart): PartStart {
  const { opening, side } = hole.placed
  const surface = partRef(opening, side, part)
  const key = surfaceKey(surface)
  const surfaceClass = partClass(opening, part)
  const reach = hole.placed.place.top + (part === 'casing' ? (hole.casing?.width ?? 0) : 0)
  return {
    key,
    surface,
    roomId: view.room.id,
    surfaceClass,
    mark: survey.rules.markOf(surface, view.room.id, surfaceClass),
    reach: reach - floorUnder(view, hole),
  }
}

function floorUnder(view: WallView, hole: HoleView): number {
  return hole.onFloor ? hole.placed.place.bottom : lowestFloor(view)
}

function lowestFloor(view: WallView): number {
  return Math.min(...view.floor.map((point) => point.height))
}

function casing(sight: OpeningSight): SurfaceDraft {
  const { survey, view, hole } = sight
  const { opening } = hole.placed
  const { width, girth, style } = hole.casing as NonNullable<HoleView['casing']>
  const length = lengthFromUnits(casingLength(hole))
  const blocks = style === 'plinthAndCornerBlocks'
  return {
    ...startPart(sight, 'casing'),
    ...narrow(
      sight,
      girth,
      length,
      () => `casing of the ${openingNoun(opening)}${blocks ? ', with blocks' : ''}`,
    ),
    count: blocks ? cornerBlocks(hole) : 0,
    edges: [
      ...outerLengthByZone(view, hole).map((each, index) =>
        edge(view.zones[index]?.mark ?? null, each, 'wall'),
      ),
      edge(behindCasingMark(hole, survey.rules.markOf), liningLength(hole), 'jamb'),
      ...(hole.onFloor ? [edge(survey.floorMark, 2 * width, 'floor')] : []),
    ],
  }
}

/** A plinth under each leg that stands on the floor, and a block at each corner. */
function cornerBlocks(hole: HoleView): number {
  return hole.onFloor || casedBelow(hole) ? 4 : 2
}

function jamb(sight: OpeningSight): SurfaceDraft {
  const { survey, hole } = sight
  const { opening } = hole.placed
  const length = lengthFromUnits(liningLength(hole))
  const added =
    opening.jambOf === 'wood' ||
    revealsAdded(survey.rules.openingPolicy, areaFromSquareUnits(hole.measure.area))
  const noun = opening.jambOf === 'wall' ? 'reveal' : 'jamb'
  const draft = narrow(sight, opening.jambDepth, length, () => `${noun} of the ${openingNoun(opening)}`)
  return {
    ...startPart(sight, 'jamb'),
    ...draft,
    ...(added ? {} : { policyArea: zeroArea }),
    edges: jambEdges(sight),
  }
}

/** Casing or wall on this side, casing on the other, the sash in between, the floor at its feet. */
function jambEdges({ survey, view, hole }: OpeningSight): readonly Edge[] {
  const { opening, side } = hole.placed
  const { markOf } = survey.rules
  const along = liningLength(hole)
  const casingMark = partMark(opening, side, 'casing', markOf)
  const wallMark = view.zones.at(-1)?.mark ?? null
  const farCasing = partMark(opening, side === 'near' ? 'far' : 'near', 'casing', markOf)
  const sash = partMark(opening, side, 'sash', markOf)
  return [
    casingMark === undefined ? edge(wallMark, along, 'wall') : edge(casingMark, along, 'casing'),
    ...(farCasing === undefined ? [] : [edge(farCasing, along, 'casing on the other side')]),
    ...(sash === undefined ? [] : [edge(sash, along, 'sash')]),
    ...(hole.onFloor ? [edge(survey.floorMark, 2 * opening.jambDepth, 'floor')] : []),
  ]
}

function stool(sight: OpeningSight): SurfaceDraft {
  const { survey, view, hole } = sight
  const { opening } = hole.placed
  const { depth, thickness, apron } = opening.stool as NonNullable<Opening['stool']>
  const length = lengthFromUnits(stoolLength(hole))
  return {
    ...startPart(sight, 'stool'),
    ...narrow(
      sight,
      depth + thickness + apron,
      length,
      () => `stool and apron of the ${openingNoun(opening)}`,
    ),
    reach: hole.placed.place.bottom - lowestFloor(view),
    edges: hasStool(hole)
      ? [
          ...stoolOutlineByZone(view, hole).map((each, index) =>
            edge(view.zones[index]?.mark ?? null, each, 'wall'),
          ),
          edge(fillingMark(opening, 'near', survey.rules.markOf) ?? null, hole.measure.bottomLength, 'sash'),
        ]
      : [],
  }
}

type NarrowDraft = Pick<SurfaceDraft, 'grossArea' | 'policyArea' | 'length' | 'derivation'>

/** Narrow work: run x girth, and what the job's rule for girths makes of it. */
function narrow(sight: OpeningSight, girth: number, length: Length, what: () => string): NarrowDraft {
  const { words, rules } = sight.survey
  const grossArea = rectangleArea(girth, length)
  const work = narrowWork(rules.girthPolicy, girth, length)
  return {
    grossArea,
    policyArea: work.area,
    length,
    derivation: () => {
      const text = `${what()} ${words.length(length)} x girth ${words.small(girth)}`
      return [areaLine('gross', text, grossArea, sight.hole.placed.opening.id)]
    },
  }
}

export function edge(neighbour: FinishMark, length: number, along: string): Edge {
  return { neighbour, length, along }
}
