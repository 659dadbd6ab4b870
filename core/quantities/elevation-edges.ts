import { lineBetween } from '../geometry/band.ts'
import { type HeightPoint, heightAt } from '../geometry/height-line.ts'
import { headHeightAt } from '../geometry/hole.ts'
import { type Interval, intervalsLeft } from '../geometry/interval.ts'
import { present } from '../lists/lists.ts'
import { openingNoun, trimNoun, wallName } from '../project/sketch-words.ts'
import type { FinishMark } from './finish-marks.ts'
import { casedBelow, hasStool, stoolLength } from './opening-outline.ts'
import { holesAtCeiling, topStretches, zonesAtRail } from './room-edges.ts'
import type { RoomSurvey } from './room-survey.ts'
import type { BandView, HoleView, WallView, ZoneView } from './wall-view.ts'

/** A stretch of a wall's edge to draw over its elevation: a broken line, and what the brush does there. */
export interface DrawnEdge {
  readonly kind: 'cutIn' | 'mask'
  /** The wall surface whose edge it is. */
  readonly key: string
  /** What is met: `ceiling`, `door "pantry"`. */
  readonly along: string
  readonly line: readonly HeightPoint[]
}

interface PlainEdge {
  readonly zone: ZoneView
  readonly neighbour: FinishMark
  readonly along: string
  readonly line: readonly HeightPoint[]
}

/** Edges of the wall's zones that are cut in or masked; those between surfaces of one finish are left out. */
export function drawnEdges(survey: RoomSurvey, index: number): readonly DrawnEdge[] {
  const view = present(survey.views[index])
  return plainEdges(survey, view, index).flatMap(({ zone, neighbour, along, line }): readonly DrawnEdge[] => {
    if (zone.mark === null || neighbour === zone.mark) return []
    return [{ kind: neighbour === null ? 'mask' : 'cutIn', key: zone.key, along, line }]
  })
}

function plainEdges(survey: RoomSurvey, view: WallView, index: number): readonly PlainEdge[] {
  return [
    ...topEdges(survey, view),
    ...bottomEdges(survey, view),
    ...railEdges(survey, view),
    ...view.holes.flatMap((hole) => openingEdges(view, hole)),
    ...cornerEdges(survey, view, index),
  ]
}

function bandMark(survey: RoomSurvey, band: BandView): FinishMark {
  const { room } = survey.parts
  return survey.rules.markOf({ kind: 'trim', roomId: room.id, trimRunId: band.run.id }, room.id, 'trim')
}

function bothWithin(one: readonly Interval[], other: readonly Interval[]): readonly Interval[] {
  return one.flatMap((a) =>
    other.flatMap((b) => {
      const both = { from: Math.max(a.from, b.from), to: Math.min(a.to, b.to) }
      return both.from < both.to ? [both] : []
    }),
  )
}

function topEdges(survey: RoomSurvey, view: WallView): readonly PlainEdge[] {
  const { room } = survey.parts
  const crown = view.bands.find((band) => band.run.kind === 'crown')
  const crowned = crown?.stretches ?? []
  const bare = intervalsLeft({ from: 0, to: view.wall.length }, [...crowned, ...holesAtCeiling(view)])
  const ceiling =
    room.above === 'open'
      ? undefined
      : survey.rules.markOf({ kind: 'ceiling', roomId: room.id }, room.id, 'ceiling')
  return view.zones.flatMap((zone, index) => {
    const own = topStretches(view, index)
    const along = (
      stretches: readonly Interval[],
      neighbour: FinishMark,
      name: string,
      line: readonly HeightPoint[],
    ) =>
      bothWithin(stretches, own).map((each) => ({
        zone,
        neighbour,
        along: name,
        line: lineBetween(line, each),
      }))
    return [
      ...(crown ? along(crowned, bandMark(survey, crown), 'crown', crown.lower) : []),
      ...(ceiling === undefined ? [] : along(bare, ceiling, 'ceiling', view.ceiling)),
    ]
  })
}

function bottomEdges(survey: RoomSurvey, view: WallView): readonly PlainEdge[] {
  const zone = present(view.zones[0])
  const base = view.bands.find((band) => band.run.kind === 'baseboard')
  const onFloor = view.holes.filter((hole) => hole.onFloor).map((hole) => hole.outer)
  const bare = intervalsLeft({ from: 0, to: view.wall.length }, [...(base?.stretches ?? []), ...onFloor])
  return [
    ...(base?.stretches ?? []).map((each) => ({
      zone,
      neighbour: base ? bandMark(survey, base) : null,
      along: 'baseboard',
      line: lineBetween(base?.upper ?? view.floor, each),
    })),
    ...bare.map((each) => ({
      zone,
      neighbour: survey.floorMark,
      along: 'floor',
      line: lineBetween(view.floor, each),
    })),
  ]
}

