import { memo, useMemo } from 'react'
import { nearestOnSegment } from '../../../core/geometry/segment.ts'
import { groupedBy } from '../../../core/lists/lists.ts'
import type { Job } from '../../../core/project/job.ts'
import type { RoomId, WallId } from '../../../core/project/sketch-records.ts'
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
        <Strokes strokes={zones} onPick={(surface) => onPick(roomId, surface)} />
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

/** A surface as a broad line of its color. */
interface Stroke {
  readonly from: PlanPoint
  readonly to: PlanPoint
  readonly color: string | undefined
  readonly width: number
  readonly surface: SurfaceRef
}

/** One path for all that look alike; which of them is meant is told by where the pointer is. */
function Strokes(props: {
  readonly strokes: readonly Stroke[]
  readonly onPick: (surface: SurfaceRef) => void
}) {
  const alike = groupedBy(props.strokes, ({ color, width }) => `${width} ${color}`)
  return [...alike].map(([look, strokes]) => (
    // biome-ignore lint/a11y/noStaticElementInteractions: the table below does the same by keyboard
    <path
      key={look}
      d={linesText(strokes)}
      stroke={strokes[0]?.color ?? 'var(--paper)'}
      strokeWidth={strokes[0]?.width}
      onClick={(event) => props.onPick(nearestStroke(strokes, pointerIn(event)).surface)}
    />
  ))
}

function nearestStroke(strokes: readonly Stroke[], at: PlanPoint): Stroke {
  return strokes.reduce((best, each) => (offStroke(each, at) < offStroke(best, at) ? each : best))
}

/** Pixels from the line to a point. */
function offStroke({ from, to }: Stroke, at: PlanPoint): number {
  return nearestOnSegment({ start: from, end: to }, at).off
}

/** Where on the picture the pointer is; a point of the picture is a pixel. */
function pointerIn({ currentTarget, clientX, clientY }: React.MouseEvent<SVGElement>): PlanPoint {
  const { left = 0, top = 0 } = currentTarget.ownerSVGElement?.getBoundingClientRect() ?? {}
  return { x: clientX - left, y: clientY - top }
}

/** Walls from the back to the front: above their rails, then below them. */
function zonesOf(
  room: PictureRoom,
  colors: RoomColors | undefined,
  upperWidth: number,
  lowerWidth: number,
): readonly Stroke[] {
  const { roomId } = room
  const walls = room.walls.map((wall) => ({ ...wall, own: colors?.walls.get(wall.wallId) }))
  const zone = (wallId: WallId, part: 'whole' | 'upper' | 'lower'): SurfaceRef => ({
    kind: 'wall',
    roomId,
    wallId,
    zone: part,
  })
  return [
    ...walls.map(({ wallId, from, to, own }) => ({
      from,
      to,
      color: own?.upper?.shown,
      surface: zone(wallId, own?.lower === undefined ? 'whole' : 'upper'),
      width: upperWidth,
    })),
    ...walls.flatMap(({ wallId, from, to, own }) =>
      own?.lower === undefined
        ? []
        : [{ from, to, color: own.lower?.shown, surface: zone(wallId, 'lower'), width: lowerWidth }],
    ),
  ]
}

/** Their edges, the glass of windows, and what is painted alike, are one line each for all of the room. */
function OpeningsInColor(props: {
  readonly openings: readonly PictureOpening[]
  readonly colors: RoomColors | undefined
  readonly onPick: PickSurface
}) {
  const { openings, colors } = props
  const depth = 2 * (band.woodwork + 5)
  const strokes = openings.map(({ openingId, side, kind, from, to }): Stroke => {
    const part = kind === 'door' ? 'slab' : kind === 'window' ? 'sash' : 'casing'
    const color = colors?.openings.get(`${openingId} ${side}`)?.shown
    return { from, to, color, width: depth, surface: { kind: 'opening', openingId, side, part } }
  })
  const [first] = openings
  if (first === undefined) return null
  return (
    <>
      <path d={linesText(openings)} className="color-edge" strokeWidth={depth + 2} />
      <Strokes strokes={strokes} onPick={(surface) => props.onPick(first.roomId, surface)} />
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
