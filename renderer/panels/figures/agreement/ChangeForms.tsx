import { useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import type { Agreement } from '../../../../core/agreement/agreement.ts'
import { applyChanges } from '../../../../core/agreement/changes.ts'
import { isNothing, lessMoney } from '../../../../core/agreement/taxed-money.ts'
import { priceJob } from '../../../../core/agreement/whole-price.ts'
import type { DealingOf, JobChange, Money } from '../../../../core/project/agreement-records.ts'
import type { Job } from '../../../../core/project/job.ts'
import type { Takeoff } from '../../../../core/quantities/takeoff-types.ts'
import { dateWords } from '../../../../core/time/date-words.ts'
import { newId } from '../../../state/new-id.ts'
import { takePaperNumber } from '../../../state/paper-numbers.ts'
import { forget, searchFor, useForecast, useTrial } from '../../../state/planner.ts'
import { signedMoney } from '../../parts/dealings/agreement-words.ts'
import { keepDealing, keepDealingWith } from '../../parts/dealings/keep-dealing.ts'
import { movedRoomWords, offerChange } from '../../parts/dealings/offer-change.ts'
import { useNumbered } from '../../parts/dealings/use-numbered.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { words } from '../../parts/entries.ts'
import { OneOf } from '../../parts/OneOf.tsx'
import { driftOf } from './Standing.tsx'
import { firstWish, WishForm, wishOf } from './WishForm.tsx'

interface Parts {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly agreement: Agreement
  /** Moment on site. */
  readonly at: string
}

/** Change orders that wait for the client's answer. */
export function OpenChanges({ job, agreement, at }: Parts) {
  const open = agreement.changes.filter(({ answer }) => answer === null)
  return open.map(({ change }) => <OpenChange key={change.id} job={job} change={change} at={at} />)
}

function OpenChange(props: {
  readonly job: Job
  readonly change: DealingOf<'changeOffered'>
  readonly at: string
}) {
  const { job, change, at } = props
  const [by, setBy] = useState(job.header.client)
  const [why, setWhy] = useState('')
  const said = (answer: 'agreed' | 'declined') => ({
    id: newId('dealing'),
    kind: 'changeAnswered' as const,
    on: at.slice(0, 10),
    changeId: change.id,
    answer,
    by,
    why,
  })
  return (
    <section className="block" aria-label={`Answer to change order ${change.number}`}>
      <h3>
        Change order {change.number}: {change.title}, {signedMoney(change)}
      </h3>
      <div className="field-grid">
        <EntryField label="Answered by" shown={by} read={words(200, true)} onCommit={setBy} />
        <EntryField label="What was said" width="wide" shown={why} read={words(4000)} onCommit={setWhy} />
      </div>
      <div className="button-row">
        <Button
          className="act-button"
          isDisabled={by === ''}
          onPress={() =>
            keepDealingWith(`Agree change order ${change.number}`, said('agreed'), change.changes, [], at)
          }
        >
          Agreed and signed
        </Button>
        <Button
          className="plain-button"
          isDisabled={by === ''}
          onPress={() => keepDealing(`Keep change order ${change.number} as declined`, said('declined'), at)}
        >
          Declined
        </Button>
      </div>
    </section>
  )
}

interface PricedChange {
  readonly title: string
  readonly changes: readonly JobChange[]
  readonly money: Money | null
  readonly sentence: string
  readonly after: Job
}

/** A new change order: something to be otherwise, or what was changed in the job since it was agreed. */
export function ChangeForm({
  job,
  takeoff,
  agreement,
  at,
  isOpen,
  onOpen: setOpen,
}: Parts & { readonly isOpen: boolean; readonly onOpen: (isOpen: boolean) => void }) {
  const drift = driftOf(job, agreement)
  const hasDrift = drift !== null && !isNothing(drift)
  return (
    <section className="block" aria-label="New change order">
      <h3>New change order</h3>
      {isOpen ? (
        <NewChange
          job={job}
          takeoff={takeoff}
          at={at}
          drift={hasDrift ? drift : null}
          onDone={() => setOpen(false)}
        />
      ) : (
        <>
          <p className="quiet">Priced as the whole job with the change less the whole job without it.</p>
          <div className="button-row">
            <Button className="plain-button" onPress={() => setOpen(true)}>
              Make a change order
            </Button>
          </div>
        </>
      )}
    </section>
  )
}

function NewChange(props: {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly at: string
  readonly drift: Money | null
  readonly onDone: () => void
}) {
  const { job, takeoff, at, drift, onDone } = props
  const { isTaking, withNumber } = useNumbered(() => takePaperNumber('changeOrder'))
  const [source, setSource] = useState<'wish' | 'since'>(drift === null ? 'wish' : 'since')
  const [draft, setDraft] = useState<typeof firstWish>({ ...firstWish, kind: 'moreCoats' })
  const [name, setName] = useState<string | null>(null)
  const [why, setWhy] = useState('')
  const priced = useMemo((): PricedChange => {
    if (source === 'since' && drift !== null)
      return { title: 'Changed since the agreement', changes: [], money: drift, sentence: '', after: job }
    return pricedWish(job, takeoff, draft)
  }, [source, drift, job, takeoff, draft])
  const { finishesOn, moves, isLooking } = useTimes(job, priced.after)
  const { money } = priced

  function offer(number: number) {
    if (money === null) return
    const minutes = { before: priceJob(job).minutes, after: priceJob(priced.after).minutes }
    const { changes } = priced
    const offered = { title: name ?? priced.title, why, changes, money, minutes, finishesOn, moves }
    if (offerChange(number, offered, at)) onDone()
  }

  return (
    <>
      {drift === null ? null : (
        <OneOf
          label="What it is about"
          options={[
            { id: 'since', label: 'What was changed since' },
            { id: 'wish', label: 'Something new' },
          ]}
          chosen={source}
          onChoose={setSource}
        />
      )}
      {source === 'since' ? null : (
        <WishForm
          job={job}
          takeoff={takeoff}
          draft={draft}
          hasExtra={false}
          onChange={(next) => {
            setDraft(next)
            setName(null)
          }}
        />
      )}
      <EntryField
        label="Title"
        width="wide"
        shown={name ?? priced.title}
        read={words(200, true)}
        onCommit={setName}
      />
      <EntryField label="Why" width="wide" lines={2} shown={why} read={words(4000)} onCommit={setWhy} />
      <PriceAndDays
        priced={priced}
        days={isLooking ? 'Its days are being worked out.' : dayWords(finishesOn, job)}
      />
      <div className="button-row">
        <Button
          className="act-button"
          isDisabled={money === null || isLooking || isTaking}
          onPress={() => withNumber(offer)}
        >
          Write the change order
        </Button>
        <Button className="plain-button" onPress={onDone}>
          Cancel
        </Button>
      </div>
    </>
  )
}

function PriceAndDays({ priced, days }: { readonly priced: PricedChange; readonly days: string }) {
  return (
    <p role="status">
      {priced.money === null ? (
        priced.sentence
      ) : (
        <>
          <strong>{signedMoney(priced.money)}</strong> with tax.{' '}
        </>
      )}
      {days}
    </p>
  )
}

function pricedWish(job: Job, takeoff: Takeoff, draft: typeof firstWish): PricedChange {
  const { name, changes } = wishOf(job, takeoff, draft)
  const none = { title: name, changes, money: null, after: job }
  if (changes.length === 0)
    return { ...none, sentence: 'Nothing of this is in the job: choose another place or kind.' }
  const after = applyChanges(job, changes)
  if (!after.ok) return { ...none, sentence: after.problem.sentence }
  const money = lessMoney(priceJob(after.value), priceJob(job))
  return { ...none, money, sentence: '', after: after.value }
}

/** The last day of work without and with the change, and which rooms it moves. */
function useTimes(job: Job, after: Job) {
  const present = useForecast()
  const trial = useTrial()
  useEffect(() => {
    if (after !== job) searchFor('trial', after)
  }, [after, job])
  useEffect(() => () => forget('trial'), [])
  const before = present.isSettled ? (present.plan?.workPlan ?? null) : null
  const isTried = after !== job && trial.job === after && trial.isSettled
  const then = after === job ? before : isTried ? (trial.plan?.workPlan ?? null) : null
  return {
    finishesOn: { before: before?.finishesOn ?? null, after: then?.finishesOn ?? null },
    moves: before === null || then === null ? [] : movedRoomWords(job, before, then),
    isLooking: after !== job && trial.status === 'searching' && !isTried,
  }
}

function dayWords(
  { before, after }: { readonly before: string | null; readonly after: string | null },
  job: Job,
): string {
  if (before === null || after === null) return 'There is no plan to say which days it moves.'
  const day = (date: string) => dateWords(date, job.header.unitSystem)
  return before === after
    ? `The last day stays ${day(before)}.`
    : `The last day becomes ${day(after)} instead of ${day(before)}.`
}
