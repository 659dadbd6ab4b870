import { Button } from 'react-aria-components'
import type { Business } from '../../../core/project/business-record.ts'
import { EntryField } from '../../panels/parts/EntryField.tsx'
import { changeBusiness } from '../../panels/parts/edits.ts'
import { decimalNumber, moneyEntry, wholeNumber, words } from '../../panels/parts/entries.ts'
import { OneOf } from '../../panels/parts/OneOf.tsx'

const texts: readonly (readonly [keyof Business['texts'], string])[] = [
  ['notIncluded', 'Not included'],
  ['whoMoves', 'Who moves and covers what'],
  ['hiddenConditions', 'When something hidden is found'],
  ['warranty', 'Warranty'],
  ['terms', 'Other terms'],
]

/** What a proposal says besides the job itself: how long it holds, how it is paid, and the shop's standing sentences. */
export function TextsTab({ business }: { readonly business: Business }) {
  const { proposal } = business
  const change = (next: Partial<Business['proposal']>) =>
    changeBusiness('Change how proposals are made', { proposal: { ...proposal, ...next } })
  return (
    <div className="scroll tab-pad shop-tab">
      <section className="block">
        <h3>Proposal</h3>
        <div className="field-grid">
          <EntryField
            label="Valid for"
            unit="days"
            width="short"
            shown={String(proposal.validDays)}
            read={wholeNumber(1, 730)}
            onCommit={(validDays) => change({ validDays })}
          />
          <EntryField
            label="Colors are needed before the start"
            unit="days"
            width="short"
            shown={String(proposal.colorsDaysBefore)}
            read={wholeNumber(0, 365)}
            onCommit={(colorsDaysBefore) => change({ colorsDaysBefore })}
          />
          <EntryField
            label="Hidden conditions are worked at"
            unit="$ / h"
            width="short"
            shown={(proposal.hiddenHourCents / 100).toFixed(2)}
            read={moneyEntry}
            onCommit={(hiddenHourCents) => change({ hiddenHourCents })}
          />
          <OneOf
            label="Prices"
            options={[
              { id: 'byRoom', label: 'By room' },
              { id: 'inOne', label: 'One price' },
            ]}
            chosen={proposal.prices}
            onChoose={(prices) => change({ prices })}
          />
        </div>
      </section>
      <PaymentSteps steps={business.paymentSteps} />
      <section className="block">
        <h3>Standing sentences</h3>
        <p className="quiet">One sentence a line. What is empty is left out.</p>
        <div className="job-facts">
          {texts.map(([name, label]) => (
            <EntryField
              key={name}
              label={label}
              width="wide"
              lines={3}
              shown={business.texts[name]}
              read={words(4000)}
              onCommit={(text) =>
                changeBusiness(`Change “${label}”`, { texts: { ...business.texts, [name]: text } })
              }
            />
          ))}
        </div>
      </section>
    </div>
  )
}

function PaymentSteps({ steps }: { readonly steps: Business['paymentSteps'] }) {
  const sum = steps.reduce((all, { percent }) => all + percent, 0)
  const set = (paymentSteps: Business['paymentSteps']) =>
    changeBusiness('Change the payment steps', { paymentSteps })
  const put = (index: number, next: Partial<Business['paymentSteps'][number]>) =>
    set(steps.map((step, place) => (place === index ? { ...step, ...next } : step)))
  return (
    <section className="block">
      <h3>Payment steps</h3>
      <ol className="payment-steps">
        {steps.map((step, index) => (
          // A step has no id; its place is what it is.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          <li key={index}>
            <EntryField
              label={`Step ${index + 1} falls due`}
              isBare
              width="wide"
              shown={step.name}
              read={words(200, true)}
              onCommit={(name) => put(index, { name })}
            />
            <EntryField
              label={`Share of step ${index + 1}`}
              isBare
              unit="%"
              width="short"
              shown={String(step.percent)}
              read={decimalNumber(0, 100)}
              onCommit={(percent) => put(index, { percent })}
            />
            <Button
              className="plain-button remove"
              aria-label={`Remove step ${index + 1}`}
              onPress={() => set(steps.filter((_, place) => place !== index))}
            >
              Remove
            </Button>
          </li>
        ))}
      </ol>
      <p className={sum === 100 ? 'quiet' : 'doubtful'}>
        {sum === 100
          ? 'Total 100%.'
          : `Total ${sum}%. Make them add up to 100%; until then a proposal carries a warning.`}
      </p>
      <Button
        className="plain-button"
        isDisabled={steps.length >= 8}
        onPress={() => set([...steps, { name: 'Next step', percent: Math.max(0, 100 - sum) }])}
      >
        Add a step
      </Button>
    </section>
  )
}
