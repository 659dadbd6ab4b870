import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { HoldRecord } from '../../../core/project/hold-records.ts'
import { type Job, records } from '../../../core/project/job.ts'
import { heldUntil } from '../../../core/specification/holds.ts'
import type { Hold, Specification } from '../../../core/specification/types.ts'
import { dateWords, dateWordsWithYear } from '../../../core/time/date-words.ts'
import { newId } from '../../state/new-id.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { Callout, QuietNote } from './Callout.tsx'
import { EntryField } from './EntryField.tsx'
import { putRecord } from './edits.ts'
import { dateEntry, orNothing, words } from './entries.ts'
import { SourceDetails } from './SourceDetails.tsx'

/** What has to be cleared in a room before its surfaces are touched: who sees to it, when, and who cleared it. */
export function HoldPapers(props: {
  readonly job: Job
  readonly specification: Specification
  readonly roomId: string
}) {
  const holds = props.specification.holds.filter((hold) => hold.roomId === props.roomId)
  if (holds.length === 0) return null
  return (
    <section className="block" aria-label="Holds">
      <h3>To be cleared first</h3>
      {holds.map((hold) => (
        <HoldPaper key={hold.key} job={props.job} hold={hold} />
      ))}
    </section>
  )
}

function HoldPaper({ job, hold }: { readonly job: Job; readonly hold: Hold }) {
  const { today } = useSiteNow()
  const put = (action: string, change: Partial<HoldRecord>) =>
    putRecord(action, 'holds', { ...recordOf(job, hold), ...change })
  if (hold.cleared !== null) {
    const { on, by } = hold.cleared
    return (
      <QuietNote
        kind="done"
        title={`Cleared ${dateWordsWithYear(on, job.header.unitSystem)} by ${by}`}
        words={hold.reason}
      >
        <div className="button-row">
          <Button
            className="plain-button"
            onPress={() => put('Open a hold again', { clearedOn: null, clearedBy: '' })}
          >
            Not cleared after all
          </Button>
        </div>
      </QuietNote>
    )
  }
  const until = heldUntil(hold, today)
  const form = <HoldForm hold={hold} today={today} onPut={put} />
  return until.kind === 'until' ? (
    <QuietNote
      kind="stop"
      title={`Hold, expected ${dateWords(until.on, job.header.unitSystem)}`}
      words={hold.reason}
    >
      {form}
    </QuietNote>
  ) : (
    <Callout
      kind="stop"
      title={until.kind === 'noDate' && until.isOverdue ? 'Hold: overdue' : 'Hold: no date'}
    >
      {hold.reason}
      {form}
    </Callout>
  )
}

function HoldForm(props: {
  readonly hold: Hold
  readonly today: string
  readonly onPut: (action: string, change: Partial<HoldRecord>) => void
}) {
  const { hold, today, onPut: put } = props
  return (
    <>
      <SourceDetails source={hold.source} />
      <p className="quiet">{waitingWords(hold)}</p>
      <div className="field-grid">
        <EntryField
          label="Who sees to it"
          width="wide"
          shown={hold.whoSeesToIt}
          read={words(200)}
          onCommit={(whoSeesToIt) => put('Say who sees to a hold', { whoSeesToIt })}
        />
        <EntryField
          label="Expected on"
          kind="date"
          shown={hold.expectedOn ?? ''}
          read={orNothing<string>(dateEntry)}
          hint={
            hold.expectedIsAssumed
              ? `Assumed: the usual ${hold.usualDays === 1 ? 'day' : `${hold.usualDays} days`}. Empty: nobody knows.`
              : ''
          }
          onCommit={(expectedOn) => put('Say when a hold is expected', { expectedOn })}
        />
        <ClearForm
          today={today}
          onClear={(clearedOn, clearedBy) => put('Clear a hold', { clearedOn, clearedBy })}
        />
      </div>
    </>
  )
}

function ClearForm(props: {
  readonly today: string
  readonly onClear: (clearedOn: string, clearedBy: string) => void
}) {
  const [clearedOn, setOn] = useState(props.today.slice(0, 10))
  const [clearedBy, setBy] = useState('')
  return (
    <>
      <EntryField label="Cleared on" kind="date" shown={clearedOn} read={dateEntry} onCommit={setOn} />
      <EntryField label="Cleared by" shown={clearedBy} read={words(200)} onCommit={setBy} />
      <div className="button-row entry-wide">
        <Button
          className="plain-button"
          isDisabled={clearedBy.trim() === '' || clearedOn === ''}
          onPress={() => props.onClear(clearedOn, clearedBy)}
        >
          Clear it
        </Button>
      </div>
    </>
  )
}

function waitingWords({ stepKeys }: Hold): string {
  return stepKeys.length === 1 ? '1 step waits for it.' : `${stepKeys.length} steps wait for it.`
}

/** What was said of it so far; the assumed day stands until another is written down. */
function recordOf(job: Job, hold: Hold): HoldRecord {
  const known = records(job.holds).find((record) => record.holdKey === hold.key)
  return (
    known ?? {
      id: newId('hold'),
      holdKey: hold.key,
      whoSeesToIt: '',
      expectedOn: hold.expectedOn,
      clearedOn: null,
      clearedBy: '',
      note: '',
    }
  )
}
