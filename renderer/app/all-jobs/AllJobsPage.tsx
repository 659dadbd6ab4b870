import '../../panels/parts/station-page.css'
import '../../panels/calendar/whole-job/whole-job.css'
import './all-jobs.css'
import { useMemo } from 'react'
import { Button } from 'react-aria-components'
import { records } from '../../../core/project/job.ts'
import { doubleBookings, peopleOfBook } from '../../../core/schedule/jobs/book-people.ts'
import { useJobState } from '../../state/app.ts'
import { wantBookPage } from '../backups/book-state.ts'
import { AllJobsCalendar } from './AllJobsCalendar.tsx'
import { AllJobsList } from './AllJobsList.tsx'
import { AtTwoJobs } from './AtTwoJobs.tsx'
import { allJobsPicture } from './all-jobs-picture.ts'
import { type BookWork, useBookWork } from './book-work.ts'
import { StartQuestion } from './StartQuestion.tsx'

/** The accepted plans of all jobs of the book side by side, by person, and when another job could start. */
export function AllJobsPage() {
  const work = useBookWork()
  const isOpen = useJobState((state) => state.job !== null)
  return (
    <section className="station-page all-jobs" aria-label="All jobs on one calendar">
      <header className="all-jobs-head">
        <h1>All jobs on one calendar</h1>
        <Button className="plain-button" onPress={() => wantBookPage(null)}>
          {isOpen ? 'Back to the job' : 'Back to the book of jobs'}
        </Button>
      </header>
      {work === null ? <p className="quiet">Reading the book of jobs …</p> : <AllJobs work={work} />}
    </section>
  )
}

function AllJobs({ work }: { readonly work: BookWork }) {
  const { atWork, shop, today } = work
  const { timeZone, unitSystem } = shop.header
  const people = useMemo(() => peopleOfBook(records(shop.crew), atWork), [shop, atWork])
  const twice = useMemo(() => doubleBookings(people), [people])
  const picture = useMemo(
    () => allJobsPicture(people, twice, timeZone, today),
    [people, twice, timeZone, today],
  )
  return (
    <div className="two-panes">
      <div className="pane pane-wide scroll">
        <AtTwoJobs twice={twice} jobs={atWork} timeZone={timeZone} system={unitSystem} />
        {atWork.length === 0 ? (
          <p className="quiet">
            No job of the book has an accepted plan yet. Open a job, look at its plan at Calendar and accept
            it; from then on its people and days stand here.
          </p>
        ) : (
          <AllJobsCalendar picture={picture} jobs={atWork} system={unitSystem} />
        )}
        <AllJobsList work={work} />
      </div>
      <aside className="pane pane-side scroll" aria-label="When could a job start">
        <StartQuestion work={work} />
      </aside>
    </div>
  )
}
