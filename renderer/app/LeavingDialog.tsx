import { useState } from 'react'
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { useStore } from 'zustand'
import { jobStore, useJobState } from '../state/app.ts'
import { draftStore } from '../state/drafts.ts'
import { changeWords } from './change-words.ts'
import { isEverythingStored, type LeavingQuestion, leavingStore, storeEverything } from './leaving.ts'

const wayOut: Readonly<Record<LeavingQuestion['what'], string | null>> = {
  job: 'Leave without it',
  window: 'Close without it',
  // The browser asks itself when the page is closed again.
  page: null,
}

/** Asked before a job, the window or the page is left with something the book does not have. */
export function LeavingDialog() {
  const question = useStore(leavingStore, (state) => state.question)
  return (
    <ModalOverlay
      className="veil"
      isOpen={question !== null}
      onOpenChange={(isOpen) => {
        if (!isOpen) question?.answer(false)
      }}
    >
      <Modal className="dialog-frame">
        <Dialog className="dialog" role="alertdialog">
          {question === null ? null : <LeavingWords question={question} />}
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

function LeavingWords({ question }: { readonly question: LeavingQuestion }) {
  const [isBusy, setBusy] = useState(false)
  const trouble = useJobState((state) => state.trouble ?? state.refused)
  const leave = wayOut[question.what]

  async function storeNow() {
    setBusy(true)
    await storeEverything()
    setBusy(false)
    if (isEverythingStored()) question.answer(true)
  }

  return (
    <>
      <Heading slot="title">Not everything is stored</Heading>
      <UnsentList />
      {trouble === null ? null : <p>{trouble.problem.sentence}</p>}
      <div className="button-row sheet-end">
        <Button className="act-button" isDisabled={isBusy} onPress={() => void storeNow()}>
          {isBusy ? 'Storing …' : 'Store now'}
        </Button>
        {leave === null ? null : (
          <Button className="stop-button" onPress={() => question.answer(true)}>
            {leave}
          </Button>
        )}
        <Button className="plain-button" onPress={() => question.answer(false)}>
          Stay
        </Button>
      </div>
    </>
  )
}

/** So many are listed; the rest is counted. */
const listed = 8

function UnsentList() {
  const job = useJobState((state) => state.job)
  useJobState((state) => state.stored)
  const drafts = useStore(draftStore, (state) => state.drafts)
  const edits = job === null ? [] : jobStore.unsent().map((change) => changeWords(job, change))
  const lines = [
    ...[...drafts.values()].map(({ label, text }) => `Typed in “${label}” and not entered: ${text}`),
    ...edits,
  ]
  const more = lines.length - listed
  return (
    <>
      <p>The book of jobs does not have this yet:</p>
      <ul className="unsent-list">
        {lines.slice(0, listed).map((line) => (
          <li key={line}>{line}</li>
        ))}
        {more > 0 ? <li>and {more} more</li> : null}
      </ul>
    </>
  )
}
