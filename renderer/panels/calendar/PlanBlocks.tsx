import { Button } from 'react-aria-components'
import type { PlanAim } from '../../../core/project/vocabulary.ts'
import { aimWords } from '../../../core/schedule/choice/difference.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import { useJob } from '../../state/app.ts'
import { stopLooking } from '../../state/planner.ts'
import { acceptedPlan } from '../../state/planner-accepted.ts'
import { comparePlans } from '../../state/planner-choice.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { dateEntry } from '../parts/entries.ts'
import { type Trial, tryChange } from './trial.ts'

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

/** What the plan aims for, and looking at the others there could be. */
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
    <section className="block" aria-label="What the plan aims for">
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
