import { useState } from 'react'
import type { Estimate, EstimateLine, EstimateLineKind } from '../../../core/price/estimate-types.ts'
import type { Job } from '../../../core/project/job.ts'
import { surfaceClassWords } from '../../../core/specification/trade-words.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { formatCents } from '../../../core/units/money.ts'
import { Callout } from '../parts/Callout.tsx'
import { type Column, PickTable } from '../parts/PickTable.tsx'
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

/** Every line of the price with its arithmetic, and the house's percentages beside it. */
export function EstimateTab({ job, estimate }: { readonly job: Job; readonly estimate: Estimate }) {
  const [picked, setPicked] = useState<string | null>(null)
  const line = estimate.lines.find((each) => each.key === picked)
  return (
    <div className="two-panes">
      <div className="pane pane-wide">
        {estimate.doubts.map((doubt) => (
          <Callout key={doubt} kind="wait" title="In doubt">
            {doubt}
          </Callout>
        ))}
        <div className="scroll">
          <PickTable
            label="Estimate"
            columns={columnsOf(estimate)}
            rows={estimate.lines}
            keyOf={(each) => each.key}
            picked={picked}
            onPick={setPicked}
          />
        </div>
      </div>
      <aside className="pane pane-side" aria-label="How the price came about">
        <Totals estimate={estimate} />
        {line === undefined ? null : (
          <section className="block">
            <h3>{line.label}</h3>
            <p>{line.derivation}</p>
            <p className="quiet">Rounded to the cent once, here.</p>
          </section>
        )}
        <PricePercentages rules={job.houseRules.price} />
      </aside>
    </div>
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
    [`Labour, ${formatMinutes(totals.labourMinutes)} with burden`, totals.labour],
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
