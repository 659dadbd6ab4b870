import { useJobState, useView } from '../state/app.ts'
import { BookPages } from './BookOfJobs.tsx'

/** What stands on the table while no job is open. */
export function ClosedBook() {
  const hasHost = useView((state) => state.host !== null)
  const problem = useJobState((state) => state.problem)
  if (!hasHost)
    return (
      <p className="opening-line">
        {problem === null ? 'Opening the book of jobs …' : 'The book of jobs could not be opened.'}
      </p>
    )
  return (
    <div className="closed-book">
      <BookPages onDone={() => {}} />
    </div>
  )
}