function railEdges(survey: RoomSurvey, view: WallView): readonly PlainEdge[] {
  const rails = view.bands.filter((band) => band.run.kind !== 'baseboard' && band.run.kind !== 'crown')
  return rails.flatMap((band) => {
    const [below, above] = zonesAtRail(view, band)
    const neighbour = bandMark(survey, band)
    const along = trimNoun(band.run)
    return band.stretches.flatMap((each) => [
      { zone: below, neighbour, along, line: lineBetween(band.lower, each) },
      { zone: above, neighbour, along, line: lineBetween(band.upper, each) },
    ])
  })
}

/** The outer edge of the casing, or the hole's own where there is none, cut where the wall divides. */
function openingEdges(view: WallView, hole: HoleView): readonly PlainEdge[] {
  const { opening } = hole.placed
  const rim = outlinePieces(hole).flatMap((line) =>
    cutByZones(view, line).map((piece) => ({
      ...piece,
      neighbour: hole.marks.rim,
      along: openingNoun(opening),
    })),
  )
  const { stool } = hole.marks
  if (stool === undefined) return rim
  const around = stoolPieces(hole).flatMap((line) =>
    cutByZones(view, line).map((piece) => ({ ...piece, neighbour: stool, along: 'stool' })),
  )
  return [...rim, ...around]
}

type Line = readonly HeightPoint[]

const point = (at: number, height: number): HeightPoint => ({ at, height })

function outlinePieces(hole: HoleView): readonly Line[] {
  const { outer, placed, measure, casing } = hole
  const width = casing?.width ?? 0
  const bottom = hasStool(hole) ? placed.place.bottom : outer.bottom
  const springs = headLine(hole)
  const first = present(springs[0])
  const last = present(springs.at(-1))
  const below = casedBelow(hole) && measure.bottomLength > 0
  return [
    [point(outer.from, bottom), first],
    springs,
    [last, point(outer.to, bottom)],
    ...(below
      ? [[point(placed.place.from - width, outer.bottom), point(placed.place.to + width, outer.bottom)]]
      : []),
  ]
}

const arcSteps = 32

/** The upper edge: level, or the arc moved out by the casing's width. */
function headLine({ hole, outer, casing }: HoleView): Line {
  const { head } = hole
  if (head.kind === 'level') return [point(outer.from, outer.top), point(outer.to, outer.top)]
  const wide = { ...head, radius: head.radius + (casing?.width ?? 0) }
  return Array.from({ length: arcSteps + 1 }, (_, step) => {
    const middle = (outer.from + outer.to) / 2
    const at = middle - ((outer.to - outer.from) / 2) * Math.cos((step / arcSteps) * Math.PI)
    return point(at, headHeightAt(wide, at))
  })
}

function stoolPieces(hole: HoleView): readonly Line[] {
  const { place } = hole.placed
  const horn = (stoolLength(hole) - hole.measure.bottomLength) / 2
  const [from, to] = [place.from - horn, place.to + horn]
  const { bottom } = hole.outer
  return [
    [point(from, place.bottom), point(from, bottom)],
    [point(from, bottom), point(to, bottom)],
    [point(to, bottom), point(to, place.bottom)],
  ]
}

/** Upright and level pieces go to the zone they lie in, cut where the wall divides. */
function cutByZones(view: WallView, line: Line): readonly { readonly zone: ZoneView; readonly line: Line }[] {
  const [lower, upper] = view.zones
  if (lower === undefined) return []
  if (upper === undefined) return [{ zone: lower, line }]
  const [a, b] = [present(line[0]), present(line.at(-1))]
  const split = heightAt(lower.upper, (a.at + b.at) / 2)
  const zoneOf = (height: number) => (height < split ? lower : upper)
  if (line.length > 2 || (a.height - split) * (b.height - split) >= 0) {
    return [{ zone: zoneOf((a.height + b.height) / 2), line }]
  }
  const cut = point(a.at + ((split - a.height) / (b.height - a.height)) * (b.at - a.at), split)
  return [
    { zone: zoneOf(a.height), line: [a, cut] },
    { zone: zoneOf(b.height), line: [cut, b] },
  ]
}

/** Both ends of the wall, where the next wall has another finish. */
function cornerEdges(survey: RoomSurvey, view: WallView, index: number): readonly PlainEdge[] {
  const { views } = survey
  const before = present(views[(index + views.length - 1) % views.length])
  const after = present(views[(index + 1) % views.length])
  return [...cornerWith(view, 0, before, before.wall.length), ...cornerWith(view, view.wall.length, after, 0)]
}

function cornerWith(view: WallView, at: number, next: WallView, nextAt: number): readonly PlainEdge[] {
  return view.zones.flatMap((zone) =>
    next.zones.flatMap((other): readonly PlainEdge[] => {
      const from = Math.max(heightAt(zone.lower, at), heightAt(other.lower, nextAt))
      const to = Math.min(heightAt(zone.upper, at), heightAt(other.upper, nextAt))
      if (from >= to) return []
      return [
        { zone, neighbour: other.mark, along: wallName(next.wall), line: [point(at, from), point(at, to)] },
      ]
    }),
  )
}
