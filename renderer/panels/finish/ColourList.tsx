import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import type { Colour } from '../../../core/project/survey-records.ts'
import { colourDepths } from '../../../core/project/vocabulary.ts'
import { newId } from '../../state/new-id.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { words } from '../parts/entries.ts'
import { depthWords } from '../parts/words.ts'
import { colourEntry } from './colour-entry.ts'

/** The colours of the job; the depth counts coats, what is shown is for the screen only. */
export function ColourList({ job }: { readonly job: Job }) {
  return (
    <section className="block">
      <h3>Colors</h3>
      <p className="quiet">
        Depth decides coats: white to off-white takes two, strong colors two or three over a tinted primer.
        What is shown is for the screen; the name goes on paper, the store's color code on the shopping list.
      </p>
      <ul className="colour-list">
        {records(job.colours).map((colour) => (
          <ColourLine key={colour.id} colour={colour} />
        ))}
      </ul>
      <Button
        className="plain-button"
        onPress={() =>
          putRecord('Add a color', 'colours', {
            id: newId('colour'),
            name: 'New color',
            code: '',
            depth: 'light',
            shown: '#e4dccb',
          })
        }
      >
        Add a color
      </Button>
    </section>
  )
}

function ColourLine({ colour }: { readonly colour: Colour }) {
  const change = (changes: Partial<Colour>) =>
    putRecord('Change a color', 'colours', { ...colour, ...changes })
  return (
    <li className="colour-line">
      <EntryField
        label={`Shown: ${colour.name}`}
        isBare
        kind="color"
        width="short"
        shown={colour.shown}
        read={colourEntry}
        onCommit={(shown) => change({ shown })}
      />
      <EntryField
        label="Name of the color"
        isBare
        shown={colour.name}
        read={words(200, true)}
        onCommit={(name) => change({ name })}
      />
      <EntryField
        label="Color code"
        shown={colour.code}
        read={words(200)}
        onCommit={(code) => change({ code })}
      />
      <Choice
        label={`Depth of ${colour.name}`}
        isBare
        options={optionsOf(colourDepths, depthWords)}
        chosen={colour.depth}
        onChoose={(depth) => change({ depth })}
      />
      <Button
        className="plain-button remove"
        aria-label={`Remove ${colour.name}`}
        onPress={() => removeRecord('Remove a color', 'colours', colour.id)}
      >
        Remove
      </Button>
    </li>
  )
}
