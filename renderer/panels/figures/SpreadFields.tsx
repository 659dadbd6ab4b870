import type { Spreads } from '../../../core/project/outcome-records.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { changeHouseRules } from '../parts/edits.ts'
import { decimalNumber } from '../parts/entries.ts'

type SpreadName = Exclude<keyof Spreads, 'restsOn'>

const fields: readonly { readonly name: SpreadName; readonly label: string; readonly most: number }[] = [
  { name: 'pacePercent', label: 'All hours of a job, give or take', most: 200 },
  { name: 'ratePercent', label: 'One kind of work, give or take', most: 200 },
  { name: 'materialPercent', label: 'Material, give or take', most: 200 },
  { name: 'findingChancePercent', label: 'Rooms in which more is found', most: 100 },
  { name: 'findingSizePercent', label: 'and then adds to preparing it', most: 1000 },
  { name: 'coatAgainPercent', label: 'Coats that are done again', most: 100 },
]

/** How far a job may come out from what was counted. What is typed here is an assumption again. */
export function SpreadFields({ spreads }: { readonly spreads: Spreads }) {
  return (
    <>
      <p className="quiet">
        {spreads.restsOn === 0
          ? 'Shop assumptions, until five finished jobs of the shop say it. Two jobs in three lie within “give or take”.'
          : `From ${spreads.restsOn} finished jobs of the shop. Two jobs in three lie within “give or take”.`}
      </p>
      <div className="field-grid">
        {fields.map(({ name, label, most }) => (
          <EntryField
            key={name}
            label={label}
            shown={String(spreads[name])}
            read={decimalNumber(0, most)}
            unit="%"
            width="short"
            onCommit={(value) =>
              changeHouseRules('Change how far jobs come out', {
                spreads: { ...spreads, [name]: value, restsOn: 0 },
              })
            }
          />
        ))}
      </div>
    </>
  )
}
