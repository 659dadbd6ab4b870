import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Condition } from '../../../../core/project/survey-records.ts'
import { conditionKinds, severities } from '../../../../core/project/vocabulary.ts'
import type { Picked, PickedScope } from '../../../../core/sketch/many/picked.ts'
import { findingOnMany, findingPlaces } from '../../../../core/sketch/many/set-records.ts'
import { conditionWords, severityWords } from '../../../../core/specification/trade-words.ts'
import { newId } from '../../../state/new-id.ts'
import { useSiteNow } from '../../../state/planner-now.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { together } from '../../parts/edits.ts'
import { AmountFields } from '../../parts/found/AmountFields.tsx'
import { conditionTitles, usualFinding } from '../../parts/found/condition-records.ts'
import { conditionNotes, severityNotes } from '../../parts/glossary-words.ts'
import { ClassOfMany } from './ClassOfMany.tsx'

type Found = typeof usualFinding

/** The same finding in all that is picked; amounts are those of each place. */
export function ManyFound({ picked }: { readonly picked: Picked }) {
  const [found, setFound] = useState(usualFinding)
  const [recorded, setRecorded] = useState('')
  const { today } = useSiteNow()
  const foundOn = today.slice(0, 10) || null
  const record = (places: readonly Condition['on'][]) => {
    const action = `record ${conditionWords[found.kind]} in ${places.length} places`
    if (
      together(
        action,
        findingOnMany(places, { ...found, foundOn }, () => newId('condition')),
      )
    )
      setRecorded(`Recorded: ${conditionWords[found.kind]}, ${places.length} times.`)
  }
  return (
    <div className="tab-pad">
      <FoundFields found={found} onChange={(change) => setFound({ ...found, ...change })} />
      <ClassOfMany
        picked={picked}
        page={(places) => <RecordButtons picked={picked} places={places} onRecord={record} />}
      />
      <p className="quiet" role="status">
        {recorded}
      </p>
    </div>
  )
}

function RecordButtons(props: {
  readonly picked: Picked
  readonly places: readonly PickedScope[]
  readonly onRecord: (places: readonly Condition['on'][]) => void
}) {
  const { picked, places, onRecord } = props
  const rooms = picked.rooms.map(({ id }) => ({ level: 'room', roomId: id, surfaceClass: null }) as const)
  return (
    <span className="button-row">
      <Button className="act-button" onPress={() => onRecord(findingPlaces(places))}>
        Record it in {places.length} {places.length === 1 ? 'place' : 'places'}
      </Button>
      {rooms.length === 0 ? null : (
        <Button className="plain-button" onPress={() => onRecord(rooms)}>
          On the rooms as a whole
        </Button>
      )}
    </span>
  )
}

function FoundFields(props: { readonly found: Found; readonly onChange: (change: Partial<Found>) => void }) {
  const { found, onChange } = props
  return (
    <>
      <div className="field-grid">
        <Choice
          label="Found"
          options={optionsOf(conditionKinds, conditionTitles, conditionNotes)}
          chosen={found.kind}
          onChoose={(kind) => onChange({ kind })}
        />
        <Choice
          label="How bad"
          options={optionsOf(severities, severityWords, severityNotes)}
          chosen={found.severity}
          onChoose={(severity) => onChange({ severity })}
        />
        <AmountFields amounts={found} onChange={onChange} where=" in each" />
      </div>
      <p className="quiet">What is left empty is taken by how bad it is.</p>
    </>
  )
}
