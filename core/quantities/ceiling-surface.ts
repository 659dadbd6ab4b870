import { largestGap, lineLength } from '../geometry/band.ts'
import type { HeightPoint } from '../geometry/height-line.ts'
import { type Polygon, polygonArea, polygonBand, polygonBounds } from '../geometry/polygon.ts'
import { present } from '../lists/lists.ts'
import { ceilingLine } from '../project/heights.ts'
import type { CeilingOpening } from '../project/sketch-records.ts'
import { type Area, areaFromSquareUnits, areaFromUnits, sumAreas } from '../units/area.ts'
import { lengthFromUnits } from '../units/length.ts'
import type { Edge } from './finish-marks.ts'
import type { RoomSurvey } from './room-survey.ts'
import { areaLine, faceOf, type SurfaceDraft } from './surface-draft.ts'
import type { DerivationLine } from './takeoff-types.ts'

/** The ceiling with its true sloped area; none where the room is open above. */
export function ceilingSurfaces(survey: RoomSurvey): readonly SurfaceDraft[] {
  const { room, ceilingOpenings } = survey.parts
  if (room.above === 'open') return []
  const gross = facetLines(survey, room.corners, 'gross', null)
  const deductions = ceilingOpenings.flatMap((hole) =>
    facetLines(survey, holeOutline(hole), 'deduction', hole),
  )
  const additions = ceilingOpenings.flatMap((hole) => revealLines(survey, hole))
  const grossArea = areaOf(gross)
  const draft: SurfaceDraft = {
    face: faceOf({ kind: 'ceiling', roomId: room.id }, room.id, 'ceiling', survey.rules.markOf),
    grossArea,
    deductedArea: areaFromUnits(Math.min(grossArea, areaOf(deductions))),
    addedArea: areaOf(additions),
    edges: [...survey.edges.ceiling, ...ceilingOpenings.map((hole) => holeEdge(survey, hole))],
    reach: Math.max(...survey.views.map((view) => largestGap(view.floor, view.ceiling, 0, view.wall.length))),
    derivation: () => [...gross, ...deductions, ...additions],
  }
  return [draft]
}

function areaOf(lines: readonly DerivationLine[]): Area {
  return sumAreas(lines.flatMap(({ area }) => area ?? []))
}

/** One line per plane facet that a plan outline lies under: plan area x the true length of the slope over its run. */
function facetLines(
  survey: RoomSurvey,
  outline: Polygon,
  kind: 'gross' | 'deduction',
  hole: CeilingOpening | null,
): readonly DerivationLine[] {
  const line = ceilingLine(survey.parts.room)
  const what = hole === null ? '' : `${hole.kind} `
  const facets = facetsOf(
    line.points,
    polygonBounds(outline).min[line.axis],
    polygonBounds(outline).max[line.axis],
  )
  const whole = facets.length === 1
  return facets.flatMap(({ from, to, slope }) => {
    const plan = polygonArea(whole ? outline : polygonBand(outline, line.axis, from, to))
    const area = areaFromSquareUnits(plan * Math.sqrt(1 + slope * slope))
    if (area === 0) return []
    const text = `${what}${survey.words.area(areaFromSquareUnits(plan))} on plan${slopeText(slope)}`
    return [areaLine(kind, text, area, hole?.id ?? survey.parts.room.id)]
  })
}

function slopeText(slope: number): string {
  return slope === 0 ? '' : `, sloping ${(Math.abs(slope) * 12).toFixed(2)} in 12`
}

interface Facet {
  readonly from: number
  readonly to: number
  /** Rise over run. */
  readonly slope: number
}

function facetsOf(points: readonly HeightPoint[], least: number, most: number): readonly Facet[] {
  const inner = points.filter((point) => point.at > least && point.at < most).map((point) => point.at)
  const places = [least, ...inner, most]
  return places.slice(1).map((to, index) => {
    const from = present(places[index])
    return { from, to, slope: slopeAt(points, (from + to) / 2) }
  })
}

function slopeAt(points: readonly HeightPoint[], at: number): number {
  for (let index = 1; index < points.length; index++) {
    const before = present(points[index - 1])
    const after = present(points[index])
    if (at > before.at && at < after.at) return (after.height - before.height) / (after.at - before.at)
  }
  return 0
}

function holeOutline({ x, y, width, depth }: CeilingOpening): Polygon {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + depth },
    { x, y: y + depth },
  ]
}

/** Around the opening along the slope. */
function holePerimeter(survey: RoomSurvey, hole: CeilingOpening): number {
  const line = ceilingLine(survey.parts.room)
  const [start, run, across] =
    line.axis === 'x' ? [hole.x, hole.width, hole.depth] : [hole.y, hole.depth, hole.width]
  return 2 * (lineLength(line.points, start, start + run) + across)
}

function revealLines(survey: RoomSurvey, hole: CeilingOpening): readonly DerivationLine[] {
  if (hole.revealDepth === 0) return []
  const around = lengthFromUnits(holePerimeter(survey, hole))
  const area = areaFromSquareUnits(around * hole.revealDepth)
  const text = `reveal of the ${hole.kind} ${survey.words.length(around)} x ${survey.words.length(hole.revealDepth)}`
  return [areaLine('addition', text, area, hole.id)]
}

/** The paint ends at the opening's frame, at the near or the far end of its reveal. */
function holeEdge(survey: RoomSurvey, hole: CeilingOpening): Edge {
  return { neighbour: null, length: holePerimeter(survey, hole), along: hole.kind }
}
