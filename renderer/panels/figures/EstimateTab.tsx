import { useState } from 'react'
import type { Estimate, EstimateLine, EstimateLineKind } from '../../../core/price/estimate-types.ts'
import type { HouseRules, Job } from '../../../core/project/job.ts'
import { surfaceClassWords } from '../../../core/specification/trade-words.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { formatCents } from '../../../core/units/money.ts'
import { Callout } from '../parts/Callout.tsx'
import { Choice } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { changeHouseRules } from '../parts/edits.ts'
import { decimalNumber, moneyEntry } from '../parts/entries.ts'
import { type Column, PickTable } from '../parts/PickTable.tsx'

type PriceRules = HouseRules['price']

const kindWords: Readonly<Record<EstimateLineKind, string>> = {
  labour: 'Labor with burden',
  material: 'Material',
  sundry: 'Used up',
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
        <Percentages rules={job.houseRules.price} />
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
    ['Used up', totals.sundries],
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

function Percentages({ rules }: { readonly rules: PriceRules }) {
  const change = (action: string, changes: Partial<PriceRules>) =>
    changeHouseRules(action, { price: { ...rules, ...changes } })
  return (
    <section className="block">
      <h3>House percentages</h3>
      <div className="field-grid">
        <Percent
          label="Burden on wages"
          value={rules.burdenPercent}
          most={300}
          onChange={(burdenPercent) => change('Change the burden', { burdenPercent })}
        />
        <Percent
          label="Overhead on cost"
          value={rules.overheadPercent}
          most={300}
          onChange={(overheadPercent) => change('Change the overhead', { overheadPercent })}
        />
        <Percent
          label="Contingency"
          value={rules.contingencyPercent}
          most={100}
          onChange={(contingencyPercent) => change('Change the contingency', { contingencyPercent })}
        />
        <Percent
          label="Profit"
          value={rules.profit.percent}
          most={95}
          onChange={(percent) => change('Change the profit', { profit: { ...rules.profit, percent } })}
        />
        <Choice
          label="Profit is a"
          options={[
            { id: 'margin', label: 'margin', note: 'A share of the price: 20 % margin is 25 % on cost.' },
            {
              id: 'markup',
              label: 'markup',
              note: 'An addition to cost: 20 % markup is 16.7 % of the price.',
            },
          ]}
          chosen={rules.profit.basis}
          onChoose={(basis) =>
            change('Change what profit is counted on', { profit: { ...rules.profit, basis } })
          }
        />
        <EntryField
          label="Used up by the hour"
          shown={(rules.sundriesCentsPerHour / 100).toFixed(2)}
          read={moneyEntry}
          width="short"
          unit="$ / h"
          onCommit={(sundriesCentsPerHour) =>
            change('Change the allowance by the hour', { sundriesCentsPerHour })
          }
        />
        <Percent
          label="Tax on materials"
          value={rules.materialsTaxPercent}
          most={50}
          onChange={(materialsTaxPercent) => change('Change the tax on materials', { materialsTaxPercent })}
        />
        <Percent
          label="Tax on labor"
          value={rules.labourTaxPercent}
          most={50}
          onChange={(labourTaxPercent) => change('Change the tax on labor', { labourTaxPercent })}
        />
      </div>
    </section>
  )
}

function Percent(props: {
  readonly label: string
  readonly value: number
  readonly most: number
  readonly onChange: (value: number) => void
}) {
  return (
    <EntryField
      label={props.label}
      shown={String(props.value)}
      read={decimalNumber(0, props.most)}
      unit="%"
      width="short"
      onCommit={props.onChange}
    />
  )
}
