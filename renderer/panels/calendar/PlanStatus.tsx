import type { ReactNode } from 'react'
import { Button } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { formatCents } from '../../../core/units/money.ts'
import { lookFurther, type SearchState, stopLooking } from '../../state/planner.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { HoldHeading } from './HoldHeading.tsx'
import { relaxedSentences, verdictWords } from './verdict-words.ts'

/** How good the plan is known to be, and whether a better one is being looked for. */
export function PlanStatus(props: {
  readonly job: Job
  readonly found: FoundPlan | null
  readonly state: SearchState
  readonly isTrial: boolean
  readonly children: ReactNode
}) {
  const { job, found, state } = props
  const { unitSystem } = job.header
  if (found === null) return null
  const { cost, roomDays, days } = found.workPlan
  const paid = days.reduce((sum, { paidMinutes }) => sum + paidMinutes, 0)
  return (
    <div className="plan-status">
      <div>
        <p role="status">
          {props.isTrial ? 'With what is being tried: ' : ''}
          {state.isSettled ? '' : 'First plan, still looking: '}
          <strong>
            {dateWords(found.workPlan.startsOn, unitSystem)} to{' '}
            {dateWords(found.workPlan.finishesOn, unitSystem)}
          </strong>
          . {verdictWords(found, state)}
        </p>
        <p className="quiet">
          {roomDays} room-days out of use, {formatMinutes(paid)} on site, {formatCents(cost.total)} for pay,
          days on site and rooms out of use
        </p>
        <HoldHeading job={job} found={found} />
        {relaxedSentences(job, found.workPlan.relaxed).map((sentence) => (
          <p key={sentence} className="quiet">
            {sentence}
          </p>
        ))}
      </div>
      {props.children}
      {state.status === 'searching' ? (
        <Button className="plain-button" onPress={() => stopLooking(props.isTrial ? 'trial' : 'present')}>
          Stop looking for a better one
        </Button>
      ) : state.isFinished ? null : (
        <Button className="plain-button" onPress={() => lookFurther(props.isTrial ? 'trial' : 'present')}>
          Keep improving
        </Button>
      )}
    </div>
  )
}
