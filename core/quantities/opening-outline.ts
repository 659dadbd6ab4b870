import { heightAt } from '../geometry/height-line.ts'
import { intervalsShared } from '../geometry/interval.ts'
import { present } from '../lists/lists.ts'
import type { HoleView, WallView } from './wall-view.ts'

/** Sides and head of the hole; length units. */
function innerLength({ measure }: HoleView): number {
  return measure.startSide + measure.endSide + measure.headLength
}

/** A casing runs around all four sides where the hole neither stands on the floor nor has a stool. */
export function casedBelow(hole: HoleView): boolean {
  return !hole.onFloor && !hasStool(hole)
}

/** Stools are on the near side only. */
export function hasStool({ placed }: HoleView): boolean {
  return placed.opening.stool !== null && placed.side === 'near'
}

/** Sides and head, and the sill where nothing else covers it: what is lined by a jamb or a reveal. */
export function liningLength(hole: HoleView): number {
  return innerLength(hole) + (casedBelow(hole) ? hole.measure.bottomLength : 0)
}

/** Centre line of a mitred casing, so that length x width is its true face area; corner blocks fill the same corners. */
export function casingLength(hole: HoleView): number {
  const width = hole.casing?.width ?? 0
  const { mitres, arcTurn, bottomLength } = hole.measure
  const around = innerLength(hole) + width * mitres + (width / 2) * arcTurn
  return casedBelow(hole) ? around + bottomLength + 2 * width : around
}

/** Outer edge of the casing, or of the hole where there is none: where the wall ends. */
function outerLength(hole: HoleView): number {
  const width = hole.casing?.width ?? 0
  const { mitres, arcTurn, bottomLength } = hole.measure
  const around = innerLength(hole) + 2 * width * mitres + width * arcTurn
  return casedBelow(hole) ? around + bottomLength + 4 * width : around
}

/** Horns at each end as wide as the casing; common practice. */
export function stoolLength(hole: HoleView): number {
  return hole.measure.bottomLength + 2 * (hole.casing?.width ?? 0)
}

/** Where stool and apron end against the wall: the apron's lower edge and the ends of both. */
function stoolOutline(hole: HoleView): number {
  const stool = hasStool(hole) ? hole.placed.opening.stool : null
  return stool === null ? 0 : stoolLength(hole) + 2 * (stool.thickness + stool.apron)
}

/** The outer edge shared out to the wall's zones, from the floor up. */
export function outerLengthByZone(view: WallView, hole: HoleView): readonly number[] {
  const total = outerLength(hole)
  const [lower, upper] = view.zones
  if (lower === undefined || upper === undefined) return [total]
  const split = heightAt(lower.upper, (hole.outer.from + hole.outer.to) / 2)
  if (hole.outer.top <= split) return [total, 0]
  const legsBottom = hasStool(hole) ? hole.placed.place.bottom : hole.outer.bottom
  const legs = [hole.outer.from, hole.outer.to].map((at) =>
    intervalsShared(
      { from: legsBottom, to: hole.outer.top },
      { from: heightAt(lower.lower, at), to: heightAt(lower.upper, at) },
    ),
  )
  const below = casedBelow(hole) && hole.outer.bottom < split ? bottomOuter(hole) : 0
  const inLower = Math.min(total, present(legs[0]) + present(legs[1]) + below)
  return [inLower, total - inLower]
}

/** The outline of stool and apron shared out to the wall's zones. */
export function stoolOutlineByZone(view: WallView, hole: HoleView): readonly number[] {
  const total = stoolOutline(hole)
  const lower = view.zones[0]
  if (lower === undefined || view.zones.length === 1) return [total]
  const inLower = hole.outer.bottom < heightAt(lower.upper, (hole.outer.from + hole.outer.to) / 2)
  return inLower ? [total, 0] : [0, total]
}

function bottomOuter(hole: HoleView): number {
  return hole.measure.bottomLength + 2 * (hole.casing?.width ?? 0)
}
