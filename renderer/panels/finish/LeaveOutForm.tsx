import { useState } from 'react'
import { Button } from 'react-aria-components'
import { type LeftOut, leftOutSchema } from '../../../core/project/shop-records.ts'
import { useDraft } from '../../state/drafts.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { dateEntry, words } from '../parts/entries.ts'

const blank: LeftOut = { testedBy: '', reportNumber: '', testedOn: '', found: '' }

/** Asks for the written reason without which a safety rule is not left out. */
export function LeaveOutForm(props: {
  readonly title: string
  readonly onLeaveOut: (reason: LeftOut) => void
  readonly onCancel: () => void
}) {
  const [reason, setReason] = useState(blank)
  const read = leftOutSchema.safeParse(reason)
  const typed = Object.values(reason).filter((part) => part !== '')
  const release = useDraft(
    typed.length === 0
      ? null
      : { label: `Leave out “${props.title}”`, text: typed.join(', '), take: () => false },
  )
  const put = (change: Partial<LeftOut>) => setReason({ ...reason, ...change })
  return (
    <section className="block leave-out" aria-label={`Leave out “${props.title}”`}>
      <p>
        This rule protects people in the house and on the job. It follows from the year the house was built
        and from what was found. Leave it out only where a certified person has tested. What you write here is
        printed on the cover and on the room sheets.
      </p>
      <div className="rule-numbers">
        <EntryField
          label="Tested by (certified person, certificate)"
          width="wide"
          shown={reason.testedBy}
          read={words(200)}
          onCommit={(testedBy) => put({ testedBy })}
        />
        <EntryField
          label="Number of the report"
          shown={reason.reportNumber}
          read={words(200)}
          onCommit={(reportNumber) => put({ reportNumber })}
        />
        <EntryField
          label="Tested on"
          kind="date"
          shown={reason.testedOn}
          read={dateEntry}
          onCommit={(testedOn) => put({ testedOn })}
        />
      </div>
      <EntryField
        label="What was tested and found"
        width="wide"
        lines={2}
        shown={reason.found}
        read={words(4000)}
        onCommit={(found) => put({ found })}
      />
      <div className="button-row">
        <Button
          className="act-button"
          isDisabled={!read.success}
          onPress={() => {
            if (!read.success) return
            release()
            props.onLeaveOut(read.data)
          }}
        >
          Leave it out for this reason
        </Button>
        <Button
          className="plain-button"
          onPress={() => {
            release()
            props.onCancel()
          }}
        >
          Keep the rule
        </Button>
      </div>
      {read.success ? null : <p className="quiet">All four are needed.</p>}
    </section>
  )
}
