import '../parts/desk.css'
import './figures.css'
import { formatMinutes } from '../../../core/units/duration.ts'
import { formatCents } from '../../../core/units/money.ts'
import { useJob } from '../../state/app.ts'
import { useSpecification, useTakeoff } from '../../state/derived.ts'
import { usePaidEstimate } from '../../state/planner.ts'
import { Empty } from '../parts/Empty.tsx'
import { Leaves } from '../parts/Leaves.tsx'
import { EstimateLeaf } from './EstimateLeaf.tsx'
import { HoursLeaf } from './HoursLeaf.tsx'
import { MaterialsLeaf } from './MaterialsLeaf.tsx'
import { QuantityLeaf } from './QuantityLeaf.tsx'
import { RatesLeaf } from './RatesLeaf.tsx'

/** How much, how long and what it costs; every figure with how it came about. */
export function FiguresStation() {
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  const estimate = usePaidEstimate()
  if (takeoff.surfaces.length === 0) {
    return (
      <section className="desk figures">
        <Empty title="Nothing measured yet">
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
    <section className="desk figures" aria-label="Figures">
      <Leaves
        label="Figures"
        leaves={[
          { id: 'quantities', title: 'Quantities', page: () => <QuantityLeaf {...all} /> },
          { id: 'hours', title: 'Hours', page: () => <HoursLeaf {...all} /> },
          { id: 'materials', title: 'Materials', page: () => <MaterialsLeaf {...all} /> },
          { id: 'estimate', title: 'Estimate', page: () => <EstimateLeaf {...all} /> },
          { id: 'rates', title: 'Rates', page: () => <RatesLeaf {...all} /> },
        ]}
        aside={
          <p className="leaves-sum">
            <strong>{formatMinutes(estimate.totals.labourMinutes)}</strong> of work,{' '}
            <strong>{formatCents(estimate.totals.total)}</strong> with tax
          </p>
        }
      />
    </section>
  )
}
