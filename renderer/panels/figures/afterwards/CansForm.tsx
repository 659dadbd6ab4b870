import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Estimate } from '../../../../core/price/estimate-types.ts'
import type { MaterialLine } from '../../../../core/price/materials.ts'
import { type Job, type RecordOf, records } from '../../../../core/project/job.ts'
import { dateWords } from '../../../../core/time/date-words.ts'
import { newId } from '../../../state/new-id.ts'
import { Choice } from '../../parts/Choice.tsx'
import { EntryField } from '../../parts/EntryField.tsx'
import { putRecord, removeRecord } from '../../parts/edits.ts'
import { decimalNumber } from '../../parts/entries.ts'

/** Cans that were used up, of what the job needs; parts of a can count. */
export function CansForm(props: { readonly job: Job; readonly estimate: Estimate; readonly on: string }) {
  const { job, estimate, on } = props
  const [lineKey, setLineKey] = useState<string | null>(null)
  const [size, setSize] = useState<string | null>(null)
  const [count, setCount] = useState(1)
  const line = estimate.materials.find(({ key }) => key === lineKey) ?? estimate.materials[0]
  const sizes = line === undefined ? [] : (job.products[line.productId]?.containers ?? [])
  const can = sizes.find(({ name }) => name === size) ?? sizes[0]

  function keep() {
    if (line === undefined || can === undefined) return
    const { productId, colourId } = line
    const record = { id: newId('cans'), on, productId, colourId, gallons: can.gallons, count }
    if (putRecord('Write down cans used', 'cansUsed', record)) setCount(1)
  }

  return (
    <section className="block" aria-label="Cans used">
      <h3>Cans used</h3>
      <CansList job={job} />
      {line === undefined || can === undefined ? (
        <p className="quiet">The job needs no paint yet.</p>
      ) : (
        <>
          <div className="field-grid">
            <Choice
              label="Product"
              options={estimate.materials.map((each) => ({ id: each.key, label: nameOf(each) }))}
              chosen={line.key}
              onChoose={setLineKey}
            />
            <Choice
              label="Can"
              options={sizes.map(({ name }) => ({ id: name, label: name }))}
              chosen={can.name}
              onChoose={setSize}
            />
            <EntryField
              label="How many"
              hint="2.5 for two and a half"
              shown={String(count)}
              read={decimalNumber(0.01, 1000)}
              width="short"
              onCommit={setCount}
            />
          </div>
          <div className="button-row">
            <Button className="plain-button" onPress={keep}>
              Write down the cans
            </Button>
          </div>
        </>
      )}
    </section>
  )
}

function nameOf({ productName, colourName }: MaterialLine): string {
  return colourName === null ? productName : `${productName}, ${colourName}`
}

function CansList({ job }: { readonly job: Job }) {
  return (
    <ul className="outcome-list">
      {records(job.cansUsed).map((cans) => (
        <li key={cans.id}>
          <span>
            {dateWords(cans.on, job.header.unitSystem)}: {canWords(job, cans)}
          </span>
          <Button
            className="plain-button remove"
            aria-label={`Remove ${canWords(job, cans)}`}
            onPress={() => removeRecord('Remove cans used', 'cansUsed', cans.id)}
          >
            Remove
          </Button>
        </li>
      ))}
    </ul>
  )
}

function canWords(job: Job, { productId, colourId, gallons, count }: RecordOf<'cansUsed'>): string {
  const product = job.products[productId]
  const can = product?.containers.find((each) => each.gallons === gallons)?.name ?? `${gallons} gal`
  const colour = job.colours[colourId ?? '']?.name
  return `${count} × ${can}, ${product?.name ?? productId}${colour === undefined ? '' : `, ${colour}`}`
}
