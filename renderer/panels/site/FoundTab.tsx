import { useDeferredValue, useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import type { Condition } from '../../../core/project/survey-records.ts'
import { capital } from '../../../core/words/text.ts'
import { surfaceWords } from '../../../core/work-order/surface-words.ts'
import { forget, type SearchState, searchFor, useForecast, useTrial } from '../../state/planner.ts'
import { Callout } from '../parts/Callout.tsx'
import { Choice } from '../parts/Choice.tsx'
import type { Chain } from '../parts/chain.ts'
import { useAgreement } from '../parts/dealings/use-agreement.ts'
import { ConditionForm, ConditionWhatIf, chainWith, useFindingDraft } from '../parts/found/ConditionPaper.tsx'
import { newCondition } from '../parts/found/condition-records.ts'
import { ChangeOrderList } from './ChangeOrderList.tsx'
import { Propose, TakeIn } from './FoundAnswers.tsx'

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
          {draft === null ? (
            <p>
              Worse than it looked? Write it down here: hours, price and days with it stand beside it before
              anybody agrees to anything.
            </p>
          ) : null}
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
        <ChangeOrderList job={job} />
      </div>
      <aside className="pane pane-side" aria-label="What it changes">
        {draft === null ? (
          <p className="quiet">What it changes stands here while you write it down.</p>
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
  const agreement = useAgreement()
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

  const whole = { chain, after, draft, finishesOn, now, onDone }
  return (
    <section className="block" aria-label="Change order" aria-live="polite">
      <h3>With what was found</h3>
      <ConditionWhatIf before={chain} after={after} finishesOn={finishesOn} />
      {isCurrent && trial.clash !== null ? (
        <Callout kind="stop" title="No plan with it">
          {trial.clash.sentence}
        </Callout>
      ) : null}
      {agreement.accepted === null ? (
        <TakeIn {...whole} isLooking={isLooking} />
      ) : (
        <Propose {...whole} isLooking={isLooking} before={present} then={isCurrent ? trial : null} />
      )}
    </section>
  )
}

/** The last day, once it was looked for long enough to be an answer. */
function answerOf({ plan, isSettled }: SearchState): string | null {
  return isSettled ? (plan?.workPlan.finishesOn ?? null) : null
}
