import { useState } from 'react'
import { Button } from 'react-aria-components'
import { schemesOf } from '../../../core/agreement/color-schemes.ts'
import type { JobOption } from '../../../core/project/agreement-records.ts'
import { type Job, records } from '../../../core/project/job.ts'
import { Choice } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { words } from '../parts/entries.ts'
import { dropScheme, keepScheme, takeScheme } from './schemes.ts'

const none = 'none'

/** Keeps the colors under a name, and puts a kept scheme beside them to be compared and taken over. */
export function SchemeBar(props: {
  readonly job: Job
  readonly beside: JobOption | null
  readonly onBeside: (id: string | null) => void
}) {
  const { job, beside, onBeside } = props
  const [isNaming, setNaming] = useState(false)
  const schemes = schemesOf(job)
  return (
    <div className="scheme-bar">
      {schemes.length === 0 ? null : (
        <Choice
          label="Beside it"
          options={[
            { id: none, label: 'Nothing' },
            ...schemes.map(({ id, name }) => ({ id: String(id), label: name })),
          ]}
          chosen={beside?.id ?? none}
          onChoose={(id) => onBeside(id === none ? null : id)}
        />
      )}
      {beside === null ? null : (
        <>
          <Button className="act-button" onPress={() => takeScheme(beside)}>
            Take over “{beside.name}”
          </Button>
          <Button
            className="plain-button"
            aria-label={`Drop the color scheme “${beside.name}”`}
            onPress={() => dropScheme(beside) && onBeside(null)}
          >
            Drop
          </Button>
        </>
      )}
      {isNaming ? (
        <EntryField
          label="Name of the scheme"
          shown=""
          read={words(200)}
          isFocused
          onCommit={(name) => {
            setNaming(false)
            return name === '' || keepScheme(job, name)
          }}
        />
      ) : (
        <Button
          className="plain-button"
          isDisabled={records(job.finishes).length === 0}
          onPress={() => setNaming(true)}
        >
          Keep these colors as a scheme
        </Button>
      )}
    </div>
  )
}
