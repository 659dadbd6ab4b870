import { useStore } from 'zustand'
import { shopKey } from '../../core/contract/requests.ts'
import { type Job, records } from '../../core/project/job.ts'
import { dateWordsWithYear } from '../../core/time/date-words.ts'
import { HintButton } from '../panels/parts/HintButton.tsx'
import { jobStore, useJobState, useView, viewStore } from '../state/app.ts'
import { draftStore } from '../state/drafts.ts'
import { isShut, useBookView } from './backups/book-state.ts'

const storedWords = {
  none: 'No job is open',
  stored: '✓ Stored',
  storing: 'Storing …',
  typed: '✎ Typed, not entered yet',
  notStored: '! Not stored yet',
  refused: '! Cannot be stored',
  behind: '! Changed elsewhere',
  gone: '! Not in the book',
  shut: '! The book is not open',
} as const

/** "Stored" only where page and book are equal and nothing typed is waiting in a field. */
function useStanding(): keyof typeof storedWords {
  const stored = useJobState((state) => state.stored)
  const isTyping = useStore(draftStore, ({ drafts }) => drafts.size > 0)
  const isBookShut = useBookView(({ book }) => isShut(book))
  const isOpen = useJobState((state) => state.job !== null)
  if (stored === 'stored' && isBookShut) return 'shut'
  if (!isOpen) return 'none'
  return stored === 'stored' && isTyping ? 'typed' : stored
}

/** Along the lower edge, as on a drawing sheet: whose job this is, what was done last, and whether it is safe in the book. */
export function TitleBlock() {
  const job = useJobState((state) => state.job)
  const stored = useStanding()
  const hasTakenOver = useJobState((state) => state.hasTakenOver)
  const last = useJobState((state) => state.past.at(-1)?.name ?? null)
  const next = useJobState((state) => state.future[0]?.name ?? null)
  const host = useView((state) => state.host)
  const isShop = useJobState((state) => state.jobKey === shopKey)
  return (
    <footer className="title-block">
      {isShop ? (
        <Cell label="Once in the book" kind="wide">
          Shop sheet
        </Cell>
      ) : (
        <JobCells job={job} />
      )}
      <div className="title-cell title-actions">
        <HintButton className="plain-button" isDisabled={last === null} onPress={jobStore.undo} hint="Ctrl+Z">
          Undo{last === null ? '' : `: ${last}`}
        </HintButton>
        <HintButton
          className="plain-button"
          isDisabled={next === null}
          onPress={jobStore.redo}
          hint="Ctrl+Shift+Z"
        >
          Redo{next === null ? '' : `: ${next}`}
        </HintButton>
      </div>
      <Cell label="Book">
        <span role="status" data-stored={stored} className={`stored stored-${stored}`}>
          {storedWords[stored]}
          {stored === 'stored' && hasTakenOver ? ', with the edits of the other window' : null}
        </span>
      </Cell>
      <Cell label="Runs as" kind="host">
        {host === null ? '…' : host.host === 'desktop' ? 'desktop program' : 'page in a browser'}
      </Cell>
      <div className="title-cell">
        <HintButton
          className="plain-button"
          hint="F1"
          onPress={() => viewStore.setState({ isHelpOpen: true })}
        >
          Help
        </HintButton>
      </div>
    </footer>
  )
}

function JobCells({ job }: { readonly job: Job | null }) {
  return (
    <>
      <SheetCell job={job} />
      <Cell label="Rooms">{job === null ? '0' : records(job.rooms).length}</Cell>
      <Cell label="Starts">
        {job === null ? 'not set' : dateWordsWithYear(job.header.startsOn, job.header.unitSystem)}
      </Cell>
    </>
  )
}

/** Title, client and age of the house in one button, which opens the job sheet. */
function SheetCell({ job }: { readonly job: Job | null }) {
  if (job === null)
    return (
      <Cell label="Job" kind="wide">
        none open
      </Cell>
    )
  const { title, client, yearBuilt, isDemonstration } = job.header
  return (
    <HintButton
      className="title-cell title-wide title-sheet"
      hint="Open the job sheet (Alt+J)"
      onPress={() => viewStore.setState({ jobSheet: 'open' })}
    >
      <span className="title-label">Job sheet</span>
      <span className="title-value">
        <span>{title}</span>
        <span className="title-facts">
          {isDemonstration ? 'demonstration · ' : ''}
          {client === '' ? 'client not named' : client} ·{' '}
          {yearBuilt === null ? 'age not known' : `built ${yearBuilt}`}
        </span>
      </span>
    </HintButton>
  )
}

function Cell(props: {
  readonly label: string
  /** `wide` takes the room that is left, `host` is left out of a narrow window. */
  readonly kind?: 'wide' | 'host'
  readonly children: React.ReactNode
}) {
  return (
    <div className={props.kind === undefined ? 'title-cell' : `title-cell title-${props.kind}`}>
      <span className="title-label">{props.label}</span>
      <span className="title-value">{props.children}</span>
    </div>
  )
}
