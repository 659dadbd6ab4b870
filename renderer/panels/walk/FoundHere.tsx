import { Button } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import type { Condition } from '../../../core/project/survey-records.ts'
import { severities } from '../../../core/project/vocabulary.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { isOfWholeSurface } from '../../../core/specification/findings.ts'
import { conditionWords, severityWords } from '../../../core/specification/trade-words.ts'
import { capital } from '../../../core/words/text.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { AreaOfFinding, CountOfFinding, LengthOfFinding } from '../parts/found/AmountFields.tsx'
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
      <FirstAmount condition={condition} />
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
function FirstAmount({ condition }: { readonly condition: Condition }) {
  const name = conditionWords[condition.kind]
  const field = {
    amounts: condition,
    onChange: (amounts: Partial<Condition>) => change(condition, amounts),
    isInLine: true,
  }
  if (condition.length !== null) return <LengthOfFinding label={`Length: ${name}`} {...field} />
  if (condition.areaMm2 !== null) return <AreaOfFinding label={`Area: ${name}`} {...field} />
  if (condition.count !== null) return <CountOfFinding label={`How many: ${name}`} {...field} />
  return <span className="quiet">{isOfWholeSurface(condition.kind) ? 'all of it' : 'not measured'}</span>
}
