import { Button } from 'react-aria-components'

/** The box that is ticked; its name says what a press does. */
export function TickButton(props: {
  readonly name: string
  readonly isDone: boolean
  readonly mark: string
  readonly onPress: () => void
}) {
  return (
    <Button
      className="tick-button"
      aria-label={props.isDone ? `${props.name}: take the check back` : `${props.name}: check off as done`}
      aria-pressed={props.isDone}
      onPress={props.onPress}
    >
      <span aria-hidden="true">{props.mark}</span>
    </Button>
  )
}
