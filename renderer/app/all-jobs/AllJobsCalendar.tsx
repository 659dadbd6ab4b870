import type { JobAtWork } from '../../../core/schedule/jobs/book-people.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import { dateOfDay, weekdayOf } from '../../../core/time/local-date.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { type AllJobsPicture, jobLetter, stayWords } from './all-jobs-picture.ts'

const nameWidth = 130
/** Width of a day: as much as there is room for, within these. */
const [narrowDay, wideDay, room] = [18, 44, 840]
const rowHeight = 34
const headHeight = 34
/** A letter needs so much. */
const leastLettered = 8
/** Jobs are told apart by their letters; so many fills help the eye. */
const fills = 5

interface Parts {
  readonly picture: AllJobsPicture
  readonly jobs: readonly JobAtWork[]
  readonly system: LengthUnitSystem
}

/** Everybody's days, each stay with the letter of its job. */
export function AllJobsCalendar({ picture, jobs, system }: Parts) {
  const dayWidth = Math.max(narrowDay, Math.min(wideDay, Math.floor(room / picture.days)))
  const height = headHeight + picture.people.length * rowHeight
  const titleOf = (jobKey: string) => jobs.find((job) => job.jobKey === jobKey)?.title ?? jobKey
  const words = (date: string) => dateWords(date, system)
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls has to be reached by the keyboard
    <section className="whole-job all-jobs-calendar" aria-label="People by days" tabIndex={0}>
      <div className="whole-names" style={{ width: nameWidth }}>
        <div className="whole-corner" style={{ height: headHeight }} />
        {picture.people.map(({ name, stays }, index) => (
          // Two people may have one name; their places tell them apart.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          <div key={`${index} ${name}`} className="whole-name" style={{ height: rowHeight }}>
            <strong>{name}</strong>
            <span className="unseen">{stayWords(stays, titleOf, words)}</span>
          </div>
        ))}
      </div>
      <svg
        width={picture.days * dayWidth}
        height={height}
        className="whole-drawing"
        aria-hidden="true"
        focusable="false"
      >
        <Weeks picture={picture} dayWidth={dayWidth} height={height} system={system} />
        {picture.people.map((person, index) => (
          <PersonRow
            // biome-ignore lint/suspicious/noArrayIndexKey: as above
            key={`${index} ${person.name}`}
            person={person}
            dayWidth={dayWidth}
            top={headHeight + index * rowHeight}
            jobs={jobs}
            wordsOf={(jobKey, date) => `${person.name}: ${titleOf(jobKey)}, ${words(date)}`}
          />
        ))}
      </svg>
    </section>
  )
}

function Weeks(props: {
  readonly picture: AllJobsPicture
  readonly dayWidth: number
  readonly height: number
  readonly system: LengthUnitSystem
}) {
  const { picture, dayWidth, height, system } = props
  return Array.from({ length: picture.days }, (_, index) => {
    const day = picture.firstDay + index
    const weekday = weekdayOf(day)
    const left = index * dayWidth
    return (
      <g key={day}>
        {weekday === 0 || weekday === 6 ? (
          <rect
            x={left}
            y={headHeight}
            width={dayWidth}
            height={height - headHeight}
            className="whole-weekend"
          />
        ) : null}
        {weekday === 1 ? (
          <>
            <line x1={left} x2={left} y1={0} y2={height} className="whole-week" />
            <text x={left + 3} y={14} className="whole-date">
              {dateWords(dateOfDay(day), system).slice(4)}
            </text>
          </>
        ) : null}
        <text x={left + dayWidth / 2} y={28} className="whole-day">
          {'SMTWTFS'[weekday]}
        </text>
      </g>
    )
  })
}

function PersonRow(props: {
  readonly person: AllJobsPicture['people'][number]
  readonly dayWidth: number
  readonly top: number
  readonly jobs: readonly JobAtWork[]
  readonly wordsOf: (jobKey: string, date: string) => string
}) {
  const { person, dayWidth, top, jobs } = props
  return (
    <g>
      <line x1={0} x2="100%" y1={top + rowHeight} y2={top + rowHeight} className="whole-row" />
      {person.stays.map(({ jobKey, from, to, date }) => {
        const index = jobs.findIndex((job) => job.jobKey === jobKey)
        const width = Math.max(4, (to - from) * dayWidth)
        return (
          <g key={`${jobKey} ${from}`}>
            <title>{props.wordsOf(jobKey, date)}</title>
            <rect
              x={from * dayWidth}
              y={top + 5}
              width={width}
              height={rowHeight - 10}
              className={`job-stay job-stay-${index % fills}`}
            />
            {width < leastLettered ? null : (
              <text x={from * dayWidth + width / 2} y={top + rowHeight / 2 + 4} className="job-letter">
                {jobLetter(index)}
              </text>
            )}
          </g>
        )
      })}
      {person.shared.map(({ from, to }) => (
        <g key={from}>
          <title>At two jobs at once</title>
          <rect
            x={from * dayWidth}
            y={top + 2}
            width={Math.max(4, (to - from) * dayWidth)}
            height={rowHeight - 4}
            className="job-twice"
          />
        </g>
      ))}
    </g>
  )
}
