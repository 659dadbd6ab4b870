import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { type Agreement, nextNumber } from '../../../../core/agreement/agreement.ts'
import { pricedOptions, quoteLines, usualSteps } from '../../../../core/agreement/quote.ts'
import { totalCents } from '../../../../core/agreement/taxed-money.ts'
import type { Estimate } from '../../../../core/price/estimate-types.ts'
import { type Job, records } from '../../../../core/project/job.ts'
import { addDays } from '../../../../core/time/local-date.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { newId } from '../../../state/new-id.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { dateEntry, decimalNumber, orNothing } from '../../parts/entries.ts'
import { keepDealing } from './keep-dealing.ts'
import { priceJob } from './use-agreement.ts'

/** Days a quote stands as a rule: shop assumption. */
const usualDays = 30

/** Freezes the price of the day, room by room, with every option and the steps of payment. */
export function QuoteForm(props: {
  readonly job: Job
  readonly estimate: Estimate
  readonly agreement: Agreement
  /** Moment on site. */
  readonly at: string
}) {
  const { job, estimate, at } = props
  const [steps, setSteps] = useState(usualSteps)
  const today = at.slice(0, 10)
  const [validUntil, setValidUntil] = useState<string | null>(addDays(today, usualDays))
  const options = useMemo(() => pricedOptions(priceJob, job), [job])
  const misfit = options.find(({ price }) => !price.ok)
  const isTooMuch = steps.reduce((sum, { percent }) => sum + percent, 0) > 100
  const number = nextNumber(records(job.dealings), 'quoted')

  function quote() {
    keepDealing(
      `Write down quote ${number}`,
      {
        id: newId('dealing'),
        kind: 'quoted',
        on: today,
        number,
        validUntil,
        lines: quoteLines(estimate),
        options: options.flatMap(({ option, price }) =>
          price.ok
            ? [{ ...option, beforeTaxCents: price.value.beforeTaxCents, taxCents: price.value.taxCents }]
            : [],
        ),
        steps,
      },
      at,
    )
  }

  return (
    <section className="block" aria-label="Quote">
      <h3>{number === 1 ? 'Give the quote' : `Quote again: version ${number}`}</h3>
      <p>
        <strong>{formatCents(estimate.totals.total)}</strong> with tax
        {options.length === 0 ? ', no options.' : ':'}
      </p>
      <ul>
        {options.map(({ option, price }) => (
          <li key={option.id}>
            {option.name}: {price.ok ? formatCents(totalCents(price.value)) : price.problem.sentence}
          </li>
        ))}
      </ul>
      <div className="field-grid">
        {steps.map((step, index) => (
          <EntryField
            key={step.name}
            label={`${step.name}, ${step.when}`}
            shown={String(step.percent)}
            read={decimalNumber(0, 100)}
            unit="%"
            width="short"
            onCommit={(percent) =>
              setSteps(steps.map((each, place) => (place === index ? { ...each, percent } : each)))
            }
          />
        ))}
        <EntryField
          label="Stands until"
          kind="date"
          shown={validUntil ?? ''}
          read={orNothing(dateEntry)}
          onCommit={setValidUntil}
        />
      </div>
      <p className="quiet">
        The shares are a shop assumption; the last step takes what is left. Some states limit what may be
        taken before work begins: look it up for yours.
      </p>
      {isTooMuch ? <p role="alert">The steps come to more than 100 %.</p> : null}
      <div className="button-row">
        <Button className="act-button" isDisabled={misfit !== undefined || isTooMuch} onPress={quote}>
          Write down the quote as given
        </Button>
      </div>
    </section>
  )
}
