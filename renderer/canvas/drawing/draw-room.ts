import type { Point } from '../../../core/geometry/point.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import { roomWalls } from '../../../core/project/walls.ts'
import type { DrawingColors } from '../drawing-colors.ts'
import type { ScreenPoint } from '../screen-point.ts'
import { toScreen, type View } from '../view.ts'
import { drawSlopes } from './draw-slopes.ts'
import { fillOutline, type Pen, squareAt, strokeLines, strokeOutline } from './pen.ts'
import type { StoreyLook } from './storey-look.ts'
import { drawWallDimension } from './wall-dimension.ts'

/** Where the rooms of the storey below stand: drawn over this storey's floors, so that walls can be set on walls. */
export function drawRoomBelow(pen: Pen, room: Room, view: View, colors: DrawingColors): void {
  strokeOutline(pen, onScreen(view, room.corners), { color: colors.lineStrong, width: 1, dash: [2, 5] })
}

/** The solid of the walls round a room, drawn under all rooms: as thick as `thickness` (plan units) on the outside. */
export function drawSolid(pen: Pen, room: Room, view: View, thickness: number, color: string): void {
  pen.miterLimit = 3
  strokeOutline(pen, onScreen(view, room.corners), { color, width: 2 * thickness * view.scale })
  pen.miterLimit = 10
}

/** The floor inside the walls; what is selected and what is lit show in it. */
export function drawFloor(pen: Pen, room: Room, { view, colors, selected, lit }: StoreyLook): void {
  const color = lit.has(room.id)
    ? colors.waitSoft
    : selected.has(room.id)
      ? colors.actSoft
      : colors.paperRaised
  fillOutline(pen, onScreen(view, room.corners), color)
}

/** The outline with what slopes inside it; of a selected room its lengths and corners too. */
export function drawRoom(pen: Pen, room: Room, look: StoreyLook): void {
  const { view, colors, system, selected } = look
  const isSelected = selected.has(room.id)
  const isRefused = look.refused.has(room.id)
  strokeOutline(pen, onScreen(view, room.corners), {
    color: isRefused ? colors.stop : isSelected ? colors.act : colors.dark,
    width: isSelected ? 2.5 : 1.75,
    ...(isRefused ? { dash: [8, 5] } : {}),
  })
  drawSlopes(pen, room, view, colors, system)
  for (const wall of roomWalls(room)) {
    const line = onScreen(view, [wall.start, wall.end])
    const id = `${room.id}/${wall.id}`
    if (look.lit.has(id)) strokeLines(pen, [line], { color: colors.wait, width: 6 })
    if (selected.has(id)) strokeLines(pen, [line], { color: colors.act, width: 6 })
    if (isSelected) drawWallDimension(pen, wall, view, colors, system)
  }
  if (isSelected) for (const corner of room.corners) drawHandle(pen, toScreen(view, corner), colors)
}

function drawHandle(pen: Pen, at: ScreenPoint, colors: DrawingColors): void {
  const square = squareAt(at, 4)
  fillOutline(pen, square, colors.paperRaised)
  strokeOutline(pen, square, { color: colors.act, width: 1.5 })
}

function onScreen(view: View, points: readonly Point[]): readonly ScreenPoint[] {
  return points.map((point) => toScreen(view, point))
}
