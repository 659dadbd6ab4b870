import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import type { Agreement } from '../../../../core/agreement/agreement.ts'
import { type InvoiceAsk, type InvoiceLine, invoiceLines } from '../../../../core/agreement/invoices.ts'
import { sumMoney, totalCents } from '../../../../core/agreement/taxed-money.ts'
import { jobProgress } from '../../../../core/progress/room-progress.ts'
import type { Job } from '../../../../core/project/job.ts'
import type { Outcome } from '../../../../core/project/problem.ts'
import type { Specification } from '../../../../core/specification/types.ts'
import { addDays } from '../../../../core/time/local-date.ts'
import { type Cents, formatCents, roundToCents } from '../../../../core/units/money.ts'
import { newId } from '../../../state/new-id.ts'
import { takePaperNumber } from '../../../state/paper-numbers.ts'
import { Choice } from '../../parts/Choice.tsx'
import { keepDealing } from '../../parts/dealings/keep-dealing.ts'
import { useNumbered } from '../../parts/dealings/use-numbered.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { dateEntry, decimalNumber, moneyEntry, orNothing, words } from '../../parts/entries.ts'

interface Parts {
  readonly job: Job
  readonly specification: Specification
  readonly agreement: Agreement
  /** Moment on site. */
  readonly at: string
}

/** Days to pay an invoice as a rule: shop assumption. */
const usualDaysToPay = 14

/** The next invoice: by the steps of payment, by what is done, or for all that is left. */
export function InvoiceForm({ job, specification, agreement, at }: Parts) {
  const today = at.slice(0, 10)
  const done = useMemo(() => {
    const share = jobProgress(job, specification, at).share
    return Math.floor(share * 100)
  }, [job, specification, at])
  const [chosen, setChosen] = useState<string | null>(null)
  const [percent, setPercent] = useState<number | null>(null)
  const [dueOn, setDueOn] = useState<string | null>(addDays(today, usualDaysToPay))
  const { isTaking, withNumber } = useNumbered(() => takePaperNumber('invoice'))
  const steps = agreement.quote?.steps ?? []
  const asks: readonly Ask[] = [
    ...steps.map(({ name, when }, step) => ({
      id: `step-${step}`,
      label: name,
      note: when,
      ask: { kind: 'step', step } as const,
    })),
    {
      id: 'done',
      label: 'What is done',
      note: 'a share of the work by passes',
      ask: { kind: 'done', percent: percent ?? done },
    },
    {
      id: 'rest',
      label: 'All that is left',
      note: 'the agreed price and every change',
      ask: { kind: 'rest' },
    },
  ]
  const offered = asks.map((each) => ({ ...each, lines: invoiceLines(agreement, each.ask) }))
  const pick =
    offered.find(({ id }) => id === chosen) ?? offered.find(({ lines }) => lines.ok) ?? offered.at(-1)
  if (pick === undefined) return null
  const { lines } = pick

  function make(number: number) {
    if (pick === undefined || !lines.ok) return
    const isDone = keepDealing(
      `Make invoice ${number}`,
      {
        id: newId('dealing'),
        kind: 'invoiced',
        on: today,
        number,
        title: pick.label,
        credits: null,
        dueOn,
        lines: [...lines.value],
      },
      at,
    )
    if (isDone) setChosen(null)
  }

  return (
    <section className="block" aria-label="New invoice">
      <h3>Next invoice</h3>
      <div className="field-grid">
        <Choice label="For" options={asks} chosen={pick.id} onChoose={setChosen} />
        {pick.id === 'done' ? (
          <EntryField
            label="Done"
            shown={String(percent ?? done)}
            read={decimalNumber(0, 100)}
            unit="%"
            width="short"
            onCommit={setPercent}
          />
        ) : null}
        <EntryField
          label="To be paid by"
          kind="date"
          shown={dueOn ?? ''}
          read={orNothing(dateEntry)}
          onCommit={setDueOn}
        />
      </div>
      <InvoicePreview lines={lines} />
      <div className="button-row">
        <Button className="act-button" isDisabled={!lines.ok || isTaking} onPress={() => withNumber(make)}>
          Make the invoice
        </Button>
      </div>
    </section>
  )
}

interface Ask {
  readonly id: string
  readonly label: string
  readonly note: string
  readonly ask: InvoiceAsk
}

function InvoicePreview({ lines }: { readonly lines: Outcome<readonly InvoiceLine[]> }) {
  if (!lines.ok) return <p role="status">{lines.problem.sentence}</p>
  return (
    <ul role="status">
      {lines.value.map((line) => (
        <li key={line.changeId ?? 'price'}>
          {line.label}: {formatCents(totalCents(line))}
        </li>
      ))}
      <li>
        <strong>{formatCents(totalCents(sumMoney(lines.value)))}</strong> with tax
      </li>
    </ul>
  )
}

/** Money that came in. */
export function PaymentForm({ agreement, at }: Parts) {
  const [typed, setTyped] = useState<Cents | null>(null)
  const [how, setHow] = useState('check')
  const [on, setOn] = useState(at.slice(0, 10))
  const due = roundToCents(Math.max(0, agreement.dueCents))
  const cents = typed ?? due

  function keep() {
    const isDone = keepDealing(
      'Write down a payment',
      { id: newId('dealing'), kind: 'paid', on, cents, how, note: '' },
      at,
    )
    if (isDone) setTyped(null)
  }

  return (
    <section className="block" aria-label="Payment">
      <h3>Payment</h3>
      <div className="field-grid">
        <EntryField
          label="Amount"
          shown={(cents / 100).toFixed(2)}
          read={moneyEntry}
          unit="$"
          width="short"
          onCommit={setTyped}
        />
        <EntryField label="How" shown={how} read={words(200)} width="short" onCommit={setHow} />
        <EntryField label="Came in on" kind="date" shown={on} read={dateEntry} onCommit={setOn} />
      </div>
      <div className="button-row">
        <Button className="plain-button" isDisabled={cents === 0} onPress={keep}>
          Write down the payment
        </Button>
      </div>
    </section>
  )
}

/** Work has begun, work is finished: each once. */
export function StageButtons({ agreement: { stage }, at }: Parts) {
  const say = (action: string, kind: 'begun' | 'finished') =>
    keepDealing(action, { id: newId('dealing'), kind, on: at.slice(0, 10) }, at)
  if (stage === 'finished' || stage === 'paid') return null
  return (
    <section className="block" aria-label="The work">
      <h3>The work</h3>
      <div className="button-row">
        {stage === 'accepted' ? (
          <Button className="plain-button" onPress={() => say('Write down that work has begun', 'begun')}>
            Work has begun
          </Button>
        ) : null}
        <Button className="plain-button" onPress={() => say('Write down that work is finished', 'finished')}>
          Work is finished
        </Button>
      </div>
    </section>
  )
}
