import { Button } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { conditionWords } from '../../../core/specification/trade-words.ts'
import { type UsualFinding, usualAmounts, usualFindings } from '../../../core/specification/usual-findings.ts'
import { capital } from '../../../core/words/text.ts'
import { foundAmount } from './found-amount.ts'
import { recordUsual } from './walk-actions.ts'

/** What is usually wrong with such a surface in a house of this age, one tap each. */
export function UsualFindings({ job, surface }: { readonly job: Job; readonly surface: SurfaceQuantity }) {
  const system = job.header.unitSystem
  const found = usualFindings(job.header.yearBuilt, surface.surfaceClass)
  const words = (usual: UsualFinding) =>
    usual.measure === 'all' ? 'all of it' : foundAmount(usualAmounts(usual, surface, system), system)
  return (
    <div className="usual-findings">
      {found.map((usual, index) => (
        <Button key={usual.kind} className="usual-finding" onPress={() => recordUsual(job, surface, usual)}>
          <span className="key-hint">{index + 1}</span>
          <span>
            {capital(conditionWords[usual.kind])}
            <span className="quiet">{words(usual)}</span>
          </span>
        </Button>
      ))}
    </div>
  )
}
