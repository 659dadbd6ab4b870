import type { ReactNode } from 'react'
import { Checkbox } from 'react-aria-components'

/** A box to tick, drawn so that ticked and not differ in form, not in colour alone. */
export function Tick(props: {
  readonly isOn: boolean
  readonly onChange: (isOn: boolean) => void
  readonly children: ReactNode
  readonly isDisabled?: boolean
}) {
  return (
    <Checkbox
      className="tick"
      isSelected={props.isOn}
      onChange={props.onChange}
      isDisabled={props.isDisabled ?? false}
    >
      <span className="tick-box" aria-hidden="true">
        <svg viewBox="0 0 16 16" aria-hidden="true">
          <path d="M2.5 8.5 6.5 12.5 13.5 3.5" />
        </svg>
      </span>
      <span>{props.children}</span>
    </Checkbox>
  )
}
