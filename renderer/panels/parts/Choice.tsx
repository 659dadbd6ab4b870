import {
  Button,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Select,
  SelectValue,
  Text,
} from 'react-aria-components'
import { useSame } from './use-same.ts'

export interface ChoiceOption<Id extends string> {
  readonly id: Id
  readonly label: string
  /** A second, quieter line in the list. */
  readonly note?: string
}

interface ChoiceProps<Id extends string> {
  readonly label: string
  readonly options: readonly ChoiceOption<Id>[]
  readonly chosen: Id | null
  readonly onChoose: (id: Id) => void
  readonly isBare?: boolean
  readonly isDisabled?: boolean
  readonly hint?: string
  readonly unchosen?: string
}

/** One of a closed list. */
export function Choice<Id extends string>(props: ChoiceProps<Id>) {
  const { label, chosen, onChoose, isBare = false, isDisabled = false, hint } = props
  const options = useSame(props.options)
  const byId = new Map<string, ChoiceOption<Id>>(options.map((option) => [option.id, option]))
  return (
    <Select
      className="choice"
      value={chosen}
      onChange={(id) => {
        const option = byId.get(String(id))
        if (option !== undefined && option.id !== chosen) onChoose(option.id)
      }}
      isDisabled={isDisabled}
      {...(isBare ? { 'aria-label': label } : {})}
      placeholder={props.unchosen ?? 'Choose'}
    >
      {isBare ? null : <Label>{label}</Label>}
      <Button className="choice-button">
        <SelectValue>
          {({ defaultChildren }) => (chosen === null ? defaultChildren : byId.get(chosen)?.label)}
        </SelectValue>
        <span aria-hidden="true" className="choice-mark" />
      </Button>
      {hint === undefined ? null : (
        <Text slot="description" className="entry-hint">
          {hint}
        </Text>
      )}
      <Popover className="choice-list">
        <ListBox items={options}>
          {(option) => (
            <ListBoxItem id={option.id} textValue={option.label} className="choice-item">
              <Text slot="label">{option.label}</Text>
              {option.note === undefined ? null : <Text slot="description">{option.note}</Text>}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </Select>
  )
}

/** The options of a closed list of tags with the words for each. */
export function optionsOf<Id extends string>(
  ids: readonly Id[],
  words: Readonly<Record<Id, string>>,
  notes?: Readonly<Partial<Record<Id, string>>>,
): readonly ChoiceOption<Id>[] {
  return ids.map((id) => {
    const note = notes?.[id]
    return note === undefined ? { id, label: words[id] } : { id, label: words[id], note }
  })
}
