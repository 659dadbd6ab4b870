import { dotRadius } from './mark-places.ts'

interface MarkProps {
  /** Nothing is drawn for none. */
  readonly count: number
  readonly x: number
  readonly y: number
  /** Length on the plan of a point of the screen. */
  readonly pixel: number
}

/** A camera with the number of photos beside it. */
export function PhotoMark(props: MarkProps) {
  if (props.count === 0) return null
  return (
    <g
      pointerEvents="none"
      transform={`translate(${props.x} ${props.y}) scale(${props.pixel})`}
      className="plan-photo"
    >
      <path d="M-17 -5 h4 l2 -3 h6 l2 3 h4 v11 h-18 z" />
      <circle cx="-8" cy="0.5" r="3" />
      <text x="9" y="1" fontSize="11">
        {props.count}
      </text>
    </g>
  )
}

/** A number in a dot. */
export function CountMark(props: MarkProps) {
  if (props.count === 0) return null
  return (
    <g pointerEvents="none">
      <circle cx={props.x} cy={props.y} r={dotRadius * props.pixel} className="plan-count-mark" />
      <text x={props.x} y={props.y} fontSize={10.5 * props.pixel} className="plan-count">
        {props.count}
      </text>
    </g>
  )
}
