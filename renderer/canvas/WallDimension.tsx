import { Line, Text } from 'react-konva'
import type { Wall } from '../../core/project/walls.ts'
import { formatLength, type LengthUnitSystem } from '../../core/units/length.ts'
import type { DrawingColors } from './drawing-colors.ts'
import { linePoints, type ScreenPoint, screenBetween, screenDistance, screenTurn } from './screen-point.ts'
import { toScreen, type View } from './view.ts'

/** A dimension line inside the room along a wall, with ticks across its ends. */
export function WallDimension(props: {
  readonly wall: Wall
  readonly view: View
  readonly colors: DrawingColors
  readonly system: LengthUnitSystem
}) {
  const { wall, view, colors, system } = props
  const place = dimensionPlace(wall, view)
  if (place.length < 34) return null
  const text = formatLength(Math.round(wall.length), system)
  const { start, end } = place
  return (
    <>
      <Line points={linePoints([start, end])} stroke={colors.lineStrong} strokeWidth={1} />
      {[start, end].map((tick, index) => (
        <Line
          // biome-ignore lint/suspicious/noArrayIndexKey: two fixed ends
          key={index}
          points={[tick.left - 3, tick.top + 3, tick.left + 3, tick.top - 3]}
          stroke={colors.darkSoft}
          strokeWidth={1.25}
        />
      ))}
      <Text
        text={text}
        x={place.middle.left}
        y={place.middle.top}
        offsetX={40}
        offsetY={13}
        width={80}
        align="center"
        rotation={place.rotation}
        fontFamily={colors.face}
        fontSize={11}
        fill={colors.dark}
      />
    </>
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
  const turned = screenTurn(a, b)
  const rotation = turned > 90 ? turned - 180 : turned <= -90 ? turned + 180 : turned
  return { start, end, middle: screenBetween(start, end, 0.5), length, rotation }
}
