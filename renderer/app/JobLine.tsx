import { useState } from 'react'
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components'
import { stageWords } from '../../core/agreement/stage-words.ts'
import type { JobSummary } from '../../core/contract/requests.ts'
import { formatCents } from '../../core/units/money.ts'
import { changeListed, deleteJob, duplicateJob, openJob } from './job-book.ts'

interface JobLineProps {
  readonly job: JobSummary
  readonly isOpen: boolean
  /** Another job comes on the table. */
  readonly onOpen: (work: Promise<void>) => void
  /** The list is another one now. */
  readonly onChanged: () => void
}

/** One job of the list, and what can be done with it there. */
export function JobLine({ job, isOpen, onOpen, onChanged }: JobLineProps) {
  const [asked, setAsked] = useState<'name' | 'leave' | null>(null)
  const done = (work: Promise<unknown>) =>
    void work.then(() => {
      setAsked(null)
      onChanged()
    })
  return (
    <div className="book-line">
      {asked === 'name' ? (
        <RenameForm
          job={job}
          onCancel={() => setAsked(null)}
          onName={(title) => done(changeListed(job.jobKey, 'Name the job', { title }))}
        />
      ) : (
        <JobWords job={job} isOpen={isOpen} />
      )}
      {asked === 'leave' ? (
        <span className="button-row">
          <Button className="stop-button" onPress={() => done(deleteJob(job.jobKey))}>
            Delete it; the backup keeps it
          </Button>
          <Button className="plain-button" onPress={() => setAsked(null)}>
            Keep it
          </Button>
        </span>
      ) : null}
      {asked === null ? (
        <span className="button-row">
          <Button className="plain-button" isDisabled={isOpen} onPress={() => onOpen(openJob(job.jobKey))}>
            Open
          </Button>
          <MenuTrigger>
            <Button className="plain-button" aria-label={`More for ${job.title}`}>
              More
            </Button>
            <Popover className="choice-list">
              <Menu
                className="job-menu"
                onAction={(chosen) => {
                  if (chosen === 'copy') onOpen(duplicateJob(job.jobKey))
                  if (chosen === 'name' || chosen === 'leave') setAsked(chosen)
                  if (chosen === 'away') {
                    const action = job.isPutAway ? 'Bring the job back' : 'Put the job away'
                    done(changeListed(job.jobKey, action, { isPutAway: !job.isPutAway }))
                  }
                }}
              >
                <MenuItem id="name" className="choice-item">
                  Rename
                </MenuItem>
                <MenuItem id="copy" className="choice-item">
                  Duplicate and open the copy
                </MenuItem>
                <MenuItem id="away" className="choice-item">
                  {job.isPutAway ? 'Bring back' : 'Put away'}
                </MenuItem>
                <MenuItem id="leave" className="choice-item">
                  Delete from the book
                </MenuItem>
              </Menu>
            </Popover>
          </MenuTrigger>
        </span>
      ) : null}
    </div>
  )
}

function JobWords({ job, isOpen }: { readonly job: JobSummary; readonly isOpen: boolean }) {
  const tags = [
    ...(isOpen ? ['open now'] : []),
    ...(job.isDemonstration ? ['demonstration'] : []),
    ...(job.isPutAway ? ['put away'] : []),
  ]
  return (
    <div>
      <strong>{job.title}</strong>{' '}
      {tags.map((tag) => (
        <span key={tag} className="tag">
          {tag}
        </span>
      ))}
      <div className="quiet">
        {job.client === '' ? 'no client named' : job.client} · {job.roomCount}{' '}
        {job.roomCount === 1 ? 'room' : 'rooms'} · starts {job.startsOn}
      </div>
      {job.stage === 'notQuoted' ? null : <div className="quiet">{standingWords(job)}</div>}
    </div>
  )
}

/** `Under way · $8,230.00 agreed · balance $1,200.00`. */
function standingWords({ stage, agreedCents, balanceCents }: JobSummary): string {
  const money =
    stage === 'quoted' || stage === 'lost'
      ? []
      : [`${formatCents(agreedCents)} agreed`, `balance ${formatCents(balanceCents)}`]
  return [stageWords[stage], ...money].join(' · ')
}

function RenameForm(props: {
  readonly job: JobSummary
  readonly onName: (title: string) => void
  readonly onCancel: () => void
}) {
  const [title, setTitle] = useState(props.job.title)
  return (
    <form
      className="new-job"
      onSubmit={(event) => {
        event.preventDefault()
        if (title.trim() !== '') props.onName(title.trim())
      }}
    >
      <label className="entry">
        <span className="label">New name</span>
        <input
          value={title}
          maxLength={200}
          // biome-ignore lint/a11y/noAutofocus: asked for by the press before
          autoFocus
          onChange={(event) => setTitle(event.target.value)}
        />
      </label>
      <Button type="submit" className="act-button" isDisabled={title.trim() === ''}>
        Rename
      </Button>
      <Button className="plain-button" onPress={props.onCancel}>
        Cancel
      </Button>
    </form>
  )
}
