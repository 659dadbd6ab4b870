import type { Job } from '../../../core/project/job.ts'
import { acceptedPlan } from '../../state/planner-accepted.ts'
import { useElsewhere } from '../../state/planner-busy.ts'
import { Callout } from '../parts/Callout.tsx'
import { twoJobsSentences } from './two-jobs.ts'

/** The accepted plan has somebody at work here who is promised to another job of the book at that time. */
export function TwoJobsNote({ job, now }: { readonly job: Job; readonly now: string }) {
  const elsewhere = useElsewhere()
  const accepted = acceptedPlan(job)
  const sentences = accepted === null ? [] : twoJobsSentences(job, accepted.plan, elsewhere, now)
  if (sentences.length === 0) return null
  return (
    <Callout kind="stop" title="At two jobs at once by the accepted plan">
      {sentences.join(' ')} The plan below is made around it: when it is right, accept it instead.
    </Callout>
  )
}
