import { useState } from 'react'
import {
  Button,
  Dialog,
  DialogTrigger,
  FileTrigger,
  Heading,
  Modal,
  ModalOverlay,
} from 'react-aria-components'
import { Tick } from '../panels/parts/Tick.tsx'
import { useJobState, useView } from '../state/app.ts'
import { wantBookPage } from './backups/book-state.ts'
import { JobLine } from './JobLine.tsx'
import { createJob, exportJob, importJob, openDemo, openShop } from './job-book.ts'
import { listJobsAgain, useListedJobs } from './listed-jobs.ts'

/** The book of jobs behind one button: open, start, bring in, send out, take out. */
export function BookOfJobs() {
  return (
    <DialogTrigger>
      <Button className="plain-button">Book of jobs</Button>
      <ModalOverlay isDismissable className="veil">
        <Modal className="dialog-frame">
          <Dialog className="dialog">{({ close }) => <BookPages onDone={close} />}</Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  )
}

export function BookPages(props: { readonly onDone: () => void }) {
  const jobs = useListedJobs()
  const [hasAll, setHasAll] = useState(false)
  const openKey = useJobState((state) => state.jobKey)
  const bookPath = useView((state) => state.host?.bookPath)
  const doing = (work: Promise<void>) => void work.then(props.onDone)
  const away = jobs?.filter(({ isPutAway }) => isPutAway).length ?? 0
  const shown = jobs?.filter(({ isPutAway }) => hasAll || !isPutAway) ?? []
  return (
    <>
      <Heading slot="title">Book of jobs</Heading>
      <div className="book-list">
        {jobs?.length === 0 ? (
          <p className="quiet">
            No job is in the book yet. Start one below, or open the demonstration house.
          </p>
        ) : null}
        {shown.map((job) => (
          <JobLine
            key={job.jobKey}
            job={job}
            isOpen={job.jobKey === openKey}
            onOpen={doing}
            onChanged={() => void listJobsAgain()}
          />
        ))}
      </div>
      {away === 0 ? null : (
        <Tick isOn={hasAll} onChange={setHasAll}>
          Show jobs that are put away ({away})
        </Tick>
      )}
      <NewJob onDone={props.onDone} />
      <div className="button-row">
        <Button className="plain-button" onPress={() => doing(openShop())}>
          Shop sheet
        </Button>
        <Button
          className="plain-button"
          onPress={() => {
            wantBookPage('allJobs')
            props.onDone()
          }}
        >
          All jobs on one calendar
        </Button>
        <Button className="plain-button" onPress={() => doing(openDemo())}>
          Open a fresh demonstration house
        </Button>
        <FileTrigger
          acceptedFileTypes={['application/json', '.json']}
          onSelect={(files) => files?.[0] && doing(importJob(files[0]))}
        >
          <Button className="plain-button">Open a job file</Button>
        </FileTrigger>
        <Button className="plain-button" isDisabled={openKey === null} onPress={() => doing(exportJob())}>
          Save a copy of this job as a file
        </Button>
      </div>
      <div className="book-foot">
        {bookPath === undefined ? null : <p className="quiet">The book is kept in {bookPath}</p>}
        <Button
          className="plain-button"
          onPress={() => {
            wantBookPage('backups')
            props.onDone()
          }}
        >
          Go back to a backup
        </Button>
      </div>
    </>
  )
}

/** Title and units of a job that is to be started. */
export function NewJob(props: { readonly onDone: () => void; readonly isFocused?: boolean }) {
  const [title, setTitle] = useState('')
  const [unitSystem, setUnitSystem] = useState<'imperial' | 'metric'>('imperial')
  return (
    <form
      className="new-job"
      onSubmit={(event) => {
        event.preventDefault()
        if (title.trim() !== '') void createJob(title.trim(), unitSystem).then(props.onDone)
      }}
    >
      <label className="entry">
        <span className="label">New job</span>
        <input
          value={title}
          // biome-ignore lint/a11y/noAutofocus: it appears on the press that asks for it
          autoFocus={props.isFocused ?? false}
          maxLength={200}
          onChange={(event) => setTitle(event.target.value)}
          placeholder="House or street"
        />
      </label>
      <label className="entry">
        <span className="label">Units</span>
        <select
          value={unitSystem}
          onChange={(event) => setUnitSystem(event.target.value === 'metric' ? 'metric' : 'imperial')}
        >
          <option value="imperial">Feet and inches</option>
          <option value="metric">Meters</option>
        </select>
      </label>
      <Button type="submit" className="act-button" isDisabled={title.trim() === ''}>
        Start it
      </Button>
    </form>
  )
}
