import { useState } from 'react'
import type { Estimate } from '../../../core/price/estimate-types.ts'
import { type PriceBar, type PriceGrouping, priceBars } from '../../../core/price/price-picture.ts'
import type { Job } from '../../../core/project/job.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { formatCents } from '../../../core/units/money.ts'
import { type Column, PickTable } from '../parts/PickTable.tsx'

interface Row {
  readonly key: string
  readonly label: string
  readonly cents: number
  readonly derivation: string
  /** Of a bar that opens; null for a line in one. */
  readonly bar: PriceBar | null
}

/** The price as bars of one scale: each opens into its lines, and all of them are the price with tax. */
export function PriceBars(props: {
  readonly job: Job
  readonly specification: Specification
  readonly estimate: Estimate
  readonly grouping: PriceGrouping
  readonly onPick: (picked: { readonly label: string; readonly derivation: string }) => void
}) {
  const { job, specification, estimate, grouping } = props
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set())
  const [picked, setPicked] = useState<string | null>(null)
  const bars = priceBars(job, specification, estimate, grouping)
  const longest = Math.max(1, ...bars.map(({ cents }) => Math.abs(cents)))
  const rows = bars.flatMap((bar): readonly Row[] => [
    { ...bar, bar },
    ...(open.has(bar.key) ? bar.parts.map((part): Row => ({ ...part, bar: null })) : []),
  ])

  function pick(key: string, row: Row) {
    setPicked(key)
    props.onPick(row)
    if (row.bar === null) return
    const next = new Set(open)
    if (!next.delete(key)) next.add(key)
    setOpen(next)
  }

  return (
    <PickTable
      label="Price"
      columns={columnsOf(estimate.totals.total, longest)}
      rows={rows}
      keyOf={({ key }) => key}
      picked={picked}
      onPick={pick}
      isHead={({ bar }) => bar !== null}
      isOpen={({ bar, key }) => (bar === null ? null : open.has(key))}
      depthOf={({ bar }) => (bar === null ? 1 : 0)}
    />
  )
}

function columnsOf(total: number, longest: number): readonly Column<Row>[] {
  return [
    { id: 'label', head: 'What', cell: ({ label }) => label, foot: 'The whole price, with tax' },
    {
      id: 'bar',
      head: 'Of the price',
      cell: ({ cents, bar }) => (
        <span className="price-bar-room">
          <span
            className={bar === null ? 'price-bar price-bar-part' : 'price-bar'}
            style={{ width: `${(100 * Math.abs(cents)) / longest}%` }}
          />
        </span>
      ),
    },
    {
      id: 'share',
      head: 'Share',
      isNumber: true,
      cell: ({ cents }) => (total === 0 ? '–' : `${((100 * cents) / total).toFixed(1)}%`),
      foot: '',
    },
    {
      id: 'cents',
      head: 'Amount',
      isNumber: true,
      cell: ({ cents }) => formatCents(cents),
      foot: formatCents(total),
    },
  ]
}
