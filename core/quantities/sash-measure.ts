import { levelOf, lowerLine, lowestBetween, raisedLine } from '../geometry/band.ts'
import type { HeightPoint } from '../geometry/height-line.ts'
import { type Head, measureHole } from '../geometry/hole.ts'
import { type Light, lightCells, lightSize, type SashFrame } from '../project/opening-layout.ts'

/** One face of a sash: wood, and the edge along which the brush follows glass. */
interface SashMeasure {
  /** Square length units. */
  readonly wholeArea: number
  readonly daylightArea: number
  /** Length units: around every light. */
  readonly glassPerimeter: number
}

/** `head` and `ceiling` bound the opening the frame stands in: a frame under an arch or a slope is cut by it. */
export function measureSash(frame: SashFrame, head: Head, ceiling: readonly HeightPoint[]): SashMeasure {
  const cut = head.kind === 'arc' || isCut(frame.frame, ceiling)
  return cut ? measureCut(frame, head, ceiling) : measureSquare(frame)
}

function isCut(frame: Light, ceiling: readonly HeightPoint[]): boolean {
  return lowestBetween(ceiling, frame.from, frame.to) < frame.top
}

function measureSquare(frame: SashFrame): SashMeasure {
  const { from, to, bottom, top } = frame.frame
  const { width, height } = lightSize(frame)
  const count = frame.lightsAcross * frame.lightsDown
  const seen = width > 0 && height > 0
  return {
    wholeArea: (to - from) * (top - bottom),
    daylightArea: seen ? width * height * count : 0,
    glassPerimeter: seen ? 2 * (width + height) * count : 0,
  }
}

function measureCut(frame: SashFrame, head: Head, ceiling: readonly HeightPoint[]): SashMeasure {
  const { members } = frame
  const innerHead = lowered(head, members.topRail)
  const innerCeiling = raisedLine(ceiling, -members.topRail)
  const lights = lightCells(frame).map((cell) => measureLight(cell, innerHead, innerCeiling))
  return {
    wholeArea: measureLight(frame.frame, head, ceiling).area,
    daylightArea: lights.reduce((sum, light) => sum + light.area, 0),
    glassPerimeter: lights.reduce((sum, light) => sum + light.perimeter, 0),
  }
}

/** The curved rail keeps its width square to the curve. */
function lowered(head: Head, rail: number): Head {
  return head.kind === 'level'
    ? { kind: 'level', height: head.height - rail }
    : { ...head, radius: Math.max(1, head.radius - rail) }
}

function measureLight(
  cell: Light,
  head: Head,
  ceiling: readonly HeightPoint[],
): { readonly area: number; readonly perimeter: number } {
  if (cell.to <= cell.from || cell.top <= cell.bottom) return { area: 0, perimeter: 0 }
  const floor = [{ at: cell.from, height: cell.bottom }]
  const hole = { from: cell.from, to: cell.to, bottom: cell.bottom, head }
  const measure = measureHole(hole, floor, cappedAt(ceiling, cell))
  return {
    area: measure.area,
    perimeter: measure.startSide + measure.endSide + measure.headLength + measure.bottomLength,
  }
}

/** The slope over a light, or the light's own upper edge where that is lower. */
function cappedAt(ceiling: readonly HeightPoint[], cell: Light): readonly HeightPoint[] {
  const level = levelOf(ceiling)
  if (level !== null || lowestBetween(ceiling, cell.from, cell.to) >= cell.top) {
    return [{ at: cell.from, height: Math.min(level ?? cell.top, cell.top) }]
  }
  return lowerLine(ceiling, [{ at: cell.from, height: cell.top }], cell.from, cell.to)
}
