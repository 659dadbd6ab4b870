import { useState } from 'react'
import { Button } from 'react-aria-components'
import { type Agreement, contractOf } from '../../../../core/agreement/agreement.ts'
import { applyChanges } from '../../../../core/agreement/changes.ts'
import { checkTaken } from '../../../../core/agreement/quote.ts'
import { totalCents } from '../../../../core/agreement/taxed-money.ts'
import { priceJob } from '../../../../core/agreement/whole-price.ts'
import type { OptionId } from '../../../../core/project/agreement-records.ts'
import type { Job } from '../../../../core/project/job.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { newId } from '../../../state/new-id.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { dateEntry, words } from '../../parts/entries.ts'
import { Tick } from '../../parts/Tick.tsx'
import { signedMoney } from './agreement-words.ts'
import { keepDealing, keepDealingWith } from './keep-dealing.ts'

interface Parts {
  readonly job: Job
  readonly agreement: Agreement
  /** Moment on site. */
  readonly at: string
}

/** The client says yes: by whom, on which day, with which options. The options taken become part of the job. */
export function AnswerForm({ job, agreement: { quote }, at }: Parts) {
  const [by, setBy] = useState(job.header.client)
  const [on, setOn] = useState(at.slice(0, 10))
  const [optionIds, setOptionIds] = useState<readonly OptionId[]>([])
  if (quote === null) return null
  const taken = checkTaken(quote, optionIds)
  const changes = taken.ok ? taken.value.flatMap((option) => option.changes) : []
  const changed = applyChanges(job, changes)
  const problem = taken.ok ? (changed.ok ? null : changed.problem.sentence) : taken.problem.sentence

  function accept() {
    if (quote === null || !changed.ok) return
    const { beforeTaxCents, taxCents } = priceJob(changed.value)
    keepDealingWith(
      'Write down that the quote is accepted',
      {
        id: newId('dealing'),
        kind: 'accepted',
        on,
        quoteId: quote.id,
        by,
        optionIds: [...optionIds],
        counted: { beforeTaxCents, taxCents },
      },
      changes,
      optionIds,
      at,
    )
  }

  return (
    <section className="block" aria-label="Acceptance">
      <h3>Accepted</h3>
      {quote.options.map((option) => (
        <Tick
          key={option.id}
          isOn={optionIds.includes(option.id)}
          onChange={(isOn) =>
            setOptionIds(isOn ? [...optionIds, option.id] : optionIds.filter((id) => id !== option.id))
          }
        >
          {option.name}, {signedMoney(option)}
        </Tick>
      ))}
      <p role="status">
        <strong>{formatCents(totalCents(contractOf(quote, { optionIds: [...optionIds] })))}</strong> with tax
        is what is agreed.
      </p>
      {problem === null ? null : <p role="alert">{problem}</p>}
      <div className="field-grid">
        <EntryField label="Accepted by" shown={by} read={words(200, true)} onCommit={setBy} />
        <EntryField label="On" kind="date" shown={on} read={dateEntry} onCommit={setOn} />
      </div>
      <div className="button-row">
        <Button className="act-button" isDisabled={by === '' || problem !== null} onPress={accept}>
          Write down the acceptance
        </Button>
      </div>
      {by === '' ? <p className="quiet">Say who accepted.</p> : null}
    </section>
  )
}

/** The client says no. */
export function LostForm({ at }: Parts) {
  const [why, setWhy] = useState('')
  return (
    <section className="block" aria-label="Lost">
      <h3>Lost</h3>
      <EntryField
        label="Why, as far as you know"
        width="wide"
        shown={why}
        read={words(4000)}
        onCommit={setWhy}
      />
      <div className="button-row">
        <Button
          className="plain-button"
          onPress={() =>
            keepDealing(
              'Write down that the job is lost',
              { id: newId('dealing'), kind: 'lost', on: at.slice(0, 10), why },
              at,
            )
          }
        >
          Write down that it is lost
        </Button>
      </div>
    </section>
  )
}
