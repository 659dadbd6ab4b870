import { Button } from 'react-aria-components'
import type { ScreenPoint } from './screen-point.ts'
import type { Size } from './view.ts'

interface NoteButton {
  readonly label: string
  readonly onPress: () => void
}

/** Words at the place where something cannot be, with what can be done instead; the first of several buttons has the keyboard. */
export function RefusalNote(props: {
  readonly at: ScreenPoint
  readonly sentence: string
  readonly size: Size
  readonly buttons: readonly NoteButton[]
}) {
  const { buttons } = props
  const left = Math.min(Math.max(props.at.left + 14, 8), Math.max(props.size.width - 330, 8))
  const top = Math.min(
    Math.max(props.at.top + 14, 8),
    Math.max(props.size.height - 110 - 40 * buttons.length, 8),
  )
  return (
    <div
      className="refusal"
      role="alert"
      style={{ left, top }}
      onPointerDown={(event) => event.stopPropagation()}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        event.stopPropagation()
        buttons.at(-1)?.onPress()
      }}
    >
      <span className="problem-mark" aria-hidden="true">
        !
      </span>
      <span>{props.sentence}</span>
      {buttons.map(({ label, onPress }, index) => (
        <Button
          key={label}
          className="plain-button"
          // It asks what is to be done, and Escape leaves it
          autoFocus={index === 0 && buttons.length > 1}
          onPress={onPress}
        >
          {label}
        </Button>
      ))}
    </div>
  )
}
