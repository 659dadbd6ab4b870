import { Button } from 'react-aria-components'
import { stageWords } from '../../../core/agreement/stage-words.ts'
import { dateWordsWithYear } from '../../../core/time/date-words.ts'
import { jobLetter } from './all-jobs-picture.ts'
import type { BookWork } from './book-work.ts'
import { planAgain } from './plan-again.ts'

/** The jobs drawn, by their letters, and those that are not because they have no accepted plan. */
export function AllJobsList({ work }: { readonly work: BookWork }) {
  const { jobs, atWork, shop } = work
  const day = (date: string) => dateWordsWithYear(date, shop.header.unitSystem)
  const isDrawn = new Set(atWork.map(({ jobKey }) => jobKey))
  const others = jobs.filter(
    ({ jobKey, isPutAway, stage }) => !isDrawn.has(jobKey) && !isPutAway && !isOver.has(stage),
  )
  return (
    <table className="pick-table all-jobs-list">
      <caption className="unseen">Jobs of the book</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">Letter</span>
          </th>
          <th scope="col">Job</th>
          <th scope="col">Stands</th>
          <th scope="col">Work by the accepted plan</th>
          <th scope="col">
            <span className="unseen">Calendar</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {atWork.map(({ jobKey, title, startsOn, finishesOn }, index) => (
          <JobRow
            key={jobKey}
            letter={jobLetter(index)}
            title={title}
            stands={standing(jobs.find((job) => job.jobKey === jobKey))}
            when={`${day(startsOn)} to ${day(finishesOn)}`}
            jobKey={jobKey}
          />
        ))}
        {others.map((job) => (
          <JobRow
            key={job.jobKey}
            letter=""
            title={job.title}
            stands={standing(job)}
            when="no plan accepted yet"
            jobKey={job.jobKey}
          />
        ))}
      </tbody>
    </table>
  )
}

const isOver: ReadonlySet<BookWork['jobs'][number]['stage']> = new Set(['lost', 'finished', 'paid'])

function standing(job: BookWork['jobs'][number] | undefined): string {
  if (job === undefined) return ''
  return job.isDemonstration ? 'Demonstration' : stageWords[job.stage]
}

function JobRow(props: {
  readonly letter: string
  readonly title: string
  readonly stands: string
  readonly when: string
  readonly jobKey: string
}) {
  return (
    <tr>
      <td>
        <strong>{props.letter}</strong>
      </td>
      <td>{props.title}</td>
      <td>{props.stands}</td>
      <td>{props.when}</td>
      <td>
        <Button
          className="plain-button"
          aria-label={`Its calendar: ${props.title}`}
          onPress={() => void planAgain(props.jobKey)}
        >
          Its calendar
        </Button>
      </td>
    </tr>
  )
}
