import { memo } from 'react'
import { Group, Text } from 'react-konva'
import { type Point, pointBetween } from '../../core/geometry/point.ts'
import { polygonArea, polygonBounds } from '../../core/geometry/polygon.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { areaFromSquareUnits, formatArea } from '../../core/units/area.ts'
import type { LengthUnitSystem } from '../../core/units/length.ts'
import type { DrawingColors } from './drawing-colors.ts'
import { toScreen, type View } from './view.ts'

/** Name and floor area, over everything that is drawn in the room; up the sheet where the room is narrow. */
export const RoomTitle = memo(function RoomTitle(props: {
  readonly room: Room
  readonly view: View
  readonly colors: DrawingColors
  readonly system: LengthUnitSystem
  readonly isSelected: boolean
}) {
  const { room, view, colors, system, isSelected } = props
  const bounds = polygonBounds(room.corners)
  const place = toScreen(view, labelPoint(room.corners, pointBetween(bounds.min, bounds.max, 0.5)))
  const across = (bounds.max.x - bounds.min.x) * view.scale
  const down = (bounds.max.y - bounds.min.y) * view.scale
  const isTurned = across < 90 && down > across * 1.5
  const [wide, high] = isTurned ? [down, across] : [across, down]
  if (wide < 38 || high < 16) return null
  const width = Math.max(wide - 12, 40)
  const floor = formatArea(areaFromSquareUnits(polygonArea(room.corners)), system)
  const fontSize = wide < 60 ? 9 : wide < 90 ? 11 : 14
  // As on a drawn plan, a line that meets the lettering is broken round it.
  const clear = {
    stroke: isSelected ? colors.actSoft : colors.paperRaised,
    strokeWidth: 5,
    lineJoin: 'round',
    fillAfterStrokeEnabled: true,
  } as const
  // A letter of the drawn face is about half as wide as it is high.
  const lines = high > 70 ? Math.ceil((room.name.length * fontSize * 0.5) / width) : 1
  return (
    <Group x={place.left} y={place.top} rotation={isTurned ? -90 : 0}>
      <Text
        text={room.name}
        x={-width / 2}
        y={high > 60 ? -2 - lines * fontSize : -fontSize / 2}
        width={width}
        align="center"
        fontFamily={colors.faceDrawn}
        fontSize={fontSize}
        fill={colors.dark}
        {...clear}
        ellipsis
        wrap={high > 70 ? 'word' : 'none'}
      />
      {wide > 90 && high > (isSelected ? 100 : 60) ? (
        <Text
          text={floor}
          x={-width / 2}
          y={3}
          width={width}
          align="center"
          fontFamily={colors.face}
          fontSize={11}
          fill={colors.darkSoft}
          {...clear}
        />
      ) : null}
    </Group>
  )
})

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
