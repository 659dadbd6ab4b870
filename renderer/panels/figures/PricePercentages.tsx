import type { HouseRules } from '../../../core/project/job.ts'
import { Choice } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { changeHouseRules } from '../parts/edits.ts'
import { decimalNumber, moneyEntry } from '../parts/entries.ts'

type PriceRules = HouseRules['price']

/** What is put on wages and cost to make a price. */
export function PricePercentages({ rules }: { readonly rules: PriceRules }) {
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
            { id: 'margin', label: 'margin', note: 'A share of the price: a 20% margin adds 25% to cost.' },
            {
              id: 'markup',
              label: 'markup',
              note: 'An addition to cost: a 20% markup is 16.7% of the price.',
            },
          ]}
          chosen={rules.profit.basis}
          onChoose={(basis) =>
            change('Change what profit is counted on', { profit: { ...rules.profit, basis } })
          }
        />
        <EntryField
          label="Sundries by the hour"
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
