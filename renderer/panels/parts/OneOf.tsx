import { Label, Radio, RadioGroup } from 'react-aria-components'
import type { ChoiceOption } from './Choice.tsx'

/** One of a few that all fit beside each other. */
export function OneOf<Id extends string>(props: {
  readonly label: string
  readonly options: readonly ChoiceOption<Id>[]
  readonly chosen: Id
  readonly onChoose: (id: Id) => void
  readonly isDisabled?: boolean
}) {
  return (
    <RadioGroup
      className="one-of"
      orientation="horizontal"
      value={props.chosen}
      onChange={(id) => {
        const option = props.options.find((each) => each.id === id)
        if (option !== undefined) props.onChoose(option.id)
      }}
      isDisabled={props.isDisabled ?? false}
    >
      <Label>{props.label}</Label>
      <div className="segmented">
        {props.options.map((option) => (
          <Radio key={option.id} value={option.id} className="segment">
            {option.label}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  )
}
