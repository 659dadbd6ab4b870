import { Button } from 'react-aria-components'
import { sealedWords } from '../../../core/project/issued-records.ts'
import type { PlanAim } from '../../../core/project/vocabulary.ts'
import { aimWords } from '../../../core/schedule/choice/difference.ts'
import { dateWords, momentWords } from '../../../core/time/date-words.ts'
import { jobStore, useJob } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { adoptPlan, type SearchState, stopLooking } from '../../state/planner.ts'
import { acceptedPlan, planBody, sealedPlanAt } from '../../state/planner-accepted.ts'
import { comparePlans } from '../../state/planner-choice.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { putRecord } from '../parts/edits.ts'
import { dateEntry } from '../parts/entries.ts'
import { MovedList } from './MovedList.tsx'
import { type Trial, tryChange } from './trial.ts'
import { gapDays } from './verdict-words.ts'

export function StartBlock({ trial }: { readonly trial: Trial }) {
  const { startsOn, unitSystem } = trial.job.header
  return (
    <section className="block" aria-label="Start">
      <EntryField
        label="Work starts on"
        kind="date"
        shown={startsOn}
        read={dateEntry}
        hint="Tried first, like everything here: the two plans are compared before you take it."
        onCommit={(date) =>
          tryChange({
            key: 'startsOn',
            name: `Start on ${dateWords(date, unitSystem)}`,
            commands: [{ kind: 'setHeader', change: { startsOn: date } }],
          })
        }
      />
    </section>
  )
}

/** What the plan is looked for, and looking at the others there could be. */
export function AimBlock(props: {
  readonly found: FoundPlan | null
  readonly isSettled: boolean
  readonly isTrying: boolean
  readonly isComparing: boolean
}) {
  const job = useJob()
  const { found, isTrying, isComparing } = props
  const isPromised = acceptedPlan(job) !== null
  return (
    <section className="block" aria-label="What the plan is looked for">
      <h3>{aimWords[job.header.planFor]} plan</h3>
      <p className="quiet">{aimNotes[job.header.planFor]}</p>
      {isPromised ? (
        <p className="quiet">Plans hold to the one accepted, so there is nothing to choose between.</p>
      ) : (
        <Button
          className="plain-button"
          isDisabled={found === null || !props.isSettled || isTrying || isComparing}
          onPress={() => {
            stopLooking('present')
            comparePlans(job, found?.workPlan ?? null)
          }}
        >
          Compare four plans
        </Button>
      )}
    </section>
  )
}

const aimNotes: Readonly<Record<PlanAim, string>> = {
  balanced: 'Pay, days on site and rooms out of use, as the rules of the job count them.',
  soonest: 'The last day counts most.',
  calmest: 'Rooms out of use count most.',
  cheapest: 'Pay counts most.',
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
  const accepted = acceptedPlan(job)
  const sealedAt = sealedPlanAt(job)
  const { unitSystem } = job.header

  function accept() {
    if (found === null) return
    const isAccepted = putRecord('Accept the plan', 'issued', {
      id: newId('plan'),
      kind: 'plan',
      issuedAt: today,
      body: planBody(found.workPlan, gapDays(found, props.state)),
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
      <div className="button-row">
        <Button
          className="act-button"
          isDisabled={found === null || !props.state.isSettled || props.isTrying}
          onPress={accept}
        >
          {accepted === null ? 'Accept this plan' : 'Accept this plan instead'}
        </Button>
      </div>
      {accepted === null ? null : (
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
                commands: [{ kind: 'removeRecord', collection: 'issued', id: accepted.id }],
              })
            }
          >
            Re-plan from scratch, free of its promises
          </Button>
        </>
      )}
      {props.isTrying ? <p className="quiet">Take or leave what is being tried first.</p> : null}
    </section>
  )
}

function keptWords({ workPlan }: FoundPlan): string {
  const { movedTasks: movedPromises } = workPlan.cost
  if (movedPromises === 0) return 'The plan now keeps all it promised.'
  return `The plan now moves ${movedPromises} of what it promised.`
}
