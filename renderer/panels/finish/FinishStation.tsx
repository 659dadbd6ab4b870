import '../parts/station-page.css'
import './finish.css'
import { type Job, records } from '../../../core/project/job.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { useJob } from '../../state/app.ts'
import { useSpecification, useSpecificationWhenIdle, useTakeoff } from '../../state/derived.ts'
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
  return (
    <section className="station-page finish" aria-label="Finish">
      <PageTabs
        label="Finish"
        tabs={[
          { id: 'finishes', title: 'Finishes', page: () => <FinishesTab job={job} takeoff={takeoff} /> },
          { id: 'order', title: 'Steps and reasons', page: () => <Steps job={job} takeoff={takeoff} /> },
          { id: 'rules', title: 'House rules', page: () => <Rules job={job} /> },
          { id: 'products', title: 'Products', page: () => <ProductsTab job={job} /> },
          { id: 'air', title: 'Air', page: () => <Air job={job} /> },
        ]}
        aside={<StepSum />}
      />
    </section>
  )
}

// Steps of a whole house take longer than a press may: only the pages that show them wait for them.
function Steps(props: { readonly job: Job; readonly takeoff: Takeoff }) {
  return <OrderTab {...props} specification={useSpecification()} />
}

function Rules({ job }: { readonly job: Job }) {
  return <RulesTab job={job} specification={useSpecification()} />
}

function Air({ job }: { readonly job: Job }) {
  return <AirTab job={job} specification={useSpecification()} />
}

/** Follows a press when the page has drawn what was pressed. */
function StepSum() {
  const specification = useSpecificationWhenIdle()
  if (specification === null) return null
  const { steps, notices, clashes } = specification
  const holds = notices.filter((notice) => notice.hold).length
  return (
    <p className="tabs-sum">
      <strong>{steps.length}</strong> steps
      {holds === 0 ? '' : `, ${holds} ${holds === 1 ? 'hold' : 'holds'}`}
      {clashes.length === 0 ? '' : `, ${clashes.length} rules disagree`}
    </p>
  )
}
