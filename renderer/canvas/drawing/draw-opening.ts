import { type Point, pointBetween } from '../../../core/geometry/point.ts'
import type { Opening } from '../../../core/project/sketch-records.ts'
import type { openingSides, Wall } from '../../../core/project/walls.ts'
import { type ScreenPoint, screenBetween, screenDistance, screenTurn } from '../screen-point.ts'
import { toScreen, type View } from '../view.ts'
import { fillOutline, type Pen, strokeLines, strokeQuarter } from './pen.ts'
import type { StoreyLook } from './storey-look.ts'

/** The four ends of an opening's jambs: along the near face, then back along the far one. */
type JambEnds = readonly [ScreenPoint, ScreenPoint, ScreenPoint, ScreenPoint]

/** One opening on the plan: the wall's solid cut away between its jambs, and what closes it. `thickness`: of a wall where nothing is known behind it, plan units. */
export function drawOpening(
  pen: Pen,
  opening: Opening,
  { near, far }: ReturnType<typeof openingSides>,
  thickness: number,
  { view, colors, storeyId, selected, lit }: StoreyLook,
): void {
  if (near === null || near.room.storeyId !== storeyId || near.wall.length === 0) return
  const { from, to } = near.place
  const depth = far === null ? thickness : gapBetween(near.wall, far.wall)
  const ends = jambEnds(near.wall, from, to, depth, view)
  const [a, b, c, d] = ends
  const isSelected = selected.has(opening.id)
  const color = isSelected ? colors.act : colors.dark
  const width = isSelected ? 2.25 : 1.25
  const within = lit.has(opening.id) ? colors.waitSoft : isSelected ? colors.actSoft : colors.paper
  fillOutline(pen, ends, within)
  const jambs = [
    [a, d],
    [b, c],
  ]
  const faces = [
    [a, b],
    [d, c],
  ]
  const { kind } = opening
  strokeLines(pen, kind === 'window' ? [...jambs, ...faces] : jambs, { color, width })
  if (kind === 'window') {
    const middle = [screenBetween(a, d, 0.5), screenBetween(b, c, 0.5)]
    strokeLines(pen, [middle], { color, width: 1 })
  }
  if (kind === 'casedOpening') strokeLines(pen, [[a, b]], { color, width: 1, dash: [4, 4] })
  if (kind === 'fireplace' || kind === 'builtIn' || kind === 'other')
    strokeLines(pen, [[a, c]], { color, width: 1 })
  if (opening.slab !== null) drawLeaves(pen, opening.slab, ends, near.wall, color)
}

function jambEnds(wall: Wall, from: number, to: number, depth: number, view: View): JambEnds {
  const outward = outwardOf(wall)
  const place = (at: number, off: number) => {
    const { x, y } = pointBetween(wall.start, wall.end, at / wall.length)
    return toScreen(view, { x: x + outward.x * off, y: y + outward.y * off })
  }
  return [place(from, 0), place(to, 0), place(to, depth), place(from, depth)]
}

/** Door leaves standing open a quarter turn into the side they open towards, with the arc they swing. */
function drawLeaves(
  pen: Pen,
  slab: NonNullable<Opening['slab']>,
  [a, b, c, d]: JambEnds,
  wall: Wall,
  color: string,
): void {
  const opensNear = slab.edgesShow === 'near'
  const [hinge, latch] = opensNear ? [a, b] : [d, c]
  const width = screenDistance(hinge, latch)
  if (width < 6) return
  const along = screenTurn(hinge, latch)
  const turn = (wall.inside === 'right') === opensNear ? 90 : -90
  const radius = slab.leaves < 2 ? width : width / 2
  drawLeaf(pen, hinge, along, turn, radius, color)
  if (slab.leaves >= 2) drawLeaf(pen, latch, along + 180, -turn, radius, color)
}

function drawLeaf(
  pen: Pen,
  hinge: ScreenPoint,
  along: number,
  turn: number,
  radius: number,
  color: string,
): void {
  const open = ((along + turn) * Math.PI) / 180
  const tip = { left: hinge.left + Math.cos(open) * radius, top: hinge.top + Math.sin(open) * radius }
  strokeLines(pen, [[hinge, tip]], { color, width: 1.75 })
  strokeQuarter(pen, hinge, radius, turn > 0 ? along : along - 90, { color, width: 0.75, dash: [3, 3] })
}

/** Unit vector from the room out through the wall. */
function outwardOf(wall: Wall): Point {
  const [dx, dy] = [(wall.end.x - wall.start.x) / wall.length, (wall.end.y - wall.start.y) / wall.length]
  return wall.inside === 'right' ? { x: dy, y: -dx } : { x: -dy, y: dx }
}

function gapBetween(near: Wall, far: Wall): number {
  const outward = outwardOf(near)
  return Math.max(0, (far.start.x - near.start.x) * outward.x + (far.start.y - near.start.y) * outward.y)
}
