import { Button } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import type { Condition } from '../../../core/project/survey-records.ts'
import { severities } from '../../../core/project/vocabulary.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { isOfWholeSurface } from '../../../core/specification/findings.ts'
import { conditionWords, severityWords } from '../../../core/specification/trade-words.ts'
import { type Area, squareMetres } from '../../../core/units/area.ts'
import type { Length } from '../../../core/units/length.ts'
import { capital } from '../../../core/words/text.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { areaEntry, areaText, lengthEntry, lengthText, wholeNumber } from '../parts/entries.ts'
import { conditionsOn } from '../parts/found/condition-records.ts'
import { PhotoStrip } from '../parts/photos/PhotoStrip.tsx'
import { foundAmount } from './found-amount.ts'

/** What was written down for a surface, its amount and how bad it is to be changed in place. */
export function FoundHere(props: {
  readonly job: Job
  readonly surface: SurfaceQuantity
  readonly onChange: (condition: Condition) => void
}) {
  const { job, surface, onChange } = props
  const found = conditionsOn(job, surface)
  if (found.length === 0) return null
  return (
    <ul className="condition-list" aria-label="Found here">
      {found.map((condition) => (
        <FoundLine key={condition.id} job={job} condition={condition} onChange={() => onChange(condition)} />
      ))}
    </ul>
  )
}

function FoundLine(props: {
  readonly job: Job
  readonly condition: Condition
  readonly onChange: () => void
}) {
  const { job, condition, onChange } = props
  const name = conditionWords[condition.kind]
  const amounts = foundAmount(condition, job.header.unitSystem)
  return (
    <li className="condition-line">
      <span className="condition-words">
        <strong>{capital(name)}</strong>, {severityWords[condition.severity]}
        {amounts === '' ? '' : `, ${amounts}`}
        {condition.on.level === 'room' ? <span className="quiet"> · in the whole room</span> : null}
        {condition.note === '' ? null : <span className="quiet"> · {condition.note}</span>}
      </span>
      <AmountField job={job} condition={condition} />
      <Choice
        label={`How bad: ${name}`}
        isBare
        options={optionsOf(severities, severityWords)}
        chosen={condition.severity}
        onChoose={(severity) => change(condition, { severity })}
      />
      <Button className="plain-button" aria-label={`More: ${name}`} onPress={onChange}>
        More
      </Button>
      <Button
        className="plain-button remove"
        aria-label={`Remove: ${name}`}
        onPress={() => removeRecord(`Remove: ${name}`, 'conditions', condition.id)}
      >
        Remove
      </Button>
      <PhotoStrip
        job={job}
        of={{ kind: 'finding', conditionId: condition.id }}
        subject={name}
        stage="before"
      />
    </li>
  )
}

function change(condition: Condition, changes: Partial<Condition>): boolean {
  return putRecord(`Change: ${conditionWords[condition.kind]}`, 'conditions', { ...condition, ...changes })
}

/** The first amount that was written down; the others are in the form. */
function AmountField({ job, condition }: { readonly job: Job; readonly condition: Condition }) {
  const system = job.header.unitSystem
  const name = conditionWords[condition.kind]
  if (condition.length !== null) {
    return (
      <EntryField<Length>
        label={`Length: ${name}`}
        isBare
        shown={lengthText(condition.length, system)}
        read={lengthEntry(system)}
        onCommit={(length) => change(condition, { length })}
      />
    )
  }
  if (condition.areaMm2 !== null) {
    return (
      <EntryField<Area>
        label={`Area: ${name}`}
        isBare
        shown={areaText(squareMetres(condition.areaMm2 / 1e6), system)}
        read={areaEntry(system)}
        onCommit={(area) => change(condition, { areaMm2: area / 10_000 })}
      />
    )
  }
  if (condition.count !== null) {
    return (
      <EntryField<number>
        label={`How many: ${name}`}
        isBare
        unit="×"
        shown={String(condition.count)}
        read={wholeNumber(1, 10_000)}
        onCommit={(count) => change(condition, { count })}
      />
    )
  }
  return <span className="quiet">{isOfWholeSurface(condition.kind) ? 'all of it' : 'not measured'}</span>
}
