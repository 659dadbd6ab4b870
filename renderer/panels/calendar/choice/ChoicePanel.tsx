import './choice.css'
import { Button } from 'react-aria-components'
import type { Job } from '../../../../core/project/job.ts'
import { type PlanAim, planAims } from '../../../../core/project/vocabulary.ts'
import { isBetter } from '../../../../core/schedule/choice/choose.ts'
import { aimWords, differenceSentence } from '../../../../core/schedule/choice/difference.ts'
import { dateWords } from '../../../../core/time/date-words.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { jobStore, useJob } from '../../../state/app.ts'
import { showChosenPlan } from '../../../state/planner.ts'
import { type ChoiceState, closeComparison, stopComparing } from '../../../state/planner-choice.ts'
import type { FoundPlan } from '../../../state/planner-messages.ts'
import { Callout } from '../../parts/Callout.tsx'
import { changeHeader } from '../../parts/edits.ts'
import { ChoiceDots } from './ChoiceDots.tsx'

/** The plans to choose from: dots for the eye, a table for everybody, one sentence for each on what it trades. */
export function ChoicePanel(props: { readonly choice: ChoiceState; readonly present: FoundPlan | null }) {
  const { choice, present } = props
  const job = useJob()
  if (choice.status === 'idle') return null
  const isLooking = choice.status === 'comparing'
  return (
    <section className="plan-choice" aria-label="Plans to choose from">
      <div className="plan-choice-head">
        <h3>Plans to choose from</h3>
        {isLooking ? (
          <>
            <progress aria-label="Time spent comparing" max={1} value={choice.share} />
            <span className="quiet">working on all of them in turn: {percent(choice.share)}</span>
          </>
        ) : null}
        <span className="plan-choice-ends">
          {isLooking ? (
            <Button className="plain-button" onPress={stopComparing}>
              Stop comparing
            </Button>
          ) : null}
          <Button className="plain-button" onPress={closeComparison}>
            Close
          </Button>
        </span>
      </div>
      {choice.broken === null ? null : <Callout kind="stop">{choice.broken}</Callout>}
      {choice.plans.size === 0 ? null : <Plans choice={choice} present={present} job={job} />}
    </section>
  )
}

function Plans(props: {
  readonly choice: ChoiceState
  readonly present: FoundPlan | null
  readonly job: Job
}) {
  const { choice, present, job } = props
  const { unitSystem } = job.header
  const balanced = choice.plans.get('balanced')
  // The plan on screen is the one that was taken, or has become a better one since.
  const isShown = (aim: PlanAim, { workPlan }: FoundPlan) =>
    job.header.planFor === aim && present !== null && !isBetter(aim, workPlan, present.workPlan)
  return (
    <div className="plan-choice-body">
      <ChoiceDots
        plans={choice.plans}
        present={present}
        system={unitSystem}
        onChoose={(aim) => choose(aim, choice.plans.get(aim))}
      />
      <div className="plan-choice-table">
        <table className="pick-table">
          <caption className="unseen">Plans to choose from, by what they aim for</caption>
          <thead>
            <tr>
              <th scope="col">Plan</th>
              <th scope="col">Last day</th>
              <th scope="col" className="number">
                Room-days
              </th>
              <th scope="col" className="number">
                Pay
              </th>
              <th scope="col">
                <span className="unseen">Choosing</span>
              </th>
            </tr>
          </thead>
          {planAims.map((aim) => {
            const found = choice.plans.get(aim)
            if (found === undefined) return null
            const { workPlan } = found
            const isTaken = isShown(aim, found)
            return (
              <tbody key={aim} className={isTaken ? 'plan-choice-shown' : ''}>
                <tr>
                  <th scope="row">{aimWords[aim]}</th>
                  <td>{dateWords(workPlan.finishesOn, unitSystem)}</td>
                  <td className="number">{workPlan.roomDays}</td>
                  <td className="number">{wholeDollars(workPlan.cost.pay)}</td>
                  <td rowSpan={2} className="plan-choice-take">
                    {isTaken ? (
                      <strong>on screen</strong>
                    ) : (
                      <Button
                        className="plain-button"
                        aria-label={`Use it: the ${aimWords[aim].toLowerCase()} plan`}
                        onPress={() => choose(aim, found)}
                      >
                        Take it
                      </Button>
                    )}
                  </td>
                </tr>
                <tr className="plan-choice-trade">
                  <td colSpan={4}>{tradeWords(aim, found, balanced)}</td>
                </tr>
              </tbody>
            )
          })}
        </table>
      </div>
    </div>
  )
}

/** The plan becomes the one on screen, and what is looked for from now on is what it was chosen for. */
function choose(aim: PlanAim, found: FoundPlan | undefined): void {
  const before = jobStore.store.getState().job
  if (before === null || found === undefined) return
  const isSaid = before.header.planFor === aim
  if (!isSaid && !changeHeader(`Take the ${aimWords[aim].toLowerCase()} plan`, { planFor: aim })) return
  stopComparing()
  const { job } = jobStore.store.getState()
  if (job !== null) showChosenPlan(found, job)
}

/** The sentence without the name in front, which stands in the row already. */
function tradeWords(aim: PlanAim, { workPlan }: FoundPlan, balanced: FoundPlan | undefined): string {
  if (balanced === undefined) return ''
  const sentence = differenceSentence(aim, workPlan, balanced.workPlan)
  const words = sentence.slice(aimWords[aim].length + 2)
  return words.charAt(0).toUpperCase() + words.slice(1)
}

function wholeDollars(cents: number): string {
  return formatCents(Math.round(cents / 100) * 100).slice(0, -3)
}

function percent(share: number): string {
  return `${Math.round(share * 100)}%`
}
