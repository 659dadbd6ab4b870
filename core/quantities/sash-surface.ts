import {
  type OpeningLayout,
  openingLayout,
  type SashFrame,
  sashFrames,
  sideFrames,
} from '../project/opening-layout.ts'
import { openingNoun } from '../project/sketch-words.ts'
import { areaFromSquareUnits, areaFromUnits } from '../units/area.ts'
import { equivalentArea, equivalentSource, sashCoefficient } from './equivalents.ts'
import type { SeenOpening } from './room-survey.ts'
import { measureSash } from './sash-measure.ts'
import { areaLine, type SurfaceDraft, type SurfaceFace } from './surface-draft.ts'
import type { HoleView } from './wall-view.ts'

/** One face of every sash, transom and sidelight of an opening: the frame less its daylight is the wood. */
export function sashSurface(
  { survey, view, hole }: SeenOpening,
  face: SurfaceFace,
  reach: number,
): SurfaceDraft {
  const { opening } = hole.placed
  const { words } = survey
  const { marks } = hole
  const layout = openingLayout(opening, hole.placed.place)
  const frames = framesOf(hole, layout)
  const measures = frames.map((frame) => measureSash(frame, hole.hole.head, view.ceiling))
  const grossArea = areaFromSquareUnits(measures.reduce((sum, each) => sum + each.wholeArea, 0))
  const daylight = areaFromSquareUnits(measures.reduce((sum, each) => sum + each.daylightArea, 0))
  const glassPerimeter = measures.reduce((sum, each) => sum + each.glassPerimeter, 0)
  const equivalent = equivalentArea(grossArea, sashCoefficient)
  return {
    face,
    reach,
    grossArea,
    deductedArea: areaFromUnits(Math.min(grossArea, daylight)),
    equivalentArea: equivalent,
    count: frames.length,
    glassPerimeter,
    edges: [
      {
        neighbour: marks.jamb === undefined ? (marks.casing ?? null) : marks.jamb,
        length: rimLength(hole, frames),
        along: 'jamb',
      },
    ],
    derivation: () => [
      areaLine('gross', `sash of the ${openingNoun(opening)}, ${frameText(frames)}`, grossArea, opening.id),
      areaLine(
        'deduction',
        `glass; its edge is ${words.length(Math.round(glassPerimeter))} long`,
        daylight,
        opening.id,
      ),
      areaLine(
        'note',
        `equivalent: flat area x ${sashCoefficient} for glazed work (${equivalentSource})`,
        equivalent,
        opening.id,
      ),
    ],
  }
}

/** A door's own glazing is measured with the door. */
function framesOf(hole: HoleView, layout: OpeningLayout): readonly SashFrame[] {
  const { opening } = hole.placed
  const main = opening.slab === null ? sashFrames(opening, layout) : []
  return [...main, ...sideFrames(opening, layout)]
}

/** Around the whole hole where sash fill it; around each light where a door stands between them. */
function rimLength(hole: HoleView, frames: readonly SashFrame[]): number {
  const { measure, placed } = hole
  if (placed.opening.sash !== null && placed.opening.slab === null) {
    return measure.startSide + measure.endSide + measure.headLength + measure.bottomLength
  }
  return frames.reduce((sum, { frame }) => sum + 2 * (frame.to - frame.from + frame.top - frame.bottom), 0)
}

function frameText(frames: readonly SashFrame[]): string {
  const counts = new Map<string, number>()
  for (const { lightsAcross, lightsDown } of frames) {
    const text = lightsAcross * lightsDown === 1 ? 'one light' : `${lightsAcross} x ${lightsDown} lights`
    counts.set(text, (counts.get(text) ?? 0) + 1)
  }
  return [...counts].map(([text, count]) => `${count} of ${text}`).join(', ')
}
