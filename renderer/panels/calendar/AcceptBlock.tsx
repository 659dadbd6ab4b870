import { useState } from 'react'
import { Button } from 'react-aria-components'
import { sealedWords } from '../../../core/project/issued-records.ts'
import { dateWords, momentWords } from '../../../core/time/date-words.ts'
import { jobStore, useJob } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { adoptPlan, type SearchState } from '../../state/planner.ts'
import { acceptedPlan, planBody, sealedPlanAt } from '../../state/planner-accepted.ts'
import { askElsewhere } from '../../state/planner-busy.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { Callout } from '../parts/Callout.tsx'
import { putRecord } from '../parts/edits.ts'
import { MovedList } from './MovedList.tsx'
import { tryChange } from './trial.ts'
import { twoJobsSentences } from './two-jobs.ts'
import { gapDays } from './verdict-words.ts'

/** Why a plan could not be accepted. */
interface Refused {
  readonly sentences: readonly string[]
  readonly found: FoundPlan
}

/** The plan accepted last, frozen with its date, and accepting the present one. */
export function AcceptBlock(props: {
  readonly found: FoundPlan | null
  readonly state: SearchState
  readonly isTrying: boolean
  readonly today: string
}) {
  const job = useJob()
  const { found, today } = props
  const { now } = useSiteNow()
  const [refused, setRefused] = useState<Refused | null>(null)
  const accepted = acceptedPlan(job)
  const sealedAt = sealedPlanAt(job)
  const { unitSystem } = job.header

  /** The book is asked once more: another job may have been accepted since this plan was looked for. */
  async function accept() {
    if (found === null) return
    const body = planBody(found.workPlan, gapDays(found, props.state))
    const twice = twoJobsSentences(job, body.plan, await askElsewhere(), now)
    setRefused(twice.length === 0 ? null : { sentences: twice, found })
    if (twice.length > 0 || jobStore.store.getState().job !== job) return
    const isAccepted = putRecord('Accept the plan', 'issued', {
      id: newId('plan'),
      kind: 'plan',
      issuedAt: today,
      body,
    })
    const { job: promised } = jobStore.store.getState()
    if (isAccepted && promised !== null) adoptPlan('present', promised)
  }

  return (
    <section className="block" aria-label="Accepting">
      <h3>Accepted plan</h3>
      {sealedAt === null ? null : (
        <p>
          The plan accepted {momentWords(sealedAt, unitSystem)}: {sealedWords}. Plans made now do not hold to
          it.
        </p>
      )}
      {accepted === null ? (
        <p className="quiet">
          None yet. Accepting freezes the plan as it is with today’s date; later plans keep its starts and
          people where they can, and say what moved.
        </p>
      ) : (
        <p>
          Accepted {momentWords(accepted.acceptedAt, unitSystem)}:{' '}
          {dateWords(accepted.plan.startsOn, unitSystem)} to {dateWords(accepted.plan.finishesOn, unitSystem)}
          .{found === null ? '' : ` ${keptWords(found)}`}
        </p>
      )}
      {accepted === null || found === null || found.workPlan.cost.movedTasks === 0 ? null : (
        <MovedList job={job} before={accepted.plan} after={found.workPlan} />
      )}
      {refused === null || refused.found !== found ? null : (
        <Callout kind="stop" title="Not accepted" isLive>
          {refused.sentences.join(' ')} A plan around it is being worked out; accept that one.
        </Callout>
      )}
      <div className="button-row">
        <Button
          className="act-button"
          isDisabled={found === null || !props.state.isSettled || props.isTrying}
          onPress={() => void accept()}
        >
          {accepted === null ? 'Accept this plan' : 'Accept this plan instead'}
        </Button>
      </div>
      {accepted === null ? null : <PlanFreely acceptedId={accepted.id} />}
      {props.isTrying ? <p className="quiet">Take or leave what is being tried first.</p> : null}
    </section>
  )
}

/** A trial without what was accepted. */
function PlanFreely({ acceptedId }: { readonly acceptedId: string }) {
  return (
    <>
      <p className="quiet">
        New plans hold to what was accepted before they look for an earlier last day. To see what the days
        could be without it:
      </p>
      <Button
        className="plain-button"
        onPress={() =>
          tryChange({
            key: 'afresh',
            name: 'Re-plan from scratch, free of what was accepted',
            commands: [{ kind: 'removeRecord', collection: 'issued', id: acceptedId }],
          })
        }
      >
        Re-plan from scratch, free of its promises
      </Button>
    </>
  )
}

function keptWords({ workPlan }: FoundPlan): string {
  const { movedTasks: movedPromises } = workPlan.cost
  if (movedPromises === 0) return 'The plan now keeps all it promised.'
  return `The plan now moves ${movedPromises} of what it promised.`
}
