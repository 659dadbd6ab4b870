import { Button } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import { formatCents } from '../../../core/units/money.ts'
import type { SearchState } from '../../state/planner.ts'
import { acceptedPlan } from '../../state/planner-accepted.ts'
import type { FoundPlan, PlanClash } from '../../state/planner-messages.ts'
import { Callout } from '../parts/Callout.tsx'
import { MovedList } from './MovedList.tsx'
import { dropChange, dropTrial, type Trial, takeTrial } from './trial.ts'
import { verdictWords } from './verdict-words.ts'

/** Two plans side by side: the present one and the one with what is being tried. Nothing is stored until it is taken. */
export function TrialBar(props: {
  readonly trial: Trial
  readonly present: SearchState
  readonly search: SearchState
  /** Where the plan is drawn: whether the one tried is, and changing that. */
  readonly drawing?: { readonly isTrial: boolean; readonly show: (isTrial: boolean) => void }
}) {
  const { trial, search, drawing } = props
  const present = props.present.plan
  if (trial.changes.length === 0) return null
  // Where there is no plan to lose, what is tried may be taken without one.
  // A first guess, on either side, is no answer to what is being tried.
  const hasAnswer = search.plan !== null && search.isSettled && (present === null || props.present.isSettled)
  const canTake = hasAnswer || (present === null && search.clash !== null)
  return (
    <section className="trial" aria-label="What is being tried">
      <div className="trial-changes">
        <h3>Being tried</h3>
        <ul>
          {trial.changes.map((change) => (
            <li key={change.key}>
              {change.name}
              <Button
                className="plain-button remove"
                aria-label={`Drop: ${change.name}`}
                onPress={() => dropChange(change.key)}
              >
                Drop
              </Button>
            </li>
          ))}
        </ul>
      </div>
      <div className="trial-verdict" role="status">
        {trial.problem !== null ? (
          <Callout kind="stop" title="Cannot be">
            {trial.problem.sentence}
          </Callout>
        ) : search.plan !== null && hasAnswer ? (
          <Comparison
            before={present}
            after={search.plan}
            search={search}
            job={trial.job}
            hasPromises={acceptedPlan(trial.job) !== null}
          />
        ) : search.broken !== null ? (
          <Callout kind="stop">{search.broken}</Callout>
        ) : search.clash !== null ? (
          <Callout kind="stop" title={clashTitle(search.clash, present !== null)}>
            {search.clash.sentence}
          </Callout>
        ) : (
          <Callout kind="wait" title="Looking">
            A plan with this is being worked out.
          </Callout>
        )}
      </div>
      <div className="button-row">
        <Button className="act-button" isDisabled={trial.problem !== null || !canTake} onPress={takeTrial}>
          Take it
        </Button>
        <Button className="plain-button" onPress={dropTrial}>
          Cancel
        </Button>
        {!hasAnswer || drawing === undefined ? null : (
          <Button
            className="plain-button"
            aria-pressed={drawing.isTrial}
            onPress={() => drawing.show(!drawing.isTrial)}
          >
            {drawing.isTrial ? 'Show the present plan' : 'Show this plan'}
          </Button>
        )}
      </div>
    </section>
  )
}

function clashTitle({ isProved }: PlanClash, isPlanned: boolean): string {
  if (!isPlanned) return 'No plan with this either'
  return isProved ? 'Impossible' : 'None found yet'
}

function Comparison(props: {
  readonly before: FoundPlan | null
  readonly after: FoundPlan
  readonly search: SearchState
  readonly job: Job
  /** A plan is accepted that both keep to where they can. */
  readonly hasPromises: boolean
}) {
  const { before, after } = props
  const system = props.job.header.unitSystem
  const lines: readonly (readonly [string, string, string])[] = [
    [
      'Last day',
      before === null ? '–' : dateWords(before.workPlan.finishesOn, system),
      dateWords(after.workPlan.finishesOn, system),
    ],
    ['Room-days out of use', roomDaysOf(before), roomDaysOf(after)],
    ['Cost of the plan', costOf(before), costOf(after)],
    ...(props.hasPromises
      ? [
          [
            'Moved of what was accepted',
            before === null ? '–' : String(before.workPlan.cost.movedTasks),
            String(after.workPlan.cost.movedTasks),
          ] as const,
        ]
      : []),
  ]
  return (
    <div>
      <table className="before-after">
        <thead>
          <tr>
            <th>
              <span className="unseen">Measure</span>
            </th>
            <th className="number">Present plan</th>
            <th className="number">With this</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(([name, was, is]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="number">{was}</td>
              <td className="number">{is}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">
        It holds: every rule was checked. {verdictWords(after, props.search)}{' '}
        {props.search.status === 'searching' ? 'Still looking for a better one. ' : ''}
      </p>
      {before === null ? null : <MovedList job={props.job} before={before.workPlan} after={after.workPlan} />}
    </div>
  )
}

function roomDaysOf(found: FoundPlan | null): string {
  return found === null ? '–' : String(found.workPlan.roomDays)
}

function costOf(found: FoundPlan | null): string {
  return found === null ? '–' : formatCents(found.workPlan.cost.total)
}
