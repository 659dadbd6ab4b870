import type { ComparedMaterial } from '../../../../core/progress/afterwards/compared-material.ts'
import type { JobMoney } from '../../../../core/progress/afterwards/compared-money.ts'
import type { LengthUnitSystem } from '../../../../core/units/length.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { formatVolume } from '../../../../core/units/volume.ts'
import { ComparedTable } from './ComparedTable.tsx'

/** What the job cost and left, as priced and as it came out. */
export function MoneyCompared({ money }: { readonly money: JobMoney }) {
  const { lines, cost, overheadCents, priceCents, isAgreed, left } = money
  const price = isAgreed ? 'Agreed price, changes in it' : 'Price of the estimate, nothing is agreed'
  return (
    <section className="block" aria-label="Money">
      <h3>Money, before tax</h3>
      <ComparedTable
        heads={['What', 'Planned', 'Actual', 'Over or under']}
        rows={[
          ...lines.map(({ key, label, plannedCents, realCents }) => ({
            key,
            cells: [label, ...moneyCells(plannedCents, realCents)],
          })),
          { key: 'cost', cells: ['Cost', ...moneyCells(cost.plannedCents, cost.realCents)], isSum: true },
          { key: 'price', cells: [price, ...moneyCells(priceCents, priceCents)] },
          { key: 'overhead', cells: ['Overhead as priced', ...moneyCells(overheadCents, overheadCents)] },
        ]}
        sum={['Left: profit, and contingency not needed', ...moneyCells(left.plannedCents, left.realCents)]}
      />
      <p className="quiet">
        Where nothing is written down, a line counts as planned. Labor is minutes at wages with burden.
      </p>
    </section>
  )
}

function moneyCells(planned: number, real: number | null): readonly string[] {
  const difference = (real ?? planned) - planned
  return [
    formatCents(planned),
    real === null ? '–' : formatCents(real),
    difference === 0 ? '–' : `${difference > 0 ? '+' : '−'} ${formatCents(Math.abs(difference))}`,
  ]
}

/** Cans by product and color: counted, to be bought, used. */
export function MaterialCompared(props: {
  readonly rows: readonly ComparedMaterial[]
  readonly system: LengthUnitSystem
}) {
  const { rows, system } = props
  const volume = (gallons: number) => (gallons === 0 ? '–' : formatVolume(gallons, system))
  return (
    <section className="block" aria-label="Material">
      <h3>Paint and material</h3>
      <ComparedTable
        heads={['Product', 'Needed', 'Bought, as planned', 'Used']}
        rows={rows.map(({ key, label, neededGallons, boughtGallons, usedGallons }) => ({
          key,
          cells: [label, volume(neededGallons), volume(boughtGallons), volume(usedGallons)],
        }))}
      />
    </section>
  )
}
