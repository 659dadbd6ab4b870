import { useState } from 'react'
import { Button, ComboBox, Input, Label, ListBox, ListBoxItem, Popover, Text } from 'react-aria-components'
import { type ConditionKind, conditionKinds } from '../../../../core/project/vocabulary.ts'
import { conditionWords } from '../../../../core/specification/trade-words.ts'
import { capital } from '../../../../core/words/text.ts'
import { conditionNotes } from '../glossary-words.ts'

/** Everything that can be found but what has a button of its own; typing narrows the list, also by what the words mean. */
export function FindingSearch(props: {
  readonly without: readonly ConditionKind[]
  readonly onPick: (kind: ConditionKind) => void
}) {
  const [text, setText] = useState('')
  const wanted = text.trim().toLowerCase()
  const fits = (kind: ConditionKind) =>
    [conditionWords[kind], conditionNotes[kind]].some((words) => words.toLowerCase().includes(wanted))
  const kinds = conditionKinds.filter((kind) => !props.without.includes(kind) && fits(kind))
  return (
    <ComboBox
      className="entry finding-search"
      inputValue={text}
      onInputChange={setText}
      selectedKey={null}
      onSelectionChange={(key) => {
        const kind = conditionKinds.find((each) => each === key)
        if (kind === undefined) return
        setText('')
        props.onPick(kind)
      }}
      items={kinds.map((id) => ({ id }))}
      menuTrigger="focus"
      allowsEmptyCollection
    >
      <Label>Anything else</Label>
      <span className="entry-line">
        <Input placeholder="Type to search, such as rust or nicotine" />
        <Button className="plain-button" aria-label="Show all">
          <span aria-hidden="true" className="choice-mark" />
        </Button>
      </span>
      <Popover className="choice-list">
        <ListBox renderEmptyState={() => <p className="quiet tab-pad">Nothing by that name.</p>}>
          {({ id }: { readonly id: ConditionKind }) => (
            <ListBoxItem id={id} textValue={conditionWords[id]} className="choice-item">
              <Text slot="label">{capital(conditionWords[id])}</Text>
              <Text slot="description">{conditionNotes[id]}</Text>
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  )
}
