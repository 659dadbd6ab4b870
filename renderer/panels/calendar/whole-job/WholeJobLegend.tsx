import { type Phase, phases } from '../../../../core/work-order/phases.ts'
import { PhaseSign } from './PhaseLooks.tsx'

/** What the patterns mean. */
export function WholeJobLegend(props: {
  /** Somebody is on another job of the book. */
  readonly hasElsewhere: boolean
}) {
  return (
    <div className="plan-legend">
      {phases.map((phase: Phase) => (
        <PhaseSign key={phase} phase={phase} />
      ))}
      <span>
        <svg width="20" height="12" aria-hidden="true">
          <rect width="20" height="12" className="plan-drying" />
        </svg>
        drying
      </span>
      <span>
        <svg width="20" height="12" aria-hidden="true">
          <rect y="4" width="20" height="4" className="plan-out-of-use" />
        </svg>
        room out of use
      </span>
      {props.hasElsewhere ? (
        <span>
          <svg width="20" height="12" aria-hidden="true">
            <rect x="0.5" y="0.5" width="19" height="11" className="plan-elsewhere" />
          </svg>
          on another job
        </span>
      ) : null}
    </div>
  )
}
