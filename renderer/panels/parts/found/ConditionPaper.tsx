import { useDeferredValue, useMemo } from 'react'
import { Button } from 'react-aria-components'
import { compareChange } from '../../../../core/progress/change-order.ts'
import type { Job } from '../../../../core/project/job.ts'
import type { Condition } from '../../../../core/project/survey-records.ts'
import { conditionKinds, severities } from '../../../../core/project/vocabulary.ts'
import type { SurfaceQuantity } from '../../../../core/quantities/takeoff-types.ts'
import { compareSpecifications } from '../../../../core/specification/compare.ts'
import {
  conditionWords,
  severityWords,
  surfaceClassWords,
} from '../../../../core/specification/trade-words.ts'
import { surfaceWords } from '../../../../core/work-order/surface-words.ts'
import { useDraft } from '../../../state/drafts.ts'
import { Choice, optionsOf } from '../Choice.tsx'
import { type Chain, chainOf } from '../chain.ts'
import { EntryField } from '../EntryField.tsx'
import { lengthText, orNothing, words } from '../entries.ts'
import { conditionNotes, conditionSigns, severityNotes } from '../glossary-words.ts'
import { OneOf } from '../OneOf.tsx'
import { Tick } from '../Tick.tsx'
import { AmountFields } from './AmountFields.tsx'
import { conditionTitles, hasEntries, reachOf, withReach } from './condition-records.ts'
import { WhatIf } from './WhatIf.tsx'

interface ConditionPaperProps {
  readonly job: Job
  readonly surface: SurfaceQuantity
  readonly draft: Condition
  readonly isNew: boolean
  readonly onChange: (draft: Condition) => void
}

/** What was found, how much, how bad: the explanation and how to recognise it stand beside the pick. */
export function ConditionForm({ job, surface, draft, onChange }: ConditionPaperProps) {
  const change = (changes: Partial<Condition>) => onChange({ ...draft, ...changes })
  return (
    <div className="condition-form">
      <Choice
        label="Found"
        options={optionsOf(conditionKinds, conditionTitles, conditionNotes)}
        chosen={draft.kind}
        onChoose={(kind) => change({ kind })}
      />
      <div className="recognise">
        <p>{conditionNotes[draft.kind]}</p>
        <p>
          <strong>How to tell: </strong>
          {conditionSigns[draft.kind]}
        </p>
      </div>
      <OneOf
        label="On"
        options={[
          { id: 'surface', label: surfaceWords(job, surface.surface) },
          { id: 'class', label: `all ${surfaceClassWords[surface.surfaceClass].toLowerCase()} here` },
          { id: 'room', label: 'the whole room' },
        ]}
        chosen={reachOf(draft)}
        onChoose={(reach) => onChange(withReach(draft, surface, reach))}
      />
      <div className="field-grid">
        <Choice
          label="How bad"
          options={optionsOf(severities, severityWords, severityNotes)}
          chosen={draft.severity}
          onChoose={(severity) => change({ severity })}
        />
        <AmountFields amounts={draft} onChange={change} />
        <EntryField
          label="Suspected cause"
          shown={draft.suspectedCause}
          read={words(200)}
          onCommit={(suspectedCause) => change({ suspectedCause })}
        />
        {draft.photo === null ? null : (
          <EntryField
            label="Photo kept elsewhere, name"
            shown={draft.photo}
            read={orNothing<string>(words(200))}
            onCommit={(photo) => change({ photo })}
          />
        )}
      </div>
      <p className="quiet">Fill in what was measured; what is left empty is taken by how bad it is.</p>
      <Tick isOn={draft.causeCured} onChange={(causeCured) => change({ causeCured })}>
        The cause (a leak, a chimney, damp) has been fixed
      </Tick>
      <EntryField
        label="Note"
        lines={2}
        width="wide"
        shown={draft.note}
        read={words(4000)}
        onCommit={(note) => change({ note })}
      />
    </div>
  )
}

interface Consequences {
  readonly before: Chain
  readonly after: Chain
}

/** The job as it is and with the drafted condition, both with everything that follows; lags behind fast typing. */
export function useConsequences(before: Chain, draft: Condition): Consequences {
  const settled = useDeferredValue(draft)
  return useMemo(() => ({ before, after: chainWith(before, settled) }), [before, settled])
}

export function chainWith(before: Chain, condition: Condition): Chain {
  const { job } = before
  return chainOf({ ...job, conditions: { ...job.conditions, [condition.id]: condition } }, before)
}

export function ConditionWhatIf(props: {
  readonly before: Chain
  readonly after: Chain
  readonly finishesOn?: { readonly before: string | null; readonly after: string | null }
}) {
  const { before, after, finishesOn } = props
  const change = useMemo(
    () =>
      compareChange(
        { ...before, finishesOn: finishesOn?.before ?? null },
        { ...after, finishesOn: finishesOn?.after ?? null },
      ),
    [before, after, finishesOn],
  )
  const moved = useMemo(
    () => compareSpecifications(before.specification, after.specification).moved,
    [before, after],
  )
  return <WhatIf before={before} after={after} change={change} moved={moved} afterWord="With it" />
}

/** What is written into the form of a finding counts as typed and not yet taken. */
export function useFindingDraft(job: Job, draft: Condition | null): void {
  const stored = draft === null ? undefined : job.conditions[draft.id]
  useDraft(
    draft === null || !hasEntries(draft, stored)
      ? null
      : { label: 'What was found', text: findingText(job, draft), take: () => false },
  )
}

function findingText(job: Job, draft: Condition): string {
  const { kind, severity, length, count, suspectedCause, note } = draft
  const parts = [
    conditionWords[kind],
    severityWords[severity],
    lengthText(length, job.header.unitSystem),
    count === null ? '' : `${count}`,
    suspectedCause,
    note,
  ]
  return parts.filter((part) => part !== '').join(', ')
}

export function FormButtons(props: {
  readonly isNew: boolean
  readonly onAccept: () => void
  readonly onCancel: () => void
}) {
  return (
    <div className="button-row">
      <Button className="act-button" onPress={props.onAccept}>
        {props.isNew ? 'Record it' : 'Store the change'}
      </Button>
      <Button className="plain-button" onPress={props.onCancel}>
        Cancel
      </Button>
    </div>
  )
}
