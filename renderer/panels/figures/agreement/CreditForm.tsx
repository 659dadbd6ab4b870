import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Agreement } from '../../../../core/agreement/agreement.ts'
import { creditLines } from '../../../../core/agreement/invoices.ts'
import { sumMoney, totalCents } from '../../../../core/agreement/taxed-money.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { newId } from '../../../state/new-id.ts'
import { takePaperNumber } from '../../../state/paper-numbers.ts'
import { Choice } from '../../parts/Choice.tsx'
import { keepDealing } from '../../parts/dealings/keep-dealing.ts'
import { useNumbered } from '../../parts/dealings/use-numbered.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { words } from '../../parts/entries.ts'

/** Takes an invoice back by a credit invoice of its own: neither page is changed, and the right invoice can be made afterwards. */
export function CreditForm({ agreement, at }: { readonly agreement: Agreement; readonly at: string }) {
  const [isOpen, setOpen] = useState(false)
  const standing = agreement.invoices.filter(
    ({ invoice, creditedBy }) => invoice.credits === null && creditedBy === null,
  )
  if (standing.length === 0) return null
  return (
    <section className="block" aria-label="Credit invoice">
      <h3>An invoice was wrong</h3>
      {isOpen ? (
        <Crediting agreement={agreement} standing={standing} at={at} onDone={() => setOpen(false)} />
      ) : (
        <>
          <p className="quiet">
            An invoice stays as it was given. A credit invoice takes it back whole; then make the right one.
          </p>
          <div className="button-row">
            <Button className="plain-button" onPress={() => setOpen(true)}>
              Take an invoice back
            </Button>
          </div>
        </>
      )}
    </section>
  )
}

function Crediting(props: {
  readonly agreement: Agreement
  readonly standing: Agreement['invoices']
  readonly at: string
  readonly onDone: () => void
}) {
  const { agreement, standing, at, onDone } = props
  const [chosen, setChosen] = useState<string | null>(null)
  const [why, setWhy] = useState('')
  const { isTaking, withNumber } = useNumbered(() => takePaperNumber('invoice'))
  const state = standing.find(({ invoice }) => invoice.id === chosen) ?? standing.at(-1)
  if (state === undefined) return null
  const { invoice } = state
  const lines = creditLines(agreement, invoice.id)

  function credit(number: number) {
    if (!lines.ok) return
    const isDone = keepDealing(
      `Take back invoice ${invoice.number}`,
      {
        id: newId('dealing'),
        kind: 'invoiced',
        on: at.slice(0, 10),
        number,
        title: `Takes back invoice ${invoice.number}${why === '' ? '' : `: ${why}`}`,
        credits: invoice.id,
        dueOn: null,
        lines: [...lines.value],
      },
      at,
    )
    if (isDone) onDone()
  }

  return (
    <>
      <div className="field-grid">
        <Choice
          label="Invoice"
          options={standing.map((each) => ({
            id: each.invoice.id,
            label: `${each.invoice.number}: ${each.invoice.title}, ${formatCents(totalCents(each.money))}`,
          }))}
          chosen={invoice.id}
          onChoose={setChosen}
        />
        <EntryField label="What was wrong" width="wide" shown={why} read={words(100)} onCommit={setWhy} />
      </div>
      {lines.ok ? (
        <p role="status">
          <strong>{formatCents(totalCents(sumMoney(lines.value)))}</strong> with tax.
        </p>
      ) : (
        <p role="alert">{lines.problem.sentence}</p>
      )}
      <div className="button-row">
        <Button className="act-button" isDisabled={!lines.ok || isTaking} onPress={() => withNumber(credit)}>
          Make the credit invoice
        </Button>
        <Button className="plain-button" onPress={onDone}>
          Cancel
        </Button>
      </div>
    </>
  )
}
