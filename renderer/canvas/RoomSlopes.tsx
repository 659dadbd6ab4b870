import { Arrow, Line, Text } from 'react-konva'
import { polygonBounds } from '../../core/geometry/polygon.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { slopeMarks } from '../../core/sketch/room-slopes.ts'
import { formatLength, type LengthUnitSystem } from '../../core/units/length.ts'
import type { DrawingColors } from './drawing-colors.ts'
import { linePoints, type ScreenPoint, screenBetween, screenDistance } from './screen-point.ts'
import { toScreen, type View } from './view.ts'

interface RoomSlopesProps {
  readonly room: Room
  readonly view: View
  readonly colors: DrawingColors
  readonly system: LengthUnitSystem
}

/** Pixels a height takes across the sheet and down it. */
const [textWide, textHigh] = [56, 20]

/** What slopes in a room: lines where its ceiling bends, its heights where the sheet is near enough, and an arrow up a slope that goes one way. */
export function RoomSlopes(props: RoomSlopesProps) {
  const { room, view, colors } = props
  const marks = slopeMarks(room).map((mark) => ({ ...mark, at: toScreen(view, mark.place) }))
  const [first, last] = [marks[0], marks.at(-1)]
  if (first === undefined || last === undefined) return <Bends {...props} />
  const isAcross = room.ceiling.kind !== 'flat' && room.ceiling.along === 'x'
  const needed = marks.length * (isAcross ? textWide : textHigh)
  if (screenDistance(first.at, last.at) < needed) return <Bends {...props} />
  const [low, high] = first.height <= last.height ? [first.at, last.at] : [last.at, first.at]
  return (
    <>
      <Bends {...props} />
      {room.ceiling.kind === 'shed' ? (
        <UpArrow from={low} to={high} gap={isAcross ? textWide : textHigh} color={colors.darkSoft} />
      ) : null}
      {marks.map(({ word, height, at }, index) => (
        <Text
          key={`${at.left} ${at.top}`}
          text={`${word} ${formatLength(height, props.system)}`}
          x={at.left}
          y={at.top}
          offsetX={isAcross ? (90 * index) / (marks.length - 1) : 0}
          offsetY={6}
          width={90}
          align={!isAcross || index === 0 ? 'left' : index === marks.length - 1 ? 'right' : 'center'}
          fontFamily={colors.face}
          fontSize={11}
          fontStyle={word === 'low' ? 'bold' : 'normal'}
          fill={colors.darkSoft}
        />
      ))}
    </>
  )
}

/** From one height to the other, clear of both; down the sheet it runs beside the words. */
function UpArrow(props: {
  readonly from: ScreenPoint
  readonly to: ScreenPoint
  readonly gap: number
  readonly color: string
}) {
  const share = props.gap / screenDistance(props.from, props.to)
  if (share > 0.4) return null
  const ends = [share, 1 - share].map((at) => screenBetween(props.from, props.to, at))
  return (
    <Arrow
      points={linePoints(ends)}
      x={props.gap === textHigh ? -6 : 0}
      stroke={props.color}
      fill={props.color}
      strokeWidth={1}
      pointerLength={6}
      pointerWidth={5}
    />
  )
}

/** Lines across the room where its ceiling bends: the ridge of a gable, the edges of a flat. */
function Bends({ room, view, colors }: RoomSlopesProps) {
  const { ceiling, corners } = room
  if (ceiling.kind === 'flat' || ceiling.kind === 'shed') return null
  const bounds = polygonBounds(corners)
  const bends =
    ceiling.kind === 'gable'
      ? [ceiling.ridgeAt]
      : ceiling.kind === 'vault'
        ? [ceiling.flatFrom, ceiling.flatTo]
        : ceiling.line.slice(1, -1).map((point) => point.at)
  return bends.map((at) => {
    const place = bounds.min[ceiling.along] + at
    const ends =
      ceiling.along === 'x'
        ? [
            { x: place, y: bounds.min.y },
            { x: place, y: bounds.max.y },
          ]
        : [
            { x: bounds.min.x, y: place },
            { x: bounds.max.x, y: place },
          ]
    return (
      <Line
        key={at}
        points={linePoints(ends.map((end) => toScreen(view, end)))}
        stroke={colors.lineStrong}
        strokeWidth={1}
        dash={[10, 4, 2, 4]}
      />
    )
  })
}
