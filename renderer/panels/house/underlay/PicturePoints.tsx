import { type KeyboardEvent, type PointerEvent, useRef, useState } from 'react'
import type { Underlay } from '../../../../core/project/sketch-records.ts'
import type { PicturePoint } from '../../../../core/sketch/underlay.ts'
import { usePicture } from '../../../state/pictures.ts'

/** The picture with points on it that a pointer drags, or brings near, and arrow keys move; the last one moved is shown as it is, pixel by pixel. */
export function PicturePoints(props: {
  readonly underlay: Underlay
  readonly points: readonly PicturePoint[]
  readonly labels: readonly string[]
  /** The last point is joined to the first. */
  readonly isClosed: boolean
  readonly onMove: (points: readonly PicturePoint[]) => void
}) {
  const { underlay, points } = props
  const read = usePicture(underlay.picture)
  const held = useRef<number | null>(null)
  const [last, setLast] = useState<number | null>(null)
  const { width, height } = underlay
  if (read === null) return <p className="quiet">Reading …</p>
  if (!read.ok) return <p>{read.problem.sentence}</p>

  function put(index: number, point: PicturePoint) {
    setLast(index)
    props.onMove(points.with(index, within(underlay, point)))
  }

  function pointAt(event: PointerEvent<HTMLDivElement>): PicturePoint {
    const box = event.currentTarget.getBoundingClientRect()
    return {
      across: ((event.clientX - box.left) / box.width) * width,
      down: ((event.clientY - box.top) / box.height) * height,
    }
  }

  const line = [...points, ...(props.isClosed ? points.slice(0, 1) : [])]
  const shown = last === null ? undefined : points[last]
  return (
    <div
      className="underlay-picture"
      style={{ aspectRatio: `${width} / ${height}`, width: `min(100%, ${(42 * width) / height}vh)` }}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        const at = pointAt(event)
        held.current = nearest(points, at)
        put(held.current, at)
      }}
      onPointerMove={(event) => held.current !== null && put(held.current, pointAt(event))}
      onLostPointerCapture={() => {
        held.current = null
      }}
    >
      <img src={read.value} alt="" draggable={false} />
      <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <polyline points={line.map(({ across, down }) => `${across},${down}`).join(' ')} />
      </svg>
      {points.map((point, index) => (
        <PointMark
          key={props.labels[index]}
          number={index + 1}
          label={props.labels[index] ?? ''}
          point={point}
          underlay={underlay}
          onMove={(across, down) => put(index, { across: point.across + across, down: point.down + down })}
        />
      ))}
      {shown === undefined ? null : <Lens address={read.value} point={shown} underlay={underlay} />}
    </div>
  )
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

function PointMark(props: {
  readonly number: number
  readonly label: string
  readonly point: PicturePoint
  readonly underlay: Underlay
  readonly onMove: (across: number, down: number) => void
}) {
  const { point, underlay } = props
  function key(event: KeyboardEvent) {
    const arrow = arrows[event.key]
    if (arrow === undefined) return
    event.preventDefault()
    const pixels = event.shiftKey ? 20 : 1
    props.onMove(arrow[0] * pixels, arrow[1] * pixels)
  }
  return (
    <button
      type="button"
      className="underlay-point"
      aria-label={`${props.number}, ${props.label}: ${Math.round(point.across)} across, ${Math.round(point.down)} down`}
      onKeyDown={key}
      style={{
        left: `${(100 * point.across) / underlay.width}%`,
        top: `${(100 * point.down) / underlay.height}%`,
      }}
    >
      <span className="underlay-number">{props.number}</span>
    </button>
  )
}

/** Pixels; as in underlay.css. */
const lensSide = 132

/** What lies around a point at full size, in the corner of the picture away from it. */
function Lens(props: {
  readonly address: string
  readonly point: PicturePoint
  readonly underlay: Underlay
}) {
  const { across, down } = props.point
  const side = across < props.underlay.width / 2 ? { right: 4 } : { left: 4 }
  return (
    <div
      className="underlay-lens"
      aria-hidden="true"
      style={{
        ...side,
        backgroundImage: `url("${props.address}")`,
        backgroundPosition: `${lensSide / 2 - across}px ${lensSide / 2 - down}px`,
      }}
    />
  )
}

function nearest(points: readonly PicturePoint[], at: PicturePoint): number {
  const far = points.map((point) => Math.hypot(point.across - at.across, point.down - at.down))
  return far.indexOf(Math.min(...far))
}

function within({ width, height }: Underlay, { across, down }: PicturePoint): PicturePoint {
  return { across: Math.min(width, Math.max(0, across)), down: Math.min(height, Math.max(0, down)) }
}
