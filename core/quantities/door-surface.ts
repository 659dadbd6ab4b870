import { levelOf, lowerLine } from '../geometry/band.ts'
import { type HoleMeasure, measureHole } from '../geometry/hole.ts'
import { present } from '../lists/lists.ts'
import { type OpeningLayout, openingLayout, sashFrames } from '../project/opening-layout.ts'
import { openingNoun } from '../project/sketch-words.ts'
import { type Area, areaFromSquareUnits, areaFromUnits, zeroArea } from '../units/area.ts'
import { equivalentArea, equivalentSource, slabCoefficients } from './equivalents.ts'
import type { SeenOpening } from './room-survey.ts'
import { measureSash } from './sash-measure.ts'
import { areaLine, type SurfaceDraft, type SurfaceFace } from './surface-draft.ts'
import type { HoleView, WallView } from './wall-view.ts'

/**
 * One face of a door, with its edges on the side they show on. Glass is taken off where the sash record says how it is divided;
 * a glazed slab without one is measured solid ("sash doors measured solid", Measuring Painter's Work).
 */
export function doorSurface(
  { survey, view, hole }: SeenOpening,
  face: SurfaceFace,
  reach: number,
): SurfaceDraft {
  const { opening, side } = hole.placed
  const { words } = survey
  const slab = present(opening.slab)
  const layout = openingLayout(opening, hole.placed.place)
  const main = mainMeasure(view, hole, layout)
  const grossArea = areaFromSquareUnits(main.area)
  const glass = glassOf(view, hole, layout)
  const edgeRun = slabPerimeter(main, slab.leaves)
  const edgeArea = slab.edgesShow === side ? areaFromSquareUnits(edgeRun * slab.thickness) : zeroArea
  const equivalent = equivalentArea(grossArea, slabCoefficients[slab.kind])
  return {
    face,
    reach,
    grossArea,
    deductedArea: areaFromUnits(Math.min(grossArea, glass.area)),
    addedArea: edgeArea,
    equivalentArea: equivalent,
    count: slab.leaves,
    glassPerimeter: glass.perimeter,
    edges: [
      {
        neighbour: hole.marks.slabBeyond ?? null,
        length: edgeRun,
        along: 'its other face',
      },
    ],
    derivation: () => {
      const { from, to, bottom, top } = layout.main
      const size = `${words.length(to - from)} x ${words.length(top - bottom)}`
      const edgeText = `edges ${words.length(Math.round(edgeRun))} x ${words.small(slab.thickness)}`
      const note = `equivalent: flat area x ${slabCoefficients[slab.kind]} for ${slab.kind} doors (${equivalentSource})`
      return [
        areaLine('gross', `${openingNoun(opening)}, face ${size}`, grossArea, opening.id),
        ...(glass.area > 0 ? [areaLine('deduction', 'glass', glass.area, opening.id)] : []),
        ...(edgeArea > 0 ? [areaLine('addition', edgeText, edgeArea, opening.id)] : []),
        areaLine('note', note, equivalent, opening.id),
      ]
    },
  }
}

/** The part of the hole that the door fills, under its transom and between its sidelights. */
function mainMeasure(view: WallView, hole: HoleView, layout: OpeningLayout): HoleMeasure {
  if (layout.transom === null && layout.sidelights.length === 0) return hole.measure
  const { from, to, top } = layout.main
  const level = [{ at: from, height: top }]
  const ceiling =
    levelOf(view.ceiling) === null
      ? lowerLine(view.ceiling, level, from, to)
      : [{ at: from, height: Math.min(top, levelOf(view.ceiling) ?? top) }]
  return measureHole({ ...hole.hole, from, to }, view.floor, ceiling)
}

/** Around every leaf: the meeting edges of a pair count for both. */
function slabPerimeter(face: HoleMeasure, leaves: number): number {
  const upright = face.startSide + face.endSide
  return upright * leaves + face.headLength + face.bottomLength
}

function glassOf(
  view: WallView,
  hole: HoleView,
  layout: OpeningLayout,
): { readonly area: Area; readonly perimeter: number } {
  const { opening } = hole.placed
  if (opening.slab?.kind !== 'glazed') return { area: zeroArea, perimeter: 0 }
  const frames = sashFrames(opening, layout).map((frame) => measureSash(frame, hole.hole.head, view.ceiling))
  return {
    area: areaFromSquareUnits(frames.reduce((sum, frame) => sum + frame.daylightArea, 0)),
    perimeter: frames.reduce((sum, frame) => sum + frame.glassPerimeter, 0),
  }
}
