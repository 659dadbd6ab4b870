import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Condition } from '../../../../core/project/survey-records.ts'
import { conditionKinds, severities } from '../../../../core/project/vocabulary.ts'
import type { Picked, PickedScope } from '../../../../core/sketch/many/picked.ts'
import { findingOnMany, findingPlaces } from '../../../../core/sketch/many/set-records.ts'
import { conditionWords, severityWords } from '../../../../core/specification/trade-words.ts'
import { type Area, squareMetres } from '../../../../core/units/area.ts'
import type { Length } from '../../../../core/units/length.ts'
import { useJob, useView } from '../../../state/app.ts'
import { newId } from '../../../state/new-id.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { EntryField } from '../../parts/EntryField.tsx'
import { together } from '../../parts/edits.ts'
import { areaEntry, areaText, lengthEntry, lengthText, orNothing, wholeNumber } from '../../parts/entries.ts'
import {
  conditionTitles,
  grainsPerSquareMillimetre,
  usualFinding,
} from '../../parts/found/condition-records.ts'
import { conditionNotes, severityNotes } from '../../parts/glossary-words.ts'
import { ClassOfMany } from './ClassOfMany.tsx'

type Found = typeof usualFinding

/** The same finding in all that is picked; amounts are those of each place. */
export function ManyFound({ picked }: { readonly picked: Picked }) {
  const [found, setFound] = useState(usualFinding)
  const [recorded, setRecorded] = useState('')
  const foundOn = useView((state) => state.host?.now.slice(0, 10) ?? null)
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
  const system = useJob().header.unitSystem
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
        <EntryField
          label="Length in each"
          width="short"
          shown={lengthText(found.length, system)}
          read={orNothing<Length>(lengthEntry(system))}
          onCommit={(length) => onChange({ length })}
        />
        <EntryField
          label="Area in each"
          width="short"
          shown={found.areaMm2 === null ? '' : areaText(squareMetres(found.areaMm2 / 1e6), system)}
          read={orNothing<Area>(areaEntry(system))}
          onCommit={(area) => onChange({ areaMm2: area === null ? null : area / grainsPerSquareMillimetre })}
        />
        <EntryField
          label="How many in each"
          width="short"
          shown={found.count === null ? '' : String(found.count)}
          read={orNothing<number>(wholeNumber(0, 10_000))}
          onCommit={(count) => onChange({ count })}
        />
      </div>
      <p className="quiet">What is left empty is taken by how bad it is.</p>
    </>
  )
}
