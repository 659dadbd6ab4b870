import { useState } from 'react'
import { Button } from 'react-aria-components'
import { type Job, type RecordOf, records } from '../../../../core/project/job.ts'
import { receiptKinds } from '../../../../core/project/outcome-records.ts'
import { dateWords } from '../../../../core/time/date-words.ts'
import { type Cents, formatCents } from '../../../../core/units/money.ts'
import { newId } from '../../../state/new-id.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { EntryField } from '../../parts/EntryField.tsx'
import { putRecord, removeRecord } from '../../parts/edits.ts'
import { dateEntry, moneyEntry, words } from '../../parts/entries.ts'

type ReceiptKind = RecordOf<'receipts'>['kind']

const kindWords: Readonly<Record<ReceiptKind, string>> = {
  material: 'Paint and material',
  sundry: 'Sundries',
  other: 'Other',
}

/** Money that was spent, receipt by receipt. */
export function ReceiptForm({ job, on }: { readonly job: Job; readonly on: string }) {
  const [cents, setCents] = useState<Cents | null>(null)
  const [kind, setKind] = useState<ReceiptKind>('material')
  const [note, setNote] = useState('')
  const [day, setDay] = useState<string | null>(null)
  const { unitSystem } = job.header

  function keep() {
    if (cents === null) return
    const record = { id: newId('receipt'), on: day ?? on, kind, note, cents }
    if (!putRecord('Write down a receipt', 'receipts', record)) return
    setCents(null)
    setNote('')
  }

  return (
    <section className="block" aria-label="Receipts">
      <h3>Receipts</h3>
      <ul className="outcome-list">
        {records(job.receipts).map((receipt) => (
          <li key={receipt.id}>
            <span>
              {dateWords(receipt.on, unitSystem)}: {formatCents(receipt.cents)},{' '}
              {kindWords[receipt.kind].toLowerCase()}
              {receipt.note === '' ? '' : `, ${receipt.note}`}
            </span>
            <Button
              className="plain-button remove"
              aria-label={`Remove the receipt of ${formatCents(receipt.cents)}`}
              onPress={() => removeRecord('Remove a receipt', 'receipts', receipt.id)}
            >
              Remove
            </Button>
          </li>
        ))}
      </ul>
      <div className="field-grid">
        <EntryField
          label="Amount before tax"
          shown={cents === null ? '' : (cents / 100).toFixed(2)}
          read={moneyEntry}
          unit="$"
          width="short"
          onCommit={setCents}
        />
        <Choice
          label="Spent for"
          options={optionsOf(receiptKinds, kindWords)}
          chosen={kind}
          onChoose={setKind}
        />
        <EntryField label="Where, or on what" shown={note} read={words(200)} onCommit={setNote} />
        <EntryField label="On" kind="date" shown={day ?? on} read={dateEntry} onCommit={setDay} />
      </div>
      <div className="button-row">
        <Button className="plain-button" isDisabled={cents === null} onPress={keep}>
          Write down the receipt
        </Button>
      </div>
    </section>
  )
}
