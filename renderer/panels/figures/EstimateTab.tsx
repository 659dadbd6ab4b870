import { useState } from 'react'
import type { Estimate, EstimateLine, EstimateLineKind } from '../../../core/price/estimate-types.ts'
import { type PriceGrouping, priceGroupings, priceGroupingWords } from '../../../core/price/price-picture.ts'
import type { Job } from '../../../core/project/job.ts'
import { surfaceClassWords } from '../../../core/specification/trade-words.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { formatCents } from '../../../core/units/money.ts'
import { capital } from '../../../core/words/text.ts'
import { QuietNote } from '../parts/Callout.tsx'
import { optionsOf } from '../parts/Choice.tsx'
import { OneOf } from '../parts/OneOf.tsx'
import { type Column, PickTable } from '../parts/PickTable.tsx'
import { HowSure } from './HowSure.tsx'
import { PriceBars } from './PriceBars.tsx'
import { PricePercentages } from './PricePercentages.tsx'

const kindWords: Readonly<Record<EstimateLineKind, string>> = {
  labour: 'Labor with burden',
  material: 'Material',
  sundry: 'Sundries',
  overhead: 'Overhead',
  contingency: 'Contingency',
  profit: 'Profit',
  materialsTax: 'Tax on materials',
  labourTax: 'Tax on labor',
}

type Shown = PriceGrouping | 'line'

interface Picked {
  readonly label: string
  readonly derivation: string
}

/** The price as bars by room or kind of work, or line by line with its arithmetic, and the house's percentages beside it. */
export function EstimateTab(props: {
  readonly job: Job
  readonly specification: Specification
  readonly estimate: Estimate
}) {
  const { job, estimate } = props
  const [shown, setShown] = useState<Shown>('room')
  const [picked, setPicked] = useState<Picked | null>(null)

  function show(next: Shown) {
    setShown(next)
    setPicked(null)
  }

  return (
    <div className="two-panes">
      <div className="pane pane-wide">
        {estimate.doubts.map((doubt) => (
          <QuietNote key={doubt} kind="wait" title="In doubt" words={doubt} />
        ))}
        <OneOf
          label="The price by"
          options={[...optionsOf(priceGroupings, priceGroupingWords), { id: 'line', label: 'Every line' }]}
          chosen={shown}
          onChoose={show}
        />
        <div className="scroll">
          {shown === 'line' ? (
            <LineTable estimate={estimate} onPick={setPicked} />
          ) : (
            <PriceBars key={shown} {...props} grouping={shown} onPick={setPicked} />
          )}
        </div>
      </div>
      <aside className="pane pane-side" aria-label="How the price came about">
        {picked === null ? null : (
          <section className="block" role="status">
            <h3>{picked.label}</h3>
            <p>{capital(picked.derivation)}</p>
          </section>
        )}
        <Totals estimate={estimate} />
        <HowSure {...props} />
        <PricePercentages rules={job.houseRules.price} />
      </aside>
    </div>
  )
}

function LineTable(props: { readonly estimate: Estimate; readonly onPick: (line: EstimateLine) => void }) {
  const { estimate, onPick } = props
  const [picked, setPicked] = useState<string | null>(null)
  return (
    <PickTable
      label="Estimate"
      columns={columnsOf(estimate)}
      rows={estimate.lines}
      keyOf={(each) => each.key}
      picked={picked}
      onPick={(key, line) => {
        setPicked(key)
        onPick(line)
      }}
    />
  )
}

function columnsOf(estimate: Estimate): readonly Column<EstimateLine>[] {
  return [
    { id: 'label', head: 'Line', cell: (line) => line.label, foot: 'The whole price' },
    {
      id: 'kind',
      head: 'Kind',
      cell: (line) =>
        line.surfaceClass === null
          ? kindWords[line.kind]
          : `${kindWords[line.kind]}, ${surfaceClassWords[line.surfaceClass].toLowerCase()}`,
      foot: '',
    },
    {
      id: 'cents',
      head: 'Amount',
      isNumber: true,
      cell: (line) => formatCents(line.cents),
      foot: formatCents(estimate.totals.total),
    },
  ]
}

function Totals({ estimate }: { readonly estimate: Estimate }) {
  const { totals } = estimate
  const lines = [
    [`Labor, ${formatMinutes(totals.labourMinutes)} with burden`, totals.labour],
    ['Materials', totals.materials],
    ['Sundries', totals.sundries],
    ['Overhead', totals.overhead],
    ['Contingency', totals.contingency],
    ['Profit', totals.profit],
    ['Before tax', totals.beforeTax],
    ['Tax', totals.tax],
  ] as const
  return (
    <section className="block">
      <table className="sum-table">
        <tbody>
          {lines.map(([name, cents]) => (
            <tr key={name}>
              <td>{name}</td>
              <td className="number">{formatCents(cents)}</td>
            </tr>
          ))}
          <tr className="sum-total">
            <td>Total</td>
            <td className="number">{formatCents(totals.total)}</td>
          </tr>
        </tbody>
      </table>
      <p className="quiet">{basisWords[estimate.basis]}</p>
    </section>
  )
}

/** What the labor in the price is the pay for. */
const basisWords: Readonly<Record<Estimate['basis'], string>> = {
  accepted: 'Labor is what the accepted plan pays: work, setting up, moving, changing product and half days.',
  first: 'No plan is accepted yet. Labor is what a first plan would pay; it is made the same way each time.',
  hours: 'Labor is counted from the hours, with setting up each day; no plan is priced yet.',
}
