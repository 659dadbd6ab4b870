import { useEffect, useState } from 'react'
import { ask } from '../bridge/client.ts'
import { useJobState, useView } from '../state/app.ts'
import { BookPages } from './BookOfJobs.tsx'
import { Welcome } from './Welcome.tsx'

/** What stands on the table while no job is open: the jobs of the book, or how to begin where it has none. */
export function ClosedBook() {
  const hasHost = useView((state) => state.host !== null)
  const problem = useJobState((state) => state.problem)
  if (hasHost) return <JobsOrWelcome />
  return (
    <p className="opening-line">
      {problem === null ? 'Opening the book of jobs …' : 'The book of jobs could not be opened.'}
    </p>
  )
}

function JobsOrWelcome() {
  const [isEmpty, setEmpty] = useState<boolean | null>(null)
  useEffect(() => {
    void ask('listJobs', {}).then((jobs) => setEmpty(jobs.ok && jobs.value.length === 0))
  }, [])
  if (isEmpty === null) return <p className="opening-line">Opening the book of jobs …</p>
  return <div className="closed-book">{isEmpty ? <Welcome /> : <BookPages onDone={() => {}} />}</div>
}
