import { Button } from 'react-aria-components'
import type { DoubtSource } from '../../../core/agreement/how-sure/simulation.ts'
import type { Sureness } from '../../../core/agreement/how-sure/sureness.ts'
import type { Estimate } from '../../../core/price/estimate-types.ts'
import type { Job } from '../../../core/project/job.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { formatCents } from '../../../core/units/money.ts'
import { useSureness } from '../../state/use-sureness.ts'
import { changeHouseRules } from '../parts/edits.ts'
import { SpreadFields } from './SpreadFields.tsx'
import { SurePicture } from './SurePicture.tsx'

const sourceWords: Readonly<Record<DoubtSource, string>> = {
  pace: 'All work quicker or slower',
  rates: 'Single kinds of work',
  findings: 'Found when surfaces are opened',
  coats: 'Coats done again',
  material: 'Material',
}

/** How often the price would be enough, what would be enough four times in five, and what the doubt comes from. */
export function HowSure(props: {
  readonly job: Job
  readonly specification: Specification
  readonly estimate: Estimate
}) {
  const { job, specification, estimate } = props
  const sure = useSureness(job, specification, estimate)
  return (
    <section className="block" aria-label="How sure is the price">
      <h3>How sure is the price</h3>
      {sure === null ? (
        <p className="quiet">Drawing …</p>
      ) : (
        <>
          <SurePicture sure={sure} />
          <Verdict job={job} sure={sure} />
          <Sources sure={sure} />
        </>
      )}
      <details>
        <summary>How far jobs come out from what was counted</summary>
        <SpreadFields spreads={job.houseRules.spreads} />
      </details>
    </section>
  )
}

function Verdict({ job, sure }: { readonly job: Job; readonly sure: Sureness }) {
  const { price } = job.houseRules
  const { contingencyPercent } = sure
  const isTaken = price.contingencyPercent === contingencyPercent
  return (
    <>
      <p role="status">
        <strong>{formatCents(sure.heldCents)}</strong> before tax would be enough four times in five. The
        price of {formatCents(sure.pricedCents)} is enough in {Math.round(100 * sure.holds)} of 100.
      </p>
      <div className="button-row">
        <Button
          className="plain-button"
          isDisabled={isTaken}
          onPress={() =>
            changeHouseRules('Take the contingency from how sure the price is', {
              price: { ...price, contingencyPercent },
            })
          }
        >
          {isTaken ? `Contingency is ${contingencyPercent}%` : `Make the contingency ${contingencyPercent}%`}
        </Button>
      </div>
    </>
  )
}

function Sources({ sure }: { readonly sure: Sureness }) {
  return (
    <table className="sum-table">
      <caption className="doubt-head">What the doubt comes from</caption>
      <tbody>
        {sure.sources.map(({ source, share }) => (
          <tr key={source}>
            <td>{sourceWords[source]}</td>
            <td className="doubt-share">
              <span className="price-bar price-bar-part" style={{ width: `${100 * share}%` }} />
            </td>
            <td className="number">{Math.round(100 * share)}%</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
