import { areaBetween, largestGap, levelOf, piecePlaces } from '../geometry/band.ts'
import { heightAt } from '../geometry/height-line.ts'
import { measureHole } from '../geometry/hole.ts'
import { openingNoun, wallName } from '../project/sketch-words.ts'
import { type Area, areaFromSquareUnits, areaFromUnits } from '../units/area.ts'
import { lengthFromUnits } from '../units/length.ts'
import type { FigureWords } from './figure-words.ts'
import { deductedShare, type OpeningFace } from './opening-policies.ts'
import type { RoomSurvey } from './room-survey.ts'
import { areaLine, type SurfaceDraft } from './surface-draft.ts'
import type { DerivationLine } from './takeoff-types.ts'
import type { HoleView, WallView, ZoneView } from './wall-view.ts'

/** Every wall of a room, zone by zone: floor line to ceiling line, less its openings. */
export function wallSurfaces(survey: RoomSurvey): readonly SurfaceDraft[] {
  return survey.views.flatMap((view) => view.zones.map((zone) => draftZone(survey, view, zone)))
}

interface Deduction {
  readonly hole: HoleView
  readonly area: Area
  /** What the policy takes off instead. */
  readonly byPolicy: number
}

function draftZone(survey: RoomSurvey, view: WallView, zone: ZoneView): SurfaceDraft {
  const { room, wall } = view
  const grossArea = areaFromSquareUnits(areaBetween(zone.lower, zone.upper, 0, wall.length))
  const deductions = view.holes.flatMap((hole) => deduct(survey, view, zone, hole))
  const exact = deductions.reduce((sum, each) => sum + each.area, 0)
  const byPolicy = deductions.reduce((sum, each) => sum + each.byPolicy, 0)
  const deductedArea = areaFromUnits(Math.min(grossArea, exact))
  const policyArea = areaFromUnits(Math.max(0, grossArea - Math.round(byPolicy)))
  return {
    face: {
      key: zone.key,
      surface: zone.surface,
      roomId: room.id,
      surfaceClass: zone.surfaceClass,
      mark: zone.mark,
    },
    grossArea,
    deductedArea,
    policyArea,
    edges: survey.edges.zones.get(zone) ?? [],
    reach: largestGap(view.floor, zone.upper, 0, wall.length),
    derivation: () => [
      areaLine('gross', grossText(view, zone, survey.words), grossArea, wall.id),
      ...deductions.map((each) => deductionLine(each, survey.words)),
      ...policyLines(policyArea, grossArea - deductedArea),
    ],
  }
}

function deduct(survey: RoomSurvey, view: WallView, zone: ZoneView, hole: HoleView): readonly Deduction[] {
  const within = view.zones.length === 1 ? hole.measure : measureHole(hole.hole, zone.lower, zone.upper)
  const area = areaFromSquareUnits(within.area)
  if (area <= 0) return []
  const { openingPolicy } = survey.rules
  const share =
    openingPolicy === 'exactNet' ? 1 : deductedShare(openingPolicy, faceOf(survey, view, zone, hole))
  return [{ hole, area, byPolicy: area * share }]
}

function faceOf(survey: RoomSurvey, view: WallView, zone: ZoneView, hole: HoleView): OpeningFace {
  const { opening, side } = hole.placed
  const { markOf } = survey.rules
  const other = side === 'near' ? opening.far : opening
  const otherMark =
    other &&
    markOf({ kind: 'wall', roomId: other.roomId, wallId: other.wallId, zone: 'whole' }, other.roomId, 'walls')
  return {
    holeArea: areaFromSquareUnits(hole.measure.area),
    side,
    shared: opening.far !== null,
    sameFinish: otherMark === zone.mark,
    atEdge: touchesEdge(view, hole),
    fillingPainted: (hole.marks.filling ?? null) !== null,
  }
}

function touchesEdge(view: WallView, hole: HoleView): boolean {
  const { from, to, top } = hole.placed.place
  return (
    hole.onFloor ||
    from <= 0 ||
    to >= view.wall.length ||
    top >= Math.min(heightAt(view.ceiling, from), heightAt(view.ceiling, to))
  )
}

/** `12' 0" x 8' 0"`, or the heights at every bend of a wall that rises or falls. */
function grossText(view: WallView, zone: ZoneView, words: FigureWords): string {
  const { wall } = view
  const name = zone.zone === 'whole' ? wallName(wall) : `${wallName(wall)}, ${zone.zone} part`
  const long = words.length(lengthFromUnits(wall.length))
  const lower = levelOf(zone.lower)
  const upper = levelOf(zone.upper)
  if (lower !== null && upper !== null) return `${name} ${long} x ${words.length(upper - lower)}`
  const heights = piecePlaces(zone.lower, zone.upper, 0, wall.length).map((at) => {
    const height = Math.max(0, heightAt(zone.upper, at) - heightAt(zone.lower, at))
    return `${words.length(lengthFromUnits(height))} high at ${words.length(lengthFromUnits(at))}`
  })
  return `${name} ${long} long: ${heights.join(', ')}`
}

function deductionLine({ hole, area }: Deduction, words: FigureWords): DerivationLine {
  const { opening } = hole.placed
  const head =
    opening.head.kind === 'square'
      ? ''
      : opening.head.kind === 'segment'
        ? `, segmental head rising ${words.length(opening.head.rise)}`
        : ', half-round head'
  // The size written is the whole opening's, so that a part of it says its own area: net can be checked by eye.
  const isPart = area < areaFromSquareUnits(hole.measure.area)
  const part = isPart ? `, the part in this zone: ${words.area(area)}` : ''
  const text = `${openingNoun(opening)} ${words.length(opening.width)} x ${words.length(opening.height)}${head}${part}`
  return areaLine('deduction', text, area, opening.id)
}

function policyLines(policyArea: Area, netArea: number): readonly DerivationLine[] {
  if (policyArea === netArea) return []
  return [areaLine('note', "by the job's rule for openings", policyArea, null)]
}
