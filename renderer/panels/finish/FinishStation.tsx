import '../parts/desk.css'
import './finish.css'
import { records } from '../../../core/project/job.ts'
import { useJob } from '../../state/app.ts'
import { useSpecification, useTakeoff } from '../../state/derived.ts'
import { Empty } from '../parts/Empty.tsx'
import { Leaves } from '../parts/Leaves.tsx'
import { AirLeaf } from './AirLeaf.tsx'
import { FinishesLeaf } from './FinishesLeaf.tsx'
import { OrderLeaf } from './OrderLeaf.tsx'
import { ProductsLeaf } from './ProductsLeaf.tsx'
import { RulesLeaf } from './RulesLeaf.tsx'

/** What every surface becomes, and what has to be done for it, in an order that works. */
export function FinishStation() {
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  if (records(job.rooms).length === 0) {
    return (
      <section className="desk finish">
        <Empty title="Nothing to finish yet">
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
    <section className="desk finish" aria-label="Finish">
      <Leaves
        label="Finish"
        leaves={[
          { id: 'finishes', title: 'Finishes', page: () => <FinishesLeaf job={job} takeoff={takeoff} /> },
          {
            id: 'order',
            title: 'Steps and reasons',
            page: () => <OrderLeaf job={job} takeoff={takeoff} specification={specification} />,
          },
          {
            id: 'rules',
            title: 'House rules',
            page: () => <RulesLeaf job={job} specification={specification} />,
          },
          { id: 'products', title: 'Products', page: () => <ProductsLeaf job={job} /> },
          { id: 'air', title: 'Air', page: () => <AirLeaf job={job} specification={specification} /> },
        ]}
        aside={
          <p className="leaves-sum">
            <strong>{specification.steps.length}</strong> steps
            {holds === 0 ? '' : `, ${holds} ${holds === 1 ? 'hold' : 'holds'}`}
            {specification.clashes.length === 0 ? '' : `, ${specification.clashes.length} rules disagree`}
          </p>
        }
      />
    </section>
  )
}
