import { Button } from 'react-aria-components'
import type { jobProgress } from '../../../core/progress/room-progress.ts'
import { marksWithoutStep } from '../../../core/progress/step-states.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { useJob } from '../../state/app.ts'
import { useSpecification } from '../../state/derived.ts'
import { useForecast } from '../../state/planner.ts'
import { acceptedPlan } from '../../state/planner-accepted.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { momentEntry } from '../parts/entries.ts'

/** How far the job is, when it ends as it stands, and what time it is taken to be. */
export function SiteHead({ progress }: { readonly progress: ReturnType<typeof jobProgress> }) {
  const job = useJob()
  const specification = useSpecification()
  const forecast = useForecast()
  const { now, isByHand, setByHand } = useSiteNow()
  const accepted = acceptedPlan(job)
  const system = job.header.unitSystem
  const orphans = marksWithoutStep(job, specification).length
  const finish = forecast.plan?.workPlan.finishesOn ?? null
  return (
    <div className="site-head">
      <dl className="side-by-side">
        <div>
          <dt>Done, by hours</dt>
          <dd>{Math.round(progress.share * 100)}%</dd>
        </div>
        <div>
          <dt>Steps</dt>
          <dd>
            {progress.steps.settled} of {progress.steps.total}
          </dd>
        </div>
        <div>
          <dt>Left</dt>
          <dd>{formatMinutes(progress.leftMinutes)}</dd>
        </div>
        <div>
          <dt>Worked, written down</dt>
          <dd>{formatMinutes(progress.actualMinutes)}</dd>
        </div>
        <div>
          <dt>Last day as it stands</dt>
          <dd>
            <span role="status">
              {finish !== null
                ? `${dateWords(finish, system)}${forecast.isSettled ? '' : ', still looking'}`
                : forecast.clash !== null
                  ? 'no plan: see Calendar'
                  : 'being worked out'}
            </span>
          </dd>
        </div>
        {accepted === null ? null : (
          <div>
            <dt>Accepted</dt>
            <dd>{dateWords(accepted.plan.finishesOn, system)}</dd>
          </div>
        )}
      </dl>
      <EntryField
        label={isByHand ? 'It is taken to be' : 'It is now'}
        kind="datetime-local"
        shown={now}
        read={momentEntry}
        onCommit={setByHand}
      />
      {isByHand ? (
        <Button className="plain-button" onPress={() => setByHand(null)}>
          Follow the clock again
        </Button>
      ) : null}
      {orphans === 0 ? null : (
        <p className="quiet">{orphans} marks belong to steps that are no longer in the job; they are kept.</p>
      )}
    </div>
  )
}
