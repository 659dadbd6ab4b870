import { useDeferredValue, useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { applyChanges, changesBack } from '../../../../core/agreement/changes.ts'
import { pricedOptions } from '../../../../core/agreement/quote.ts'
import { lessMoney, noMoney, totalCents } from '../../../../core/agreement/taxed-money.ts'
import { priceJob, priceOfChanges } from '../../../../core/agreement/whole-price.ts'
import type { JobOption } from '../../../../core/project/agreement-records.ts'
import type { Job } from '../../../../core/project/job.ts'
import { succeed } from '../../../../core/project/problem.ts'
import type { Takeoff } from '../../../../core/quantities/takeoff-types.ts'
import { signedMinutes } from '../../../../core/units/duration.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { newId } from '../../../state/new-id.ts'
import { signedMoney } from '../../parts/dealings/agreement-words.ts'
import { Empty } from '../../parts/Empty.tsx'
import { EntryField } from '../../parts/EntryField.tsx'
import { edit, removeRecord } from '../../parts/edits.ts'
import { words } from '../../parts/entries.ts'
import { firstWish, WishForm, wishOf } from './WishForm.tsx'

/** Work the client may choose: what each costs is the whole job with it less the whole job without it. */
export function OptionsTab({ job, takeoff }: { readonly job: Job; readonly takeoff: Takeoff }) {
  const current = useDeferredValue(job)
  const options = useMemo(() => pricedOptions(priceJob, current), [current])
  return (
    <div className="two-panes">
      <div className="pane pane-wide scroll">
        {options.length === 0 ? (
          <Empty title="No options yet">
            <p>
              Take a part of the job out of the price as an extra, or offer one coat more, another product or
              another color: the client checks what is wanted, and that becomes part of the job.
            </p>
          </Empty>
        ) : (
          <table className="pick-table">
            <thead>
              <tr>
                <th scope="col">Option</th>
                <th scope="col">One of</th>
                <th scope="col" className="number">
                  Work
                </th>
                <th scope="col" className="number">
                  Before tax
                </th>
                <th scope="col" className="number">
                  Tax
                </th>
                <th scope="col" className="number">
                  Price
                </th>
                <th scope="col">
                  <span className="unseen">What to do with it</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {options.map((each) => (
                <OptionRow key={each.option.id} {...each} />
              ))}
            </tbody>
          </table>
        )}
      </div>
      <aside className="pane pane-side" aria-label="New option">
        <NewOption job={job} takeoff={takeoff} />
      </aside>
    </div>
  )
}

function OptionRow({ option, price }: ReturnType<typeof pricedOptions>[number]) {
  return (
    <tr>
      <td>
        <strong>{option.name}</strong>
        {option.note === '' ? null : <div className="quiet">{option.note}</div>}
        {price.ok ? null : <div>{price.problem.sentence}</div>}
      </td>
      <td>{option.oneOf || '–'}</td>
      <td className="number">{price.ok ? signedMinutes(price.value.minutes) : '–'}</td>
      <td className="number">{price.ok ? formatCents(price.value.beforeTaxCents) : '–'}</td>
      <td className="number">{price.ok ? formatCents(price.value.taxCents) : '–'}</td>
      <td className="number">{price.ok ? formatCents(totalCents(price.value)) : '–'}</td>
      <td>
        <span className="button-row">
          <Button
            className="plain-button"
            aria-label={`Put into the job: ${option.name}`}
            isDisabled={!price.ok}
            onPress={() => takeIn(option)}
          >
            Put into the job
          </Button>
          <Button
            className="plain-button"
            aria-label={`Drop the option “${option.name}”`}
            onPress={() => removeRecord('Drop an option', 'options', option.id)}
          >
            Drop
          </Button>
        </span>
      </td>
    </tr>
  )
}

function takeIn({ id, changes }: JobOption): void {
  edit('Put an option into the job', (job) => {
    const { [id]: _taken, ...options } = job.options
    const changed = applyChanges(job, changes)
    return changed.ok ? succeed({ ...changed.value, options }) : changed
  })
}

function NewOption({ job, takeoff }: { readonly job: Job; readonly takeoff: Takeoff }) {
  const [draft, setDraft] = useState(firstWish)
  const [name, setName] = useState<string | null>(null)
  const [note, setNote] = useState('')
  const [oneOf, setOneOf] = useState('')
  const wish = useMemo(() => wishOf(job, takeoff, draft), [job, takeoff, draft])
  const price = useMemo(
    () => (wish.changes.length === 0 ? null : priceOfChanges(priceJob, job, wish.changes)),
    [job, wish],
  )

  function add() {
    const isDone = edit('Add an option', (now) => {
      const out = draft.kind === 'extra' ? applyChanges(now, wish.changes) : succeed(now)
      if (!out.ok) return out
      const option: JobOption = {
        id: newId('option'),
        name: name ?? wish.name,
        note,
        oneOf,
        changes: draft.kind === 'extra' ? changesBack(now, wish.changes) : wish.changes,
      }
      return succeed({ ...out.value, options: { ...now.options, [option.id]: option } })
    })
    if (isDone) {
      setName(null)
      setNote('')
    }
  }

  return (
    <section className="block">
      <h3>New option</h3>
      <WishForm
        job={job}
        takeoff={takeoff}
        draft={draft}
        hasExtra
        onChange={(next) => {
          setDraft(next)
          setName(null)
        }}
      />
      <EntryField
        label="Name on paper"
        width="wide"
        shown={name ?? wish.name}
        read={words(200, true)}
        onCommit={setName}
      />
      <EntryField
        label="Words for the client"
        width="wide"
        lines={2}
        shown={note}
        read={words(4000)}
        onCommit={setNote}
      />
      <EntryField
        label="Alternative: one of"
        shown={oneOf}
        read={words(200)}
        onCommit={setOneOf}
        hint="Give alternatives the same word; one of them can be taken."
      />
      <p role="status">
        {price === null ? (
          'Nothing of this is in the job: choose another place or kind.'
        ) : price.ok ? (
          <>
            <strong>
              {signedMoney(draft.kind === 'extra' ? lessMoney(noMoney, price.value) : price.value)}
            </strong>{' '}
            with tax: the whole job with it less the whole job without it, by its hours.
          </>
        ) : (
          price.problem.sentence
        )}
      </p>
      <div className="button-row">
        <Button className="act-button" isDisabled={price === null || !price.ok} onPress={add}>
          Add the option
        </Button>
      </div>
    </section>
  )
}
