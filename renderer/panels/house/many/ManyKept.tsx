import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { KeptItem } from '../../../../core/project/survey-records.ts'
import { type KeptItemHandling, keptItemKinds } from '../../../../core/project/vocabulary.ts'
import type { Picked } from '../../../../core/sketch/many/picked.ts'
import { keptOnMany } from '../../../../core/sketch/many/set-records.ts'
import { handlingWords } from '../../../../core/specification/trade-words.ts'
import { useJob } from '../../../state/app.ts'
import { newId } from '../../../state/new-id.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { EntryField } from '../../parts/EntryField.tsx'
import { together } from '../../parts/edits.ts'
import { wholeNumber, words } from '../../parts/entries.ts'
import { handlingsFor, usualHandling } from '../../parts/kept-handling.ts'
import { keptItemWords } from '../../parts/words.ts'
import { pickedWords } from './common.ts'

type KeptDraft = Pick<KeptItem, 'kind' | 'name' | 'count' | 'handling' | 'wired'>

/** The same thing that stays in every room, or on every opening or wall, that is picked. */
export function ManyKept({ picked }: { readonly picked: Picked }) {
  const job = useJob()
  const isOnDoors = picked.openings.some(({ kind }) => kind === 'door')
  const [item, setItem] = useState<KeptDraft>(draftOf(isOnDoors ? 'lockset' : 'plate'))
  const [added, setAdded] = useState('')
  const count = picked.rooms.length + picked.openings.length + picked.walls.length
  const add = () => {
    const commands = keptOnMany(job, picked, item, () => newId('kept'))
    if (together(`put ${item.name} on ${count} things`, commands))
      setAdded(`${item.count} × ${item.name} in each of ${pickedWords(picked)}.`)
  }
  return (
    <div className="tab-pad">
      <div className="field-grid">
        <Choice
          label="What stays"
          options={optionsOf(keptItemKinds, keptItemWords)}
          chosen={item.kind}
          onChoose={(kind) => setItem({ ...draftOf(kind), count: item.count })}
        />
        <EntryField
          label="How many in each"
          shown={String(item.count)}
          read={wholeNumber(1, 1000)}
          width="short"
          onCommit={(each) => setItem({ ...item, count: each })}
        />
        <EntryField
          label="Name on the label"
          shown={item.name}
          read={words(200)}
          onCommit={(name) => setItem({ ...item, name })}
        />
        <Choice
          label="Handling"
          options={optionsOf<KeptItemHandling>(handlingsFor(item), handlingWords)}
          chosen={item.handling}
          onChoose={(handling) => setItem({ ...item, handling })}
        />
      </div>
      <span className="button-row">
        <Button className="act-button" onPress={add}>
          Put it on {count === 1 ? 'it' : `all ${count}`}
        </Button>
      </span>
      <p className="quiet">Where there is some already, its count and handling are set.</p>
      <p className="quiet" role="status">
        {added}
      </p>
    </div>
  )
}

function draftOf(kind: KeptItem['kind']): KeptDraft {
  return { kind, name: keptItemWords[kind], count: 1, ...usualHandling(kind, false) }
}
