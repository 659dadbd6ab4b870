import type { Job } from '../../../core/project/job.ts'
import { holdLine } from '../../../core/work-order/hold-words.ts'
import { specificationOf } from '../../state/derived.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { Callout } from '../parts/Callout.tsx'

/** What waits for a hold, said before the plan: loudly where its day had to be assumed. */
export function HoldHeading({ job, found }: { readonly job: Job; readonly found: FoundPlan }) {
  const lines = specificationOf(job)
    .holds.filter((hold) => hold.cleared === null)
    .map((hold) => holdLine(hold, found.workPlan.relaxed, job.header.unitSystem))
  if (lines.length === 0) return null
  const loud = lines.filter((line) => line.alarm !== null)
  return (
    <>
      {loud.map((line) => (
        <Callout key={line.key} kind="stop" title={line.alarm ?? ''}>
          {line.reason} {line.who}.
        </Callout>
      ))}
      {loud.length === lines.length ? null : (
        <p>
          {lines.length - loud.length === 1 ? '1 hold is' : `${lines.length - loud.length} holds are`} still
          to be cleared; the work behind {lines.length - loud.length === 1 ? 'it' : 'them'} is planned from
          the day expected. See Walk.
        </p>
      )}
    </>
  )
}
