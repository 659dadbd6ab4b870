import '../parts/station-page.css'
import './finish.css'
import { records } from '../../../core/project/job.ts'
import { useJob } from '../../state/app.ts'
import { useSpecification, useTakeoff } from '../../state/derived.ts'
import { Empty } from '../parts/Empty.tsx'
import { drawFirstRoom } from '../parts/next-steps.ts'
import { PageTabs } from '../parts/PageTabs.tsx'
import { AirTab } from './AirTab.tsx'
import { FinishesTab } from './FinishesTab.tsx'
import { OrderTab } from './OrderTab.tsx'
import { ProductsTab } from './ProductsTab.tsx'
import { RulesTab } from './RulesTab.tsx'

/** What every surface becomes, and what has to be done for it, in an order that works. */
export function FinishStation() {
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  if (records(job.rooms).length === 0) {
    return (
      <section className="station-page finish">
        <Empty title="Nothing to finish yet" next={drawFirstRoom}>
          <p>
            Draw the first room at House. Then choose here what its walls, ceiling and trim become; the steps
            that lead there follow with their reasons.
          </p>
        </Empty>
      </section>
    )
  }
  const holds = specification.notices.filter((notice) => notice.hold).length
  return (
    <section className="station-page finish" aria-label="Finish">
      <PageTabs
        label="Finish"
        tabs={[
          { id: 'finishes', title: 'Finishes', page: () => <FinishesTab job={job} takeoff={takeoff} /> },
          {
            id: 'order',
            title: 'Steps and reasons',
            page: () => <OrderTab job={job} takeoff={takeoff} specification={specification} />,
          },
          {
            id: 'rules',
            title: 'House rules',
            page: () => <RulesTab job={job} specification={specification} />,
          },
          { id: 'products', title: 'Products', page: () => <ProductsTab job={job} /> },
          { id: 'air', title: 'Air', page: () => <AirTab job={job} specification={specification} /> },
        ]}
        aside={
          <p className="tabs-sum">
            <strong>{specification.steps.length}</strong> steps
            {holds === 0 ? '' : `, ${holds} ${holds === 1 ? 'hold' : 'holds'}`}
            {specification.clashes.length === 0 ? '' : `, ${specification.clashes.length} rules disagree`}
          </p>
        }
      />
    </section>
  )
}
