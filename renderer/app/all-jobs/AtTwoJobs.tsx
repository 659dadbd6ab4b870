import { Button } from 'react-aria-components'
import { groupedBy } from '../../../core/lists/lists.ts'
import type { DoubleBooking, JobAtWork } from '../../../core/schedule/jobs/book-people.ts'
import { twoJobsSentence } from '../../../core/schedule/words/two-jobs-words.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { Callout } from '../../panels/parts/Callout.tsx'
import { planAgain } from './plan-again.ts'

interface Parts {
  readonly twice: readonly DoubleBooking[]
  readonly jobs: readonly JobAtWork[]
  readonly timeZone: string
  readonly system: LengthUnitSystem
}

/** Who is at two jobs at once by the accepted plans, and planning one of the two around the other. */
export function AtTwoJobs({ twice, jobs, timeZone, system }: Parts) {
  const titleOf = (jobKey: string) => jobs.find((job) => job.jobKey === jobKey)?.title ?? jobKey
  const pairs = groupedBy(twice, ({ jobKeys }) => jobKeys.join(' '))
  return [...pairs].map(([key, bookings]) => {
    const jobKeys = bookings[0]?.jobKeys ?? []
    return (
      <Callout key={key} kind="stop" title="At two jobs at once">
        {bookings.map(({ name, jobKeys: [one, other], stretches }) => (
          <p key={name}>
            {twoJobsSentence({ name, titles: [titleOf(one), titleOf(other)], stretches }, timeZone, system)}
          </p>
        ))}
        <div className="button-row">
          {jobKeys.map((jobKey) => (
            <Button key={jobKey} className="plain-button" onPress={() => void planAgain(jobKey)}>
              Plan “{titleOf(jobKey)}” around the other
            </Button>
          ))}
        </div>
      </Callout>
    )
  })
}
