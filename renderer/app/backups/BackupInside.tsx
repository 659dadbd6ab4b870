import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import type { BackupSummary } from '../../../core/contract/book.ts'
import type { JobSummary } from '../../../core/contract/requests.ts'
import type { Outcome } from '../../../core/project/problem.ts'
import { machineMoment } from '../../../core/time/site-moment.ts'
import { ask } from '../../bridge/client.ts'
import { takenWords } from './backup-words.ts'
import { bringJobBack, goBackTo } from './ways-out.ts'

/** What is in one backup, and what can be had from it. */
export function BackupInside(props: { readonly backup: BackupSummary; readonly isOpen: boolean }) {
  const { name, takenAt } = props.backup
  const [jobs, setJobs] = useState<Outcome<readonly JobSummary[]> | null>(null)
  const [isAsking, setAsking] = useState(false)
  const [isBusy, setBusy] = useState(false)
  useEffect(() => void ask('lookIntoBackup', { name }).then(setJobs), [name])
  const doing = (work: Promise<void>) => {
    setBusy(true)
    void work.finally(() => setBusy(false))
  }
  return (
    <section className="backup-inside" aria-label="Inside this backup">
      <h2>Inside the backup of {takenWords(machineMoment(new Date(takenAt)))}</h2>
      {jobs === null ? <p className="quiet">Looking inside …</p> : null}
      {jobs?.ok === false ? <p role="alert">{jobs.problem.sentence}</p> : null}
      {jobs?.ok ? (
        <>
          <JobTable
            jobs={jobs.value}
            isOpen={props.isOpen}
            isBusy={isBusy}
            onBring={(key) => doing(bringJobBack(name, key))}
          />
          {isAsking ? (
            <div className="backup-sure">
              <p>
                The book becomes what you see above. What is in the book now is set aside whole, with the date
                of today, in the list of backups.
              </p>
              <div className="button-row">
                <Button className="act-button" isDisabled={isBusy} onPress={() => doing(goBackTo(name))}>
                  {isBusy ? 'Going back …' : 'Go back to it now'}
                </Button>
                <Button className="plain-button" onPress={() => setAsking(false)}>
                  Not now
                </Button>
              </div>
            </div>
          ) : (
            <Button className="act-button" isDisabled={isBusy} onPress={() => setAsking(true)}>
              Go back to this whole backup
            </Button>
          )}
        </>
      ) : null}
    </section>
  )
}

function JobTable(props: {
  readonly jobs: readonly JobSummary[]
  /** One job can only be brought into an open book. */
  readonly isOpen: boolean
  readonly isBusy: boolean
  readonly onBring: (jobKey: string) => void
}) {
  if (props.jobs.length === 0) return <p className="quiet">No job is in this backup.</p>
  return (
    <table className="backup-jobs">
      <thead>
        <tr>
          <th>Job</th>
          <th>Client</th>
          <th className="number">Rooms</th>
          <th>Last edit</th>
          <th>{props.isOpen ? 'One job alone' : null}</th>
        </tr>
      </thead>
      <tbody>
        {props.jobs.map((job) => (
          <tr key={job.jobKey}>
            <td>{job.title}</td>
            <td>{job.client === '' ? 'not named' : job.client}</td>
            <td className="number">{job.roomCount}</td>
            <td>{takenWords(machineMoment(new Date(job.editedAt)))}</td>
            <td>
              {props.isOpen ? (
                <Button
                  className="plain-button"
                  isDisabled={props.isBusy}
                  aria-label={`Bring it back: ${job.title}`}
                  onPress={() => props.onBring(job.jobKey)}
                >
                  Bring it back
                </Button>
              ) : null}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
