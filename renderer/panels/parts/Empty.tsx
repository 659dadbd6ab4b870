import type { ReactNode } from 'react'
import { Button } from 'react-aria-components'

interface NextStep {
  /** `Draw the first room`. */
  readonly label: string
  readonly onPress: () => void
}

/** What a station says while there is nothing to show: what belongs here, and what to do next with a button that does it. */
export function Empty(props: {
  readonly title: string
  readonly children: ReactNode
  readonly next?: NextStep
}) {
  const { title, children, next } = props
  return (
    <div className="empty">
      <h2>{title}</h2>
      <div className="empty-words">{children}</div>
      {next === undefined ? null : (
        <Button className="act-button" onPress={next.onPress}>
          {next.label}
        </Button>
      )}
    </div>
  )
}
