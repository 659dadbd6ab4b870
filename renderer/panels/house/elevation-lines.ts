import { type HeightPoint, heightAt } from '../../../core/geometry/height-line.ts'
import type { Job } from '../../../core/project/job.ts'
import { roomParts } from '../../../core/project/room-parts.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { type FinishMark, finishMarks, type MarkOf } from '../../../core/quantities/finish-marks.ts'
import { rimMark } from '../../../core/quantities/opening-parts.ts'
import { type BandView, viewWalls, type WallView, type ZoneView } from '../../../core/quantities/wall-view.ts'

/** A line on a wall: distance from the wall's start and height above the room's floor datum, length units. */
export type WallLine = readonly HeightPoint[]

export function wallViewsOf(job: Job, roomId: RoomId): readonly WallView[] {
  const parts = roomParts(job, roomId)
  return parts === null ? [] : viewWalls(parts, finishMarks(job.finishes))
}

/** The part of a broken line between two places, with its bends. */
export function lineBetween(line: WallLine, from: number, to: number): WallLine {
  const bends = line.filter((point) => point.at > from && point.at < to)
  return [{ at: from, height: heightAt(line, from) }, ...bends, { at: to, height: heightAt(line, to) }]
}

/** The outline of what lies between two lines. */
export function bandOutline(lower: WallLine, upper: WallLine, from: number, to: number): WallLine {
  return [...lineBetween(lower, from, to), ...[...lineBetween(upper, from, to)].reverse()]
}

/** Every edge of the wall's zones along which another finish is met and a steady hand is needed. */
export function cutInLines(job: Job, views: readonly WallView[], index: number): readonly WallLine[] {
  const view = views[index]
  if (view === undefined) return []
  const markOf = finishMarks(job.finishes)
  const next = views[(index + 1) % views.length]
  const before = views.at(index - 1)
  return view.zones
    .filter((zone) => zone.mark !== null)
    .flatMap((zone) => [
      ...bandLines(view, zone, markOf),
      ...ceilingLines(view, zone, markOf),
      ...openingLines(view, zone, markOf),
      ...cornerLines(zone, view.wall.length, next?.zones ?? [], 0),
      ...cornerLines(zone, 0, before?.zones ?? [], before?.wall.length ?? 0),
    ])
}

function differs(zone: ZoneView, other: FinishMark | undefined): boolean {
  return other !== undefined && other !== null && other !== zone.mark
}

function bandLines(view: WallView, zone: ZoneView, markOf: MarkOf): readonly WallLine[] {
  const { room } = view
  return view.bands
    .filter((band) => {
      const trim = { kind: 'trim' as const, roomId: room.id, trimRunId: band.run.id }
      return differs(zone, markOf(trim, room.id, 'trim'))
    })
    .flatMap((band) => edgesOnZone(view, zone, band))
}

/** A baseboard meets the wall above it, a crown the wall below it, a rail both; the one that divides the wall has a zone on each side. */
function edgesOnZone(view: WallView, zone: ZoneView, band: BandView): readonly WallLine[] {
  const edges =
    band.run === view.divider
      ? [zone === view.zones[0] ? band.lower : band.upper]
      : freeEdges(view, zone, band)
  return edges.flatMap((line) => band.stretches.map(({ from, to }) => lineBetween(line, from, to)))
}

function freeEdges(view: WallView, zone: ZoneView, band: BandView): readonly WallLine[] {
  const middle = view.wall.length / 2
  const edges = [
    ...(band.run.kind === 'baseboard' ? [] : [band.lower]),
    ...(band.run.kind === 'crown' ? [] : [band.upper]),
  ]
  return edges.filter(
    (line) =>
      heightAt(line, middle) >= heightAt(zone.lower, middle) &&
      heightAt(line, middle) <= heightAt(zone.upper, middle),
  )
}

function ceilingLines(view: WallView, zone: ZoneView, markOf: MarkOf): readonly WallLine[] {
  const { room } = view
  const hasCrown = view.bands.some((band) => band.run.kind === 'crown' && band.stretches.length > 0)
  if (hasCrown || room.above === 'open' || zone !== view.zones.at(-1)) return []
  const ceiling = markOf({ kind: 'ceiling', roomId: room.id }, room.id, 'ceiling')
  return differs(zone, ceiling) ? [lineBetween(view.ceiling, 0, view.wall.length)] : []
}

/** Round the casing, or round the hole where there is none, as far as it stands on the zone. */
function openingLines(view: WallView, zone: ZoneView, markOf: MarkOf): readonly WallLine[] {
  return view.holes
    .filter((hole) => differs(zone, rimMark(hole, markOf)))
    .flatMap(({ outer, onFloor }) => {
      const middle = (outer.from + outer.to) / 2
      const bottom = Math.max(outer.bottom, heightAt(zone.lower, middle))
      const top = Math.min(outer.top, heightAt(zone.upper, middle))
      if (bottom >= top) return []
      const sides = [outer.from, outer.to].map((at) => [
        { at, height: bottom },
        { at, height: top },
      ])
      const across = (height: number) => [
        { at: outer.from, height },
        { at: outer.to, height },
      ]
      return [
        ...sides,
        ...(top === outer.top ? [across(top)] : []),
        ...(bottom === outer.bottom && !onFloor ? [across(bottom)] : []),
      ]
    })
}

/** In a corner, where the wall round it has another finish at the same height. */
function cornerLines(
  zone: ZoneView,
  at: number,
  others: readonly ZoneView[],
  otherAt: number,
): readonly WallLine[] {
  return others
    .filter((other) => differs(zone, other.mark))
    .flatMap((other) => {
      const low = Math.max(heightAt(zone.lower, at), heightAt(other.lower, otherAt))
      const high = Math.min(heightAt(zone.upper, at), heightAt(other.upper, otherAt))
      return low < high
        ? [
            [
              { at, height: low },
              { at, height: high },
            ],
          ]
        : []
    })
}
