import { memo } from 'react'
import { Button } from 'react-aria-components'
import { TickButton } from './TickButton.tsx'

/** A pass or a line of one: the box to tick, its name that opens what is in it, when, and how long. Drawn again only where these change. */
export const TickRow = memo(function TickRow(props: {
  readonly name: string
  readonly isPass: boolean
  readonly isDone: boolean
  readonly mark: string
  readonly isOpen: boolean
  readonly when: string
  readonly amount: string
  readonly onTick: () => void
  readonly onOpen: () => void
}) {
  return (
    <div className="step-tick" data-row>
      <TickButton name={props.name} isDone={props.isDone} mark={props.mark} onPress={props.onTick} />
      <Button className="step-name" aria-expanded={props.isOpen} onPress={props.onOpen}>
        <span className={props.isPass ? 'step-title pass-title' : 'step-title'}>{props.name}</span>
      </Button>
      <span className="step-when">{props.when}</span>
      <span className="number">{props.amount}</span>
    </div>
  )
})
