import { ceilingLine, floorLine, roomSpan } from '../../../../core/project/heights.ts'
import type { Room } from '../../../../core/project/sketch-records.ts'
import { formatLength, toMillimetres } from '../../../../core/units/length.ts'
import { useJob } from '../../../state/app.ts'

/** The room cut along the way its heights vary: floor, ceiling, and how high it is where it bends. */
export function SectionDrawing({ room }: { readonly room: Room }) {
  const system = useJob().header.unitSystem
  const ceiling = ceilingLine(room)
  const floor = floorLine(room)
  const { axis } = ceiling.points.length > 1 ? ceiling : floor
  const least = Math.min(...room.corners.map((corner) => corner[axis]))
  const span = roomSpan(room, axis)
  const across = (points: typeof ceiling.points) => {
    const [first, last] = [points[0], points.at(-1)]
    if (first === undefined || last === undefined || points.length < 2)
      return [0, span].map((at) => ({ at, height: first?.height ?? 0 }))
    return points.map(({ at, height }) => ({ at: at - least, height }))
  }
  const [above, below] = [across(ceiling.points), across(ceiling.axis === floor.axis ? floor.points : [])]
  const top = Math.max(...above.map(({ height }) => height))
  const mm = toMillimetres
  const place = ({ at, height }: { readonly at: number; readonly height: number }) =>
    `${mm(at)},${mm(top - height)}`
  const size = Math.max(mm(span), mm(top)) / 24
  return (
    <svg
      className="section-drawing"
      viewBox={`${-size * 3} ${-size * 2} ${mm(span) + size * 6} ${mm(top) + size * 3}`}
      role="img"
      aria-label={`Section: ${above.map(({ height }) => formatLength(height, system)).join(', ')} high`}
    >
      <polygon
        points={[...above, ...below.toReversed()].map(place).join(' ')}
        className="section-room"
        strokeWidth={size / 5}
      />
      {above.map((point) => (
        <text key={point.at} x={mm(point.at)} y={mm(top - point.height) - size * 0.5} fontSize={size * 1.3}>
          {formatLength(point.height, system)}
        </text>
      ))}
    </svg>
  )
}
