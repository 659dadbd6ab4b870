import { type Point, pointBetween } from '../../../core/geometry/point.ts'
import { polygonArea, polygonBounds } from '../../../core/geometry/polygon.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import { areaFromSquareUnits, formatArea } from '../../../core/units/area.ts'
import { toScreen } from '../view.ts'
import { cutShort, letter, turned, widthIn, wrapped } from './lettering.ts'
import type { Pen } from './pen.ts'
import type { StoreyLook } from './storey-look.ts'

/** Name and floor area, over everything that is drawn in the room; up the sheet where the room is narrow. */
export function drawTitle(pen: Pen, room: Room, { view, colors, system, selected }: StoreyLook): void {
  const bounds = polygonBounds(room.corners)
  const across = (bounds.max.x - bounds.min.x) * view.scale
  const down = (bounds.max.y - bounds.min.y) * view.scale
  const isTurned = across < 90 && down > across * 1.5
  const [wide, high] = isTurned ? [down, across] : [across, down]
  if (wide < 38 || high < 16) return
  const isSelected = selected.has(room.id)
  const size = wide < 60 ? 9 : wide < 90 ? 11 : 14
  const name = { face: colors.faceDrawn, size, color: colors.dark }
  const rim = isSelected ? colors.actSoft : colors.paperRaised
  const lines = nameLines(pen, room.name, name, Math.max(wide - 12, 40), high)
  const first = high > 60 ? -2 - (lines.length - 0.5) * size : 0
  const place = toScreen(view, labelPoint(room.corners, pointBetween(bounds.min, bounds.max, 0.5)))
  turned(pen, place, isTurned ? -90 : 0, () => {
    lines.forEach((text, index) => {
      letter(pen, { ...name, rim, text, at: { left: 0, top: first + index * size } })
    })
    if (wide <= 90 || high <= (isSelected ? 100 : 60)) return
    const text = formatArea(areaFromSquareUnits(polygonArea(room.corners)), system)
    const at = { left: 0, top: 8.5 }
    letter(pen, { text, at, rim, face: colors.face, size: 11, color: colors.darkSoft })
  })
}

function nameLines(
  pen: Pen,
  name: string,
  font: { readonly face: string; readonly size: number },
  width: number,
  high: number,
): readonly string[] {
  const widthOf = widthIn(pen, font)
  return high > 70 ? wrapped(name, width, widthOf) : [cutShort(name, width, widthOf)]
}

/** The middle of the widest level stretch through the room, so that the name of an L stands inside it. */
function labelPoint(corners: readonly Point[], middle: Point): Point {
  const crossings = corners
    .flatMap((start, index) => {
      const end = corners.at((index + 1) % corners.length) ?? start
      if (start.y > middle.y === end.y > middle.y) return []
      return [start.x + ((middle.y - start.y) / (end.y - start.y)) * (end.x - start.x)]
    })
    .sort((a, b) => a - b)
  let best: Point = middle
  let width = -1
  crossings.forEach((to, index) => {
    // Every other crossing leaves the room again, and ends a stretch inside it.
    const from = index % 2 === 1 ? (crossings[index - 1] ?? to) : to
    if (index % 2 === 0 || to - from <= width) return
    width = to - from
    best = { x: (from + to) / 2, y: middle.y }
  })
  return best
}
