import type { HouseRules } from '../../../core/project/job.ts'
import { PricePercentages } from '../../panels/figures/PricePercentages.tsx'
import { SpreadFields } from '../../panels/figures/SpreadFields.tsx'
import { EntryField } from '../../panels/parts/EntryField.tsx'
import { changeHouseRules } from '../../panels/parts/edits.ts'
import { timeEntry, wholeNumber } from '../../panels/parts/entries.ts'

/** What goes on top of wages and cost, and the hours a site is usually worked. */
export function MoneyTab({ houseRules }: { readonly houseRules: HouseRules }) {
  const { siteHours, setUpMinutes, cleanUpMinutes } = houseRules
  return (
    <div className="scroll tab-pad shop-tab">
      <PricePercentages rules={houseRules.price} />
      <section className="block">
        <h3>How far jobs come out from what was counted</h3>
        <SpreadFields spreads={houseRules.spreads} />
      </section>
      <section className="block">
        <h3>A day on site</h3>
        <div className="field-grid">
          <EntryField
            label="Work may begin at"
            kind="time"
            width="short"
            shown={siteHours.from}
            read={timeEntry}
            onCommit={(from) =>
              changeHouseRules('Change the site hours', { siteHours: { ...siteHours, from } })
            }
          />
          <EntryField
            label="and must end by"
            kind="time"
            width="short"
            shown={siteHours.to}
            read={timeEntry}
            onCommit={(to) => changeHouseRules('Change the site hours', { siteHours: { ...siteHours, to } })}
          />
          <EntryField
            label="Setting up each day"
            unit="min"
            width="short"
            shown={String(setUpMinutes)}
            read={wholeNumber(0, 240)}
            onCommit={(minutes) =>
              changeHouseRules('Change the time for setting up', { setUpMinutes: minutes })
            }
          />
          <EntryField
            label="Clearing away each day"
            unit="min"
            width="short"
            shown={String(cleanUpMinutes)}
            read={wholeNumber(0, 240)}
            onCommit={(minutes) =>
              changeHouseRules('Change the time for clearing away', { cleanUpMinutes: minutes })
            }
          />
        </div>
      </section>
    </div>
  )
}
