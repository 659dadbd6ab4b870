import './house-picture.css'
import { memo, type ReactNode } from 'react'
import { groupedBy } from '../../../../core/lists/lists.ts'
import type { RoomId } from '../../../../core/project/sketch-records.ts'
import {
  fittedLines,
  type HousePicture,
  type PictureRoom,
} from '../../../../core/work-order/house-picture.ts'
import type { PlanPoint } from '../../../../core/work-order/room-plan.ts'

/** How a room is drawn. */
export interface RoomLook {
  readonly className: string
  /** Class of a second layer over the first, as a hatch. */
  readonly over: string | null
  /** Below its name, as far as they fit. */
  readonly lines: readonly string[]
  /** All that is said of it, for the pointer that rests on it. */
  readonly title: string
}

/** The floors of a house from above, each room as `lookOf` says. */
export function HouseDrawing(props: {
  readonly picture: HousePicture
  /** All that can be seen, in words. */
  readonly label: string
  readonly size: number
  readonly lookOf: (room: PictureRoom) => RoomLook
  readonly onPick: (setId: RoomId) => void
  readonly children?: ReactNode
}) {
  const { picture, size, onPick } = props
  return (
    <svg
      className="house-drawing house-pickable"
      width={picture.width}
      height={picture.height}
      role="img"
      aria-label={props.label}
    >
      {props.children}
      {picture.floors.map(({ name, left, top }) => (
        <text key={name} x={left} y={top + size * 1.1} fontSize={size} className="house-floor">
          {name}
        </text>
      ))}
      {picture.rooms.map((room) => {
        const look = props.lookOf(room)
        return (
          <RoomMark
            key={room.roomId}
            room={room}
            className={look.className}
            over={look.over}
            text={look.lines.join('\n')}
            title={look.title}
            size={size}
            onPick={onPick}
          />
        )
      })}
      {[...groupedBy(picture.openings, ({ kind }) => kind)].map(([kind, openings]) => (
        <path key={kind} d={linesText(openings)} className={`house-opening house-opening-${kind}`} />
      ))}
    </svg>
  )
}

interface RoomMarkProps extends Pick<RoomLook, 'className' | 'over' | 'title'> {
  readonly room: PictureRoom
  readonly text: string
  readonly size: number
  readonly onPick: (setId: RoomId) => void
}

/** Drawn again only where something of it changed: of sixty rooms a day changes few. */
const RoomMark = memo(function RoomMark(props: RoomMarkProps) {
  const { room, size, onPick } = props
  const points = pointsText(room.outline)
  const words = fittedLines(room, props.text === '' ? [] : props.text.split('\n'), size)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the list beside the picture does the same by keyboard
    <g onClick={() => onPick(room.setId)}>
      <title>{props.title}</title>
      <polygon points={points} className={`house-room ${props.className}`} />
      {props.over === null ? null : <polygon points={points} className={props.over} />}
      <RoomWords room={room} {...words} />
    </g>
  )
})

/** The name and what stands below it, in the middle of the room. */
export function RoomWords(props: {
  readonly room: PictureRoom
  readonly lines: readonly string[]
  readonly size: number
  readonly isTurned: boolean
}) {
  const { lines, size } = props
  const { label } = props.room
  const { x } = label
  const y = props.isTurned ? label.upright.y : label.y
  const top = y - ((lines.length - 1) * size * 1.2) / 2
  return (
    <text
      className="house-words"
      fontSize={size}
      transform={props.isTurned ? `rotate(-90 ${x} ${y})` : undefined}
    >
      {lines.map((line, index) => (
        <tspan
          key={line}
          x={x}
          y={top + index * size * 1.2}
          className={line === props.room.name ? 'house-name' : undefined}
        >
          {line}
        </tspan>
      ))}
    </text>
  )
}

export function pointsText(outline: readonly PlanPoint[]): string {
  return outline.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ')
}

/** Many lines as one path: a browser styles and lays out each element by itself. */
export function linesText(lines: readonly { readonly from: PlanPoint; readonly to: PlanPoint }[]): string {
  const at = ({ x, y }: PlanPoint) => `${x.toFixed(1)} ${y.toFixed(1)}`
  return lines.map(({ from, to }) => `M${at(from)}L${at(to)}`).join('')
}
