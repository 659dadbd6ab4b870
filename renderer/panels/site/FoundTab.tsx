import { useDeferredValue, useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { compareChange } from '../../../core/progress/change-order.ts'
import { type Issued, sealedWords } from '../../../core/project/issued-records.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import type { Condition } from '../../../core/project/survey-records.ts'
import { conditionWords, stepTitle } from '../../../core/specification/trade-words.ts'
import { dateWords, momentWords } from '../../../core/time/date-words.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { formatCents } from '../../../core/units/money.ts'
import { capital } from '../../../core/words/text.ts'
import { surfaceWords } from '../../../core/work-order/surface-words.ts'
import { newId } from '../../state/new-id.ts'
import { forget, type SearchState, searchFor, useForecast, useTrial } from '../../state/planner.ts'
import { Callout } from '../parts/Callout.tsx'
import { Choice } from '../parts/Choice.tsx'
import type { Chain } from '../parts/chain.ts'
import { command } from '../parts/edits.ts'
import { ConditionForm, ConditionWhatIf, chainWith, useFindingDraft } from '../parts/found/ConditionPaper.tsx'
import { newCondition } from '../parts/found/condition-records.ts'

/** A room turned out worse than it looked: what that changes, shown before it is agreed and written down as a change order. */
export function FoundTab(props: { readonly chain: Chain; readonly roomId: RoomId; readonly now: string }) {
  const { chain, roomId, now } = props
  const { job, takeoff } = chain
  const surfaces = takeoff.surfaces.filter((each) => each.roomId === roomId)
  const [key, setKey] = useState<string | null>(surfaces[0]?.key ?? null)
  const [draft, setDraft] = useState<Condition | null>(null)
  useFindingDraft(job, draft)
  const surface = surfaces.find((each) => each.key === key) ?? surfaces[0]
  if (surface === undefined) return <p className="quiet tab-pad">This room has no surfaces to look at.</p>
  return (
    <div className="two-panes">
      <div className="pane scroll">
        <section className="block">
          <Choice
            label="Surface"
            options={surfaces.map((each) => ({
              id: each.key,
              label: capital(surfaceWords(job, each.surface)),
            }))}
            chosen={surface.key}
            onChoose={(next) => {
              setKey(next)
              setDraft(null)
            }}
          />
          {draft === null ? (
            <div className="button-row">
              <Button
                className="act-button"
                onPress={() => setDraft(newCondition(surface, now.slice(0, 10)))}
              >
                Write down what was found
              </Button>
            </div>
          ) : (
            <ConditionForm job={job} surface={surface} draft={draft} isNew onChange={setDraft} />
          )}
        </section>
        <ChangeOrders job={job} />
      </div>
      <aside className="pane pane-side" aria-label="What it changes">
        {draft === null ? (
          <p className="quiet">
            Hours, price and days with and without it stand here before anybody agrees to anything.
          </p>
        ) : (
          <Proposal chain={chain} draft={draft} now={now} onDone={() => setDraft(null)} />
        )}
      </aside>
    </div>
  )
}

function Proposal(props: {
  readonly chain: Chain
  readonly draft: Condition
  readonly now: string
  readonly onDone: () => void
}) {
  const { chain, now, onDone } = props
  const draft = useDeferredValue(props.draft)
  const after = useMemo(() => chainWith(chain, draft), [chain, draft])
  const trial = useTrial()
  const present = useForecast()
  useEffect(() => {
    searchFor('trial', after.job)
  }, [after])
  useEffect(() => () => forget('trial'), [])
  const isCurrent = trial.job === after.job
  const finishesOn = useMemo(
    () => ({
      before: answerOf(present),
      after: isCurrent ? answerOf(trial) : null,
    }),
    [isCurrent, trial, present],
  )
  const isLooking = trial.status === 'searching' && !trial.isSettled

  function accept() {
    const change = compareChange(
      { ...chain, finishesOn: finishesOn.before },
      { ...after, finishesOn: finishesOn.after },
    )
    const issued: Issued = {
      id: newId('change'),
      kind: 'changeOrder',
      issuedAt: now,
      body: {
        version: 1,
        conditionId: draft.id,
        found: conditionWords[draft.kind],
        minutes: change.minutes,
        totalCents: change.totalCents,
        finishesOn: change.finishesOn,
        added: change.added.map(stepTitle),
        removed: change.removed.map(stepTitle),
      },
    }
    const isDone = command(
      `Agree the change: ${conditionWords[draft.kind]}`,
      { kind: 'putRecord', collection: 'conditions', record: draft },
      { kind: 'putRecord', collection: 'issued', record: issued },
    )
    if (isDone) onDone()
  }

  return (
    <section className="block" aria-label="Change order" aria-live="polite">
      <h3>With what was found</h3>
      <ConditionWhatIf before={chain} after={after} finishesOn={finishesOn} />
      {isCurrent && trial.clash !== null ? (
        <Callout kind="stop" title="No plan with it">
          {trial.clash.sentence}
        </Callout>
      ) : null}
      <div className="button-row">
        <Button className="act-button" isDisabled={isLooking} onPress={accept}>
          Agreed: make it a change order
        </Button>
        <Button className="plain-button" onPress={onDone}>
          Cancel
        </Button>
      </div>
    </section>
  )
}

/** The last day, once it was looked for long enough to be an answer. */
function answerOf({ plan, isSettled }: SearchState): string | null {
  return isSettled ? (plan?.workPlan.finishesOn ?? null) : null
}

function ChangeOrders({ job }: { readonly job: Job }) {
  const orders = records(job.issued).filter((issued) => issued.kind === 'changeOrder')
  const system = job.header.unitSystem
  if (orders.length === 0) return null
  return (
    <section className="block" aria-label="Change orders">
      <h3>Change orders</h3>
      <table className="pick-table">
        <thead>
          <tr>
            <th scope="col">Agreed</th>
            <th scope="col">Found</th>
            <th scope="col" className="number">
              Hours
            </th>
            <th scope="col" className="number">
              Price
            </th>
            <th scope="col" className="number">
              Last day
            </th>
          </tr>
        </thead>
        <tbody>
          {orders.map((order) => {
            const { body } = order
            if (body.version === null) {
              return (
                <tr key={order.id}>
                  <td>{momentWords(order.issuedAt, system)}</td>
                  <td colSpan={4}>{sealedWords}</td>
                </tr>
              )
            }
            const { after } = body.finishesOn
            return (
              <tr key={order.id}>
                <td>{momentWords(order.issuedAt, system)}</td>
                <td>{capital(body.found)}</td>
                <td className="number">{signedMinutes(body.minutes.after - body.minutes.before)}</td>
                <td className="number">{signedCents(body.totalCents.after - body.totalCents.before)}</td>
                <td className="number">{after === null ? '–' : dateWords(after, system)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </section>
  )
}

function signedMinutes(minutes: number): string {
  return `${minutes < 0 ? '−' : '+'} ${formatMinutes(Math.abs(minutes))}`
}

function signedCents(cents: number): string {
  return `${cents < 0 ? '−' : '+'} ${formatCents(Math.abs(cents))}`
}
