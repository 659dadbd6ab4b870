import { memo, useMemo } from 'react'
import { groupedBy } from '../../../core/lists/lists.ts'
import type { Job } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import type { SurfaceRef } from '../../../core/project/surface-ref.ts'
import { colorsByLetter, type HouseColors, type RoomColors } from '../../../core/work-order/house-colors.ts'
import {
  fittedLines,
  housePicture,
  type PictureOpening,
  type PictureRoom,
  wallBand,
} from '../../../core/work-order/house-picture.ts'
import type { PlanPoint } from '../../../core/work-order/room-plan.ts'
import { linesText, pointsText, RoomWords } from '../parts/house-picture/HouseDrawing.tsx'

const type = { size: 11.5, head: 20 }
/** Of a wall inside its line, and of the woodwork along it, in pixels. */
const band = { wall: 17, woodwork: 5 }
const leftAsItIs = 'url(#house-left)'

/** The same from picture to picture, so that rooms that did not change are not drawn again. */
const none: readonly PictureOpening[] = []

export type PickSurface = (roomId: RoomId, surface: SurfaceRef) => void

/** The floors from above with ceilings, walls and woodwork in the chosen colors; a click picks a surface. */
export function HouseInColors(props: {
  readonly job: Job
  readonly colors: HouseColors
  readonly width: number
  readonly height: number
  readonly roomId: RoomId | null
  readonly onPick: PickSurface
}) {
  const { job, colors, width, height } = props
  const picture = useMemo(() => housePicture(job, width, height, type.head), [job, width, height])
  const openings = useMemo(() => groupedBy(picture.openings, ({ roomId }) => roomId), [picture])
  return (
    <svg
      className="house-drawing house-pickable"
      width={picture.width}
      height={picture.height}
      role="img"
      aria-label={`The house in its colors. ${colors.marks.map(({ letter, name }) => `${letter} ${name}`).join(', ')}. The table below does the same by keyboard.`}
    >
      <LeftPattern />
      {picture.floors.map(({ name, left, top }) => (
        <text key={name} x={left} y={top + type.size * 1.2} fontSize={type.size} className="house-floor">
          {name}
        </text>
      ))}
      {picture.rooms.map((room) => (
        <RoomInColors
          key={room.roomId}
          room={room}
          colors={colors.rooms.get(room.roomId)}
          openings={openings.get(room.roomId) ?? none}
          isOpen={room.roomId === props.roomId}
          onPick={props.onPick}
        />
      ))}
    </svg>
  )
}

interface RoomInColorsProps {
  readonly room: PictureRoom
  readonly colors: RoomColors | undefined
  readonly openings: readonly PictureOpening[]
  readonly isOpen: boolean
  readonly onPick: PickSurface
}

const RoomInColors = memo(function RoomInColors(props: RoomInColorsProps) {
  const { room, colors, openings, isOpen, onPick } = props
  const { roomId } = room
  const points = pointsText(room.outline)
  const clip = `house-clip-${roomId}`
  const wall = wallBand(room, band.wall)
  const inner = 2 * (wall + band.woodwork)
  const zones = zonesOf(room, colors, inner, wall + 2 * band.woodwork)
  const { label } = room
  const within = {
    ...label,
    width: label.width - inner,
    height: label.height - inner / 2,
    upright: { ...label.upright, length: label.upright.length - inner },
  }
  const words = fittedLines(
    { name: room.name, label: within },
    colors === undefined ? [] : colorsByLetter(colors),
    type.size,
  )
  const fill = colors?.woodwork?.shown ?? leftAsItIs
  return (
    <g>
      <clipPath id={clip}>
        <polygon points={points} />
      </clipPath>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the table below does the same by keyboard */}
      <polygon
        points={points}
        fill={colors?.ceiling?.shown ?? leftAsItIs}
        onClick={() => onPick(roomId, { kind: 'ceiling', roomId })}
      >
        <title>{`${room.name}: ceiling`}</title>
      </polygon>
      <g clipPath={`url(#${clip})`}>
        <path d={linesText(room.walls)} className="color-edge" strokeWidth={inner + 2} />
        {zones.map(({ key, ends, mark, surface, width }) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: the table below does the same by keyboard
          <line
            key={key}
            {...ends}
            stroke={mark?.shown ?? 'var(--paper)'}
            strokeWidth={width}
            onClick={() => onPick(roomId, surface)}
          />
        ))}
        <polygon points={points} fill="none" className="color-edge" strokeWidth={2 * band.woodwork + 2} />
        <polygon points={points} fill="none" stroke={fill} strokeWidth={2 * band.woodwork} />
        <OpeningsInColor openings={openings} colors={colors} onPick={onPick} />
      </g>
      <polygon
        points={points}
        fill="none"
        className={isOpen ? 'color-outline color-open' : 'color-outline'}
      />
      <RoomWords room={room} {...words} />
    </g>
  )
})

/** Walls from the back to the front: above their rails, then below them. */
function zonesOf(room: PictureRoom, colors: RoomColors | undefined, upperWidth: number, lowerWidth: number) {
  const { roomId, walls } = room
  const all = walls.map(({ wallId, from, to }) => ({
    wallId,
    ends: endsOf(from, to),
    own: colors?.walls.get(wallId),
  }))
  return [
    ...all.map(({ wallId, ends, own }) => ({
      key: `${wallId} upper`,
      ends,
      mark: own?.upper,
      surface: { kind: 'wall', roomId, wallId, zone: own?.lower === undefined ? 'whole' : 'upper' } as const,
      width: upperWidth,
    })),
    ...all.flatMap(({ wallId, ends, own }) =>
      own?.lower === undefined
        ? []
        : [
            {
              key: `${wallId} lower`,
              ends,
              mark: own.lower,
              surface: { kind: 'wall', roomId, wallId, zone: 'lower' } as const,
              width: lowerWidth,
            },
          ],
    ),
  ]
}

function endsOf(from: PlanPoint, to: PlanPoint) {
  return { x1: from.x, y1: from.y, x2: to.x, y2: to.y }
}

/** Their edges and the glass of windows are one line each for all of the room. */
function OpeningsInColor(props: {
  readonly openings: readonly PictureOpening[]
  readonly colors: RoomColors | undefined
  readonly onPick: PickSurface
}) {
  const { openings, colors } = props
  const depth = 2 * (band.woodwork + 5)
  return (
    <>
      <path d={linesText(openings)} className="color-edge" strokeWidth={depth + 2} />
      {openings.map(({ openingId, side, roomId, kind, from, to }) => {
        const part = kind === 'door' ? 'slab' : kind === 'window' ? 'sash' : 'casing'
        const key = `${openingId} ${side}`
        return (
          // biome-ignore lint/a11y/noStaticElementInteractions: the table below does the same by keyboard
          <line
            key={key}
            {...endsOf(from, to)}
            stroke={colors?.openings.get(key)?.shown ?? 'var(--paper)'}
            strokeWidth={depth}
            onClick={() => props.onPick(roomId, { kind: 'opening', openingId, side, part })}
          />
        )
      })}
      <path
        d={linesText(openings.filter(({ kind }) => kind === 'window'))}
        className="color-edge color-glass-line"
        strokeWidth={3}
      />
    </>
  )
}

/** What is left as it is, or has no color yet. */
export function LeftPattern() {
  return (
    <defs>
      <pattern id="house-left" width="8" height="8" patternUnits="userSpaceOnUse">
        <rect width="8" height="8" fill="var(--paper)" />
        <circle cx="2" cy="2" r="0.8" fill="var(--line-strong)" />
      </pattern>
    </defs>
  )
}
