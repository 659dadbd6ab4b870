import { Fragment, memo } from 'react'
import { Group, Line, Text } from 'react-konva'
import { type Point, pointBetween } from '../../core/geometry/point.ts'
import { polygonArea, polygonBounds } from '../../core/geometry/polygon.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { roomWalls, type Wall } from '../../core/project/walls.ts'
import { areaFromSquareUnits, formatArea } from '../../core/units/area.ts'
import { formatLength, type LengthUnitSystem } from '../../core/units/length.ts'
import type { DrawingColors } from './drawing-colors.ts'
import { linePoints, type ScreenPoint, screenBetween, screenDistance, screenTurn } from './screen-point.ts'
import { toScreen, type View } from './view.ts'

interface RoomDrawingProps {
  readonly room: Room
  readonly view: View
  readonly colors: DrawingColors
  readonly system: LengthUnitSystem
  readonly isSelected: boolean
  readonly isRefused: boolean
  /** Rooms (their ceilings) and walls (`room/wall`) to light. */
  readonly litIds: readonly string[]
  /** Walls among them (`room/wall`) are drawn as picked. */
  readonly selectedIds: readonly string[]
}

function screenPoints(view: View, points: readonly Point[]): number[] {
  return linePoints(points.map((point) => toScreen(view, point)))
}

/** Where the rooms of the storey below stand: drawn over this storey's floors, so that walls can be set on walls. */
export function RoomBelow(props: {
  readonly room: Room
  readonly view: View
  readonly colors: DrawingColors
}) {
  return (
    <Line
      points={screenPoints(props.view, props.room.corners)}
      closed
      stroke={props.colors.lineStrong}
      strokeWidth={1}
      dash={[2, 5]}
      listening={false}
    />
  )
}

/** The solid of the walls round a room, drawn under all rooms: as thick as `thickness` (plan units) on the outside. */
export const WallSolid = memo(function WallSolid(props: {
  readonly room: Room
  readonly view: View
  readonly thickness: number
  readonly color: string
}) {
  return (
    <Line
      points={screenPoints(props.view, props.room.corners)}
      closed
      stroke={props.color}
      strokeWidth={2 * props.thickness * props.view.scale}
      lineJoin="miter"
      miterLimit={3}
      listening={false}
    />
  )
})

/** The floor inside the walls; what is selected and what is lit show in it. */
export const RoomFloor = memo(function RoomFloor(
  props: Pick<RoomDrawingProps, 'room' | 'view' | 'colors' | 'isSelected' | 'litIds'> & {
    /** A picture lies under it and shows through. */
    readonly isSheer: boolean
  },
) {
  const { room, view, colors } = props
  const fill = props.litIds.includes(room.id)
    ? colors.waitSoft
    : props.isSelected
      ? colors.actSoft
      : colors.paperRaised
  return (
    <Line
      points={screenPoints(view, room.corners)}
      closed
      fill={fill}
      opacity={props.isSheer ? 0.4 : 1}
      listening={false}
    />
  )
})

export const RoomDrawing = memo(function RoomDrawing(props: RoomDrawingProps) {
  const { room, view, colors, isSelected, isRefused } = props
  const stroke = isRefused ? colors.stop : isSelected ? colors.act : colors.dark
  return (
    <Group listening={false}>
      <Line
        points={screenPoints(view, room.corners)}
        closed
        stroke={stroke}
        strokeWidth={isSelected ? 2.5 : 1.75}
        lineJoin="miter"
        {...(isRefused ? { dash: [8, 5] } : {})}
      />
      <RoomRakes room={room} view={view} colors={colors} />
      {roomWalls(room).map((wall) => (
        <Fragment key={wall.id}>
          {props.litIds.includes(`${room.id}/${wall.id}`) ? (
            <Line
              points={screenPoints(view, [wall.start, wall.end])}
              stroke={colors.wait}
              strokeWidth={6}
              lineCap="butt"
            />
          ) : null}
          {props.selectedIds.includes(`${room.id}/${wall.id}`) ? (
            <Line points={screenPoints(view, [wall.start, wall.end])} stroke={colors.act} strokeWidth={6} />
          ) : null}
          {isSelected ? <WallDimension wall={wall} {...props} /> : null}
        </Fragment>
      ))}
      {isSelected
        ? room.corners.map((corner) => (
            <CornerHandle key={corner.wallId} at={toScreen(view, corner)} colors={colors} />
          ))
        : null}
    </Group>
  )
})

function CornerHandle(props: { readonly at: ScreenPoint; readonly colors: DrawingColors }) {
  const { left, top } = props.at
  return (
    <Line
      points={[left - 4, top - 4, left + 4, top - 4, left + 4, top + 4, left - 4, top + 4]}
      closed
      fill={props.colors.paperRaised}
      stroke={props.colors.act}
      strokeWidth={1.5}
    />
  )
}

/** Lines across the room where its ceiling bends: the ridge of a gable, the edges of a flat. */
function RoomRakes(props: { readonly room: Room; readonly view: View; readonly colors: DrawingColors }) {
  const { ceiling, corners } = props.room
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
        points={screenPoints(props.view, ends)}
        stroke={props.colors.lineStrong}
        strokeWidth={1}
        dash={[10, 4, 2, 4]}
      />
    )
  })
}

/** Name and floor area, over everything that is drawn in the room; up the sheet where the room is narrow. */
export const RoomTitle = memo(function RoomTitle({
  room,
  view,
  colors,
  system,
  isSelected,
}: Pick<RoomDrawingProps, 'room' | 'view' | 'colors' | 'system' | 'isSelected'>) {
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

/** A dimension line inside the room along a wall, with ticks across its ends. */
function WallDimension({ wall, view, colors, system }: RoomDrawingProps & { readonly wall: Wall }) {
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
