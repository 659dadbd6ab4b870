import { useJobState, useView } from '../state/app.ts'
import { BookPages } from './BookOfJobs.tsx'
import { useListedJobs } from './listed-jobs.ts'
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
  const jobs = useListedJobs()
  if (jobs === null) return <p className="opening-line">Opening the book of jobs …</p>
  return (
    <div className="closed-book">{jobs.length === 0 ? <Welcome /> : <BookPages onDone={() => {}} />}</div>
  )
}
