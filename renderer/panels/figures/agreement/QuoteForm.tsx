import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import type { Agreement } from '../../../../core/agreement/agreement.ts'
import { nextVersion, offerMark } from '../../../../core/agreement/proposal-version.ts'
import { offerOf, pricedOptions } from '../../../../core/agreement/quote.ts'
import { totalCents } from '../../../../core/agreement/taxed-money.ts'
import { priceJob } from '../../../../core/agreement/whole-price.ts'
import type { Estimate } from '../../../../core/price/estimate-types.ts'
import type { Job } from '../../../../core/project/job.ts'
import { addDays } from '../../../../core/time/local-date.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { newId } from '../../../state/new-id.ts'
import { keepDealing } from '../../parts/dealings/keep-dealing.ts'
import { useNumbered } from '../../parts/dealings/use-numbered.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { changeBusiness } from '../../parts/edits.ts'
import { dateEntry, decimalNumber, orNothing } from '../../parts/entries.ts'
import { proposalNumberOf } from '../../parts/proposal-number.ts'

/** Freezes the price of the day, room by room, with every option and the steps of payment. */
export function QuoteForm(props: {
  readonly job: Job
  readonly estimate: Estimate
  readonly agreement: Agreement
  /** Moment on site. */
  readonly at: string
}) {
  const { job, estimate, at } = props
  const { paymentSteps, proposal } = job.business
  const today = at.slice(0, 10)
  const [validUntil, setValidUntil] = useState<string | null>(addDays(today, proposal.validDays))
  const options = useMemo(() => pricedOptions(priceJob, job), [job])
  const misfit = options.find(({ price }) => !price.ok)
  const offer = offerOf(job, estimate, options)
  const isTooMuch = offer.steps.reduce((sum, { percent }) => sum + percent, 0) > 100
  const { isTaking, withNumber } = useNumbered(() => proposalNumberOf(job.header))
  const number = nextVersion(job, offerMark(offer), 'quote')

  function quote() {
    keepDealing(
      `Write down quote ${number}`,
      {
        id: newId('dealing'),
        kind: 'quoted',
        on: today,
        number,
        validUntil,
        lines: [...offer.lines],
        options: [...offer.options],
        steps: [...offer.steps],
      },
      at,
    )
  }

  return (
    <section className="block" aria-label="Quote">
      <h3>{number === 1 ? 'Give the quote' : `Quote, version ${number}`}</h3>
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
        {paymentSteps.map((step, index) => (
          <EntryField
            // A step has no id; its place is what it is.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            key={index}
            label={step.name}
            shown={String(step.percent)}
            read={decimalNumber(0, 100)}
            unit="%"
            width="short"
            onCommit={(percent) =>
              changeBusiness('Change the payment steps', {
                paymentSteps: paymentSteps.map((each, place) =>
                  place === index ? { ...each, percent } : each,
                ),
              })
            }
          />
        ))}
        <EntryField
          label="Valid until"
          kind="date"
          shown={validUntil ?? ''}
          read={orNothing(dateEntry)}
          onCommit={setValidUntil}
        />
      </div>
      <p className="quiet">
        {paymentSteps.length === 0
          ? 'The shop sheet names no steps of payment: all of it is asked for at the end.'
          : 'The steps are those of the shop sheet; shares changed here are those of this job and its proposal. The last step takes what is left.'}{' '}
        Some states limit what may be taken before work begins: look it up for yours.
      </p>
      {isTooMuch ? <p role="alert">The steps come to more than 100%.</p> : null}
      <div className="button-row">
        <Button
          className="act-button"
          isDisabled={misfit !== undefined || isTooMuch || isTaking}
          onPress={() => withNumber(quote)}
        >
          Write down the quote as given
        </Button>
      </div>
    </section>
  )
}
