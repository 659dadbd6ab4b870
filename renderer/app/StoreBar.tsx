import type { ReactNode } from 'react'
import { Button } from 'react-aria-components'
import { useStore } from 'zustand'
import { jobStore, useJobState } from '../state/app.ts'
import { dismissLost, draftStore } from '../state/drafts.ts'
import { changeWords, clashWords, unfitText } from './change-words.ts'
import { copyText } from './copy-text.ts'
import { putBack, saveCopy } from './job-book.ts'

/** Above the title block, for as long as page and book are not equal and somebody has to know or decide. */
export function StoreBar() {
  const stored = useJobState((state) => state.stored)
  const unfit = useJobState((state) => state.unfit)
  const hasLost = useStore(draftStore, ({ lost }) => lost.length > 0)
  return (
    <div className="store-place" aria-live="polite">
      {stored === 'notStored' ? <NotStored /> : null}
      {stored === 'refused' ? <Refused /> : null}
      {stored === 'behind' ? <Behind /> : null}
      {stored === 'gone' ? <Gone /> : null}
      {unfit === null ? null : <LeftOut />}
      {hasLost ? <LostText /> : null}
    </div>
  )
}

function Bar(props: {
  readonly label: string
  readonly kind: 'wait' | 'stop'
  readonly children: ReactNode
  readonly buttons: ReactNode
}) {
  return (
    <section className={`store-bar store-bar-${props.kind}`} aria-label={props.label}>
      <span className="problem-mark" aria-hidden="true">
        !
      </span>
      <div className="store-words">{props.children}</div>
      <div className="button-row">{props.buttons}</div>
    </section>
  )
}

function Act(props: {
  readonly does: () => unknown
  readonly children: ReactNode
  readonly isPlain?: boolean
}) {
  return (
    <Button className={props.isPlain ? 'plain-button' : 'act-button'} onPress={() => void props.does()}>
      {props.children}
    </Button>
  )
}

function NotStored() {
  const trouble = useJobState((state) => state.trouble)
  const count = useOwnCount()
  return (
    <Bar
      label="Not stored"
      kind="wait"
      buttons={
        <>
          <Act does={jobStore.storeNow}>Try again now</Act>
          <Act does={saveCopy} isPlain>
            Save a copy as a file
          </Act>
        </>
      }
    >
      <strong>{count} not stored yet.</strong> {trouble?.problem.sentence} Keep this page open: it is tried
      again by itself{trouble === null ? '' : `, next in ${trouble.pause / 1000} s`}.
    </Bar>
  )
}

function Refused() {
  const refused = useJobState((state) => state.refused)
  return (
    <Bar
      label="Refused"
      kind="stop"
      buttons={
        <>
          <Act does={jobStore.takeBackRefused}>Take it back, keep the rest</Act>
          <Act does={saveCopy} isPlain>
            Save a copy as a file
          </Act>
        </>
      }
    >
      <strong>The book cannot store “{refused?.name}”.</strong> {refused?.problem.sentence} Nothing done after
      it is stored until you take it back.
    </Bar>
  )
}

/** So many are listed; the rest is counted. */
const listed = 4

function Behind() {
  const job = useJobState((state) => state.job)
  const own = job === null ? [] : jobStore.unsent()
  const words = job === null ? [] : own.slice(0, listed).map((change) => changeWords(job, change))
  const more = own.length - words.length
  return (
    <Bar
      label="Changed in another window"
      kind="wait"
      buttons={
        <>
          <Act does={jobStore.reapply}>Put my edits on top</Act>
          <Act does={jobStore.takeNewer} isPlain>
            Leave mine, show the newer state
          </Act>
        </>
      }
    >
      <strong>This job was changed in another window.</strong>{' '}
      {own.length === 0
        ? 'What you typed in a field here is not entered yet.'
        : `Not stored yet from this window: ${words.join('; ')}${more === 0 ? '' : `; and ${more} more`}.`}
    </Bar>
  )
}

function Gone() {
  return (
    <Bar
      label="Deleted from the book"
      kind="stop"
      buttons={
        <>
          <Act does={putBack}>Put it back into the book</Act>
          <Act does={saveCopy} isPlain>
            Save a copy as a file
          </Act>
        </>
      }
    >
      <strong>This job was deleted from the book in another window.</strong> What you see here is kept on this
      page only.
    </Bar>
  )
}

function LeftOut() {
  const unfit = useJobState((state) => state.unfit)
  if (unfit === null) return null
  const words = unfit.clashes.slice(0, listed).map((clash) => {
    const what = changeWords(unfit.job, clash.change)
    return unfit.isByChoice ? what : `${what} (${clashWords(clash)})`
  })
  const more = unfit.clashes.length - words.length
  return (
    <Bar
      label="Edits left out"
      kind="stop"
      buttons={
        <>
          <Act does={() => copyText(unfitText(unfit))}>Copy them</Act>
          <Act does={jobStore.dismissUnfit} isPlain>
            OK
          </Act>
        </>
      }
    >
      <strong>{unfit.isByChoice ? 'Your edits, left out:' : 'These of your edits no longer fit:'}</strong>{' '}
      <span>
        {words.join('; ')}
        {more === 0 ? '' : `; and ${more} more`}.
      </span>
      <details>
        <summary>All they say</summary>
        <pre className="detail-text">{unfitText(unfit)}</pre>
      </details>
    </Bar>
  )
}

/** What was typed in fields that have gone since. */
function LostText() {
  const lost = useStore(draftStore, (state) => state.lost)
  const text = lost.map((draft) => `${draft.label}: ${draft.text}`).join('\n')
  return (
    <Bar
      label="Typed, not entered"
      kind="wait"
      buttons={
        <>
          <Act does={() => copyText(text)}>Copy it</Act>
          <Act does={dismissLost} isPlain>
            OK
          </Act>
        </>
      }
    >
      <strong>Typed but not entered; the field is gone:</strong> {text}
    </Bar>
  )
}

/** `1 change is`, `3 changes are`. */
function useOwnCount(): string {
  useJobState((state) => state.job)
  const { length } = jobStore.unsent()
  return length === 1 ? '1 change is' : `${Math.max(1, length)} changes are`
}
