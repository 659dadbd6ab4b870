import '../parts/station-page.css'
import './figures.css'
import { formatMinutes } from '../../../core/units/duration.ts'
import { formatCents } from '../../../core/units/money.ts'
import { useJob } from '../../state/app.ts'
import { useSpecification, useTakeoff } from '../../state/derived.ts'
import { usePaidEstimate } from '../../state/planner.ts'
import { Empty } from '../parts/Empty.tsx'
import { drawFirstRoom } from '../parts/next-steps.ts'
import { PageTabs } from '../parts/PageTabs.tsx'
import { AfterwardsTab } from './afterwards/AfterwardsTab.tsx'
import { AgreementTab } from './agreement/AgreementTab.tsx'
import { OptionsTab } from './agreement/OptionsTab.tsx'
import { EstimateTab } from './EstimateTab.tsx'
import { HoursTab } from './HoursTab.tsx'
import { MaterialsTab } from './MaterialsTab.tsx'
import { QuantityTab } from './QuantityTab.tsx'
import { RatesTab } from './RatesTab.tsx'

/** How much, how long and what it costs; every figure with how it came about. */
export function FiguresStation() {
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  const estimate = usePaidEstimate()
  if (takeoff.surfaces.length === 0) {
    return (
      <section className="station-page figures">
        <Empty title="Nothing measured yet" next={drawFirstRoom}>
          <p>
            Figures come from the sketch. Draw the first room at House; its walls, ceiling, trim and sash are
            measured here while you draw.
          </p>
        </Empty>
      </section>
    )
  }
  const all = { job, takeoff, specification, estimate }
  return (
    <section className="station-page figures" aria-label="Figures">
      <PageTabs
        label="Figures"
        tabs={[
          { id: 'quantities', title: 'Quantities', page: () => <QuantityTab {...all} /> },
          { id: 'hours', title: 'Hours', page: () => <HoursTab {...all} /> },
          { id: 'materials', title: 'Materials', page: () => <MaterialsTab {...all} /> },
          { id: 'estimate', title: 'Estimate', page: () => <EstimateTab {...all} /> },
          { id: 'options', title: 'Options', page: () => <OptionsTab {...all} /> },
          { id: 'agreement', title: 'Agreement', page: () => <AgreementTab {...all} /> },
          { id: 'afterwards', title: 'Afterwards', page: () => <AfterwardsTab {...all} /> },
          { id: 'rates', title: 'Rates', page: () => <RatesTab {...all} /> },
        ]}
        aside={
          <p className="tabs-sum">
            <strong>{formatMinutes(estimate.totals.labourMinutes)}</strong>{' '}
            {estimate.basis === 'hours' ? 'of work' : 'paid'},{' '}
            <strong>{formatCents(estimate.totals.total)}</strong> with tax
          </p>
        }
      />
    </section>
  )
}
