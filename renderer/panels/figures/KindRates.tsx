import { useState } from 'react'
import { Button } from 'react-aria-components'
import { rateOf } from '../../../core/price/labour.ts'
import type { Job } from '../../../core/project/job.ts'
import { rateIdSchema } from '../../../core/project/shop-records.ts'
import { operationWords } from '../../../core/specification/trade-words.ts'
import {
  type Operation,
  type Specification,
  type WoodworkKind,
  woodworkKinds,
} from '../../../core/specification/types.ts'
import { woodworkWords } from '../../../core/specification/woodwork.ts'
import { Choice } from '../parts/Choice.tsx'
import { putRecord, removeRecord } from '../parts/edits.ts'

/** Gives one kind of woodwork a pace of its own, starting from that of all trim, and takes it away again. */
export function KindRates({
  job,
  specification,
}: {
  readonly job: Job
  readonly specification: Specification
}) {
  const steps = specification.steps.filter(({ surfaceClass }) => surfaceClass === 'trim')
  const operations = [...new Set(steps.map(({ operation }) => operation))]
  const present = new Set(steps.flatMap(({ parts }) => parts.map(({ kind }) => kind)))
  const kinds = woodworkKinds.filter((kind) => present.has(kind))
  const [operation, setOperation] = useState<Operation | null>(null)
  const [kind, setKind] = useState<WoodworkKind | null>(null)
  if (kinds.length < 2) return null
  const id = `${operation}-${kind}`

  function give(of: Operation) {
    const now = rateOf(job, [`${of}-trim`, of])
    if (now !== undefined)
      putRecord('Give a kind of woodwork its own rate', 'rates', { ...now, id: rateIdSchema.parse(id) })
  }

  return (
    <section className="tab-intro" aria-label="Rates by kind of woodwork">
      <p>Crown, casings and base of a room go by one rate for trim until one of them is given its own.</p>
      <Choice
        label="Work"
        options={operations.map((each) => ({ id: each, label: operationWords[each] }))}
        chosen={operation}
        onChoose={setOperation}
      />
      <Choice
        label="Kind of woodwork"
        options={kinds.map((each) => ({ id: each, label: woodworkWords[each] }))}
        chosen={kind}
        onChoose={setKind}
      />
      {operation === null || kind === null ? null : job.rates[id] === undefined ? (
        <Button className="plain-button" onPress={() => give(operation)}>
          Give it its own rate
        </Button>
      ) : (
        <Button
          className="plain-button"
          onPress={() => removeRecord('Take a rate of its own away', 'rates', id)}
        >
          Go by the rate for trim
        </Button>
      )}
    </section>
  )
}
