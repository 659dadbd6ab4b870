import type { Wall } from '../../../core/project/walls.ts'
import { formatLength, type LengthUnitSystem } from '../../../core/units/length.ts'
import type { DrawingColors } from '../drawing-colors.ts'
import { type ScreenPoint, screenBetween, screenDistance, screenTurn } from '../screen-point.ts'
import { toScreen, type View } from '../view.ts'
import { letter, turned } from './lettering.ts'
import { type Pen, strokeLines } from './pen.ts'

/** A wall shorter than this on the screen, in pixels, has no room for its length. */
export const leastDimension = 34

/** A dimension line inside the room along a wall, with ticks across its ends. */
export function drawWallDimension(
  pen: Pen,
  wall: Wall,
  view: View,
  colors: DrawingColors,
  system: LengthUnitSystem,
): void {
  const { start, end, middle, length, rotation } = dimensionPlace(wall, view)
  if (length < leastDimension) return
  strokeLines(pen, [[start, end]], { color: colors.lineStrong, width: 1 })
  for (const { left, top } of [start, end]) {
    const tick = [
      { left: left - 3, top: top + 3 },
      { left: left + 3, top: top - 3 },
    ]
    strokeLines(pen, [tick], { color: colors.darkSoft, width: 1.25 })
  }
  const text = formatLength(Math.round(wall.length), system)
  turned(pen, middle, rotation, () =>
    letter(pen, { text, at: { left: 0, top: -7.5 }, face: colors.face, size: 11, color: colors.dark }),
  )
}

/** Where a wall's dimension stands on the screen, 16 pixels inside the room, readable from below or the right. */
export function dimensionPlace(wall: Wall, view: View) {
  const [a, b] = [toScreen(view, wall.start), toScreen(view, wall.end)]
  const length = screenDistance(a, b)
  const off = length === 0 ? 0 : ((wall.inside === 'right' ? 1 : -1) * 16) / length
  const inside = (at: ScreenPoint): ScreenPoint => ({
    left: at.left - (b.top - a.top) * off,
    top: at.top + (b.left - a.left) * off,
  })
  const [start, end] = [inside(a), inside(b)]
  const turn = screenTurn(a, b)
  const rotation = turn > 90 ? turn - 180 : turn <= -90 ? turn + 180 : turn
  return { start, end, middle: screenBetween(start, end, 0.5), length, rotation }
}
