import type { ScreenPoint } from './screen-point.ts'
import type { Size } from './view.ts'

/** Words at the place where something cannot be. */
export function RefusalNote(props: {
  readonly at: ScreenPoint
  readonly sentence: string
  readonly size: Size
  readonly onDismiss?: () => void
}) {
  const left = Math.min(Math.max(props.at.left + 14, 8), Math.max(props.size.width - 330, 8))
  const top = Math.min(Math.max(props.at.top + 14, 8), Math.max(props.size.height - 110, 8))
  return (
    <div className="refusal" role="alert" style={{ left, top }}>
      <span className="problem-mark" aria-hidden="true">
        !
      </span>
      <span>{props.sentence}</span>
      {props.onDismiss === undefined ? null : (
        <button
          type="button"
          className="plain-button"
          onClick={props.onDismiss}
          onPointerDown={(event) => event.stopPropagation()}
        >
          Understood
        </button>
      )}
    </div>
  )
}
