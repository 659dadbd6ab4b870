import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { acceptanceOf } from '../../../../core/agreement/acceptance.ts'
import type { Agreement } from '../../../../core/agreement/agreement.ts'
import { isNothing, totalCents } from '../../../../core/agreement/taxed-money.ts'
import { priceJob } from '../../../../core/agreement/whole-price.ts'
import type { Money, OptionId } from '../../../../core/project/agreement-records.ts'
import type { Job } from '../../../../core/project/job.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { newId } from '../../../state/new-id.ts'
import { signedMoney } from '../../parts/dealings/agreement-words.ts'
import { keepDealing, keepDealingWith } from '../../parts/dealings/keep-dealing.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { dateEntry, words } from '../../parts/entries.ts'
import { Tick } from '../../parts/Tick.tsx'

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
  const accepted = useMemo(
    () => (quote === null ? null : acceptanceOf(priceJob, job, quote, optionIds)),
    [quote, job, optionIds],
  )
  if (quote === null || accepted === null) return null

  function accept() {
    if (quote === null || accepted === null || !accepted.ok) return
    const { changes, together, counted } = accepted.value
    keepDealingWith(
      'Write down that the quote is accepted',
      {
        id: newId('dealing'),
        kind: 'accepted',
        on,
        quoteId: quote.id,
        by,
        optionIds: [...optionIds],
        together,
        counted,
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
      {accepted.ok ? <Agreed {...accepted.value} /> : <p role="alert">{accepted.problem.sentence}</p>}
      <div className="field-grid">
        <EntryField label="Accepted by" shown={by} read={words(200, true)} onCommit={setBy} />
        <EntryField label="On" kind="date" shown={on} read={dateEntry} onCommit={setOn} />
      </div>
      <div className="button-row">
        <Button className="act-button" isDisabled={by === '' || !accepted.ok} onPress={accept}>
          Write down the acceptance
        </Button>
      </div>
      {by === '' ? <p className="quiet">Say who accepted.</p> : null}
    </section>
  )
}

/** What is agreed in the end; where options share work or paint, what that makes of their sum. */
function Agreed({ together, contract }: { readonly together: Money; readonly contract: Money }) {
  return (
    <>
      {isNothing(together) ? null : (
        <p>
          All together: {signedMoney(together)}. The options share work or paint, so together they cost
          something other than their sum.
        </p>
      )}
      <p role="status">
        <strong>{formatCents(totalCents(contract))}</strong> with tax is what is agreed.
      </p>
    </>
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
