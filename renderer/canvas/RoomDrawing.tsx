import { Fragment, memo } from 'react'
import { Group, Line } from 'react-konva'
import type { Point } from '../../core/geometry/point.ts'
import type { Room } from '../../core/project/sketch-records.ts'
import { roomWalls } from '../../core/project/walls.ts'
import type { LengthUnitSystem } from '../../core/units/length.ts'
import type { DrawingColors } from './drawing-colors.ts'
import { RoomSlopes } from './RoomSlopes.tsx'
import { linePoints, type ScreenPoint } from './screen-point.ts'
import { toScreen, type View } from './view.ts'
import { WallDimension } from './WallDimension.tsx'

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
      <RoomSlopes room={room} view={view} colors={colors} system={props.system} />
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
