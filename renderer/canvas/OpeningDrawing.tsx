import { memo } from 'react'
import { Arc, Group, Line } from 'react-konva'
import { type Point, pointBetween } from '../../core/geometry/point.ts'
import type { Job } from '../../core/project/job.ts'
import type { Opening } from '../../core/project/sketch-records.ts'
import { openingSides, type Wall } from '../../core/project/walls.ts'
import type { DrawingColors } from './drawing-colors.ts'
import { linePoints, type ScreenPoint, screenBetween, screenDistance, screenTurn } from './screen-point.ts'
import { toScreen, type View } from './view.ts'

/** The four ends of an opening's jambs: along the near face, then back along the far one. */
type JambEnds = readonly [ScreenPoint, ScreenPoint, ScreenPoint, ScreenPoint]

interface OpeningDrawingProps {
  readonly job: Job
  readonly opening: Opening
  readonly view: View
  readonly colors: DrawingColors
  readonly storeyId: string
  /** Thickness a wall is drawn with where nothing is known behind it, plan units. */
  readonly thickness: number
  readonly isSelected: boolean
  readonly isLit: boolean
}

/** One opening on the plan: the wall's solid cut away between its jambs, and what closes it. */
export const OpeningDrawing = memo(function OpeningDrawing(props: OpeningDrawingProps) {
  const { job, opening, view, colors } = props
  const { near, far } = openingSides(job, opening)
  if (near === null || near.room.storeyId !== props.storeyId || near.wall.length === 0) return null
  const { from, to } = near.place
  const depth = far === null ? props.thickness : gapBetween(near.wall, far.wall)
  const outward = outwardOf(near.wall)
  const place = (at: number, off: number) => {
    const { x, y } = pointOn(near.wall, at)
    return toScreen(view, { x: x + outward.x * off, y: y + outward.y * off })
  }
  const [a, b, c, d] = [place(from, 0), place(to, 0), place(to, depth), place(from, depth)]
  const stroke = props.isSelected ? colors.act : colors.dark
  const strokeWidth = props.isSelected ? 2.25 : 1.25
  return (
    <Group listening={false}>
      <Line
        points={linePoints([a, b, c, d])}
        closed
        fill={props.isLit ? colors.waitSoft : props.isSelected ? colors.actSoft : colors.paper}
      />
      <Line points={linePoints([a, d])} stroke={stroke} strokeWidth={strokeWidth} />
      <Line points={linePoints([b, c])} stroke={stroke} strokeWidth={strokeWidth} />
      {opening.kind === 'window' ? (
        <WindowLines ends={[a, b, c, d]} stroke={stroke} strokeWidth={strokeWidth} />
      ) : null}
      {opening.kind === 'casedOpening' ? (
        <Line points={linePoints([a, b])} stroke={stroke} strokeWidth={1} dash={[4, 4]} />
      ) : null}
      {opening.kind === 'fireplace' || opening.kind === 'builtIn' || opening.kind === 'other' ? (
        <Line points={linePoints([a, c])} stroke={stroke} strokeWidth={1} />
      ) : null}
      {opening.slab !== null ? (
        <Leaves opening={opening} ends={[a, b, c, d]} wall={near.wall} stroke={stroke} />
      ) : null}
    </Group>
  )
}, isSameDrawing)

/** An opening looks the same while it and its rooms do, whatever else is being drawn. */
function isSameDrawing(before: OpeningDrawingProps, after: OpeningDrawingProps): boolean {
  const { opening } = after
  const farId = opening.far?.roomId ?? opening.roomId
  return (
    before.opening === opening &&
    before.view === after.view &&
    before.isSelected === after.isSelected &&
    before.isLit === after.isLit &&
    before.storeyId === after.storeyId &&
    before.job.rooms[opening.roomId] === after.job.rooms[opening.roomId] &&
    before.job.rooms[farId] === after.job.rooms[farId]
  )
}

function WindowLines(props: {
  readonly ends: JambEnds
  readonly stroke: string
  readonly strokeWidth: number
}) {
  const [a, b, c, d] = props.ends
  return [0, 0.5, 1].map((share) => (
    <Line
      key={share}
      points={linePoints([screenBetween(a, d, share), screenBetween(b, c, share)])}
      stroke={props.stroke}
      strokeWidth={share === 0.5 ? 1 : props.strokeWidth}
    />
  ))
}

/** Door leaves standing open a quarter turn into the side they open towards, with the arc they swing. */
function Leaves(props: {
  readonly opening: Opening
  readonly ends: JambEnds
  readonly wall: Wall
  readonly stroke: string
}) {
  const { opening, stroke } = props
  const [a, b, c, d] = props.ends
  const opensNear = opening.slab?.edgesShow === 'near'
  const [hinge, latch] = opensNear ? [a, b] : [d, c]
  const width = screenDistance(hinge, latch)
  if (width < 6) return null
  const along = screenTurn(hinge, latch)
  const turn = (props.wall.inside === 'right') === opensNear ? 90 : -90
  const pair = (opening.slab?.leaves ?? 1) >= 2
  const radius = pair ? width / 2 : width
  return (
    <>
      <Leaf hinge={hinge} along={along} turn={turn} radius={radius} stroke={stroke} />
      {pair ? <Leaf hinge={latch} along={along + 180} turn={-turn} radius={radius} stroke={stroke} /> : null}
    </>
  )
}

function Leaf(props: {
  readonly hinge: ScreenPoint
  readonly along: number
  readonly turn: number
  readonly radius: number
  readonly stroke: string
}) {
  const { hinge, along, turn, radius, stroke } = props
  const open = ((along + turn) * Math.PI) / 180
  const tip = { left: hinge.left + Math.cos(open) * radius, top: hinge.top + Math.sin(open) * radius }
  return (
    <>
      <Line points={linePoints([hinge, tip])} stroke={stroke} strokeWidth={1.75} />
      <Arc
        x={hinge.left}
        y={hinge.top}
        innerRadius={radius}
        outerRadius={radius}
        angle={90}
        rotation={turn > 0 ? along : along - 90}
        stroke={stroke}
        strokeWidth={0.75}
        dash={[3, 3]}
      />
    </>
  )
}

function pointOn(wall: Wall, at: number): Point {
  return pointBetween(wall.start, wall.end, at / wall.length)
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
