import { useMemo } from 'react'
import { Button } from 'react-aria-components'
import { priceJob, priceOfChanges } from '../../../core/agreement/whole-price.ts'
import { compareChange } from '../../../core/progress/change-order.ts'
import type { JobChange } from '../../../core/project/agreement-records.ts'
import type { Issued } from '../../../core/project/issued-records.ts'
import type { Job } from '../../../core/project/job.ts'
import { succeed } from '../../../core/project/problem.ts'
import type { Condition } from '../../../core/project/survey-records.ts'
import { conditionWords, stepTitle } from '../../../core/specification/trade-words.ts'
import { capital } from '../../../core/words/text.ts'
import { newId } from '../../state/new-id.ts'
import { takePaperNumber } from '../../state/paper-numbers.ts'
import type { SearchState } from '../../state/planner.ts'
import type { Chain } from '../parts/chain.ts'
import { signedMoney } from '../parts/dealings/agreement-words.ts'
import { movedRoomWords, offerChange } from '../parts/dealings/offer-change.ts'
import { useNumbered } from '../parts/dealings/use-numbered.ts'
import { command } from '../parts/edits.ts'

interface Weighed {
  readonly chain: Chain
  readonly after: Chain
  readonly draft: Condition
  readonly finishesOn: { readonly before: string | null; readonly after: string | null }
  readonly now: string
  readonly onDone: () => void
  readonly isLooking: boolean
}

/** Nothing is agreed with a client by this program: the finding goes into the job, with a note of what it changed. */
export function TakeIn({ chain, after, draft, finishesOn, now, onDone, isLooking }: Weighed) {
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
    <div className="button-row">
      <Button className="act-button" isDisabled={isLooking} onPress={accept}>
        Agreed: make it a change order
      </Button>
      <Button className="plain-button" onPress={onDone}>
        Cancel
      </Button>
    </div>
  )
}

/** The job is agreed with the client: the finding is offered as a change order, and goes into the job when the client agrees. */
export function Propose(
  props: Weighed & { readonly before: SearchState; readonly then: SearchState | null },
) {
  const { chain, draft, finishesOn, now, onDone, isLooking } = props
  const { isTaking, withNumber } = useNumbered(() => takePaperNumber('changeOrder'))
  const offer = useMemo(() => foundOffer(chain.job, draft), [chain.job, draft])

  function propose(number: number) {
    if (!offer.ok) return
    const [was, becomes] = [answeredPlan(props.before), props.then === null ? null : answeredPlan(props.then)]
    const moves = was === null || becomes === null ? [] : movedRoomWords(chain.job, was, becomes)
    if (offerChange(number, { ...offer.value, finishesOn, moves: [...moves] }, now)) onDone()
  }

  return (
    <>
      {offer.ok ? (
        <p>
          As a change order: <strong>{signedMoney(offer.value.money)}</strong> with tax. The job stays as it
          was agreed until the client agrees at Figures, Agreement.
        </p>
      ) : (
        <p role="alert">{offer.problem.sentence}</p>
      )}
      <div className="button-row">
        <Button
          className="act-button"
          isDisabled={isLooking || isTaking || !offer.ok}
          onPress={() => withNumber(propose)}
        >
          Propose the change order
        </Button>
        <Button className="plain-button" onPress={onDone}>
          Cancel
        </Button>
      </div>
    </>
  )
}

/** What a finding changes, priced as the whole job with it less the whole job without. */
function foundOffer(job: Job, found: Condition) {
  const changes: readonly JobChange[] = [{ kind: 'finding', condition: found }]
  const money = priceOfChanges(priceJob, job, changes)
  if (!money.ok) return money
  const { minutes } = priceJob(job)
  return succeed({
    title: capital(conditionWords[found.kind]),
    why: found.note === '' ? 'Found on site.' : `Found on site: ${found.note}`.slice(0, 4000),
    changes,
    money: money.value,
    minutes: { before: minutes, after: minutes + money.value.minutes },
  })
}

function answeredPlan({ plan, isSettled }: SearchState) {
  return isSettled ? (plan?.workPlan ?? null) : null
}
