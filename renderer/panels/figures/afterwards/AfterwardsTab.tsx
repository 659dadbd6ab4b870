import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import type { Estimate } from '../../../../core/price/estimate-types.ts'
import {
  type ComparedHours,
  type HourGrouping,
  hourGroupings,
  hourGroupingWords,
} from '../../../../core/progress/afterwards/compared-hours.ts'
import {
  hoursBasis,
  hoursSum,
  type JobReview,
  jobReview,
} from '../../../../core/progress/afterwards/job-review.ts'
import { ownJobOf } from '../../../../core/progress/afterwards/own-job.ts'
import type { Job } from '../../../../core/project/job.ts'
import type { Specification } from '../../../../core/specification/types.ts'
import { formatMinutes } from '../../../../core/units/duration.ts'
import { useSiteNow } from '../../../state/planner-now.ts'
import { optionsOf } from '../../parts/Choice.tsx'
import { useAgreement } from '../../parts/dealings/use-agreement.ts'
import { OneOf } from '../../parts/OneOf.tsx'
import { CansForm } from './CansForm.tsx'
import { ComparedTable } from './ComparedTable.tsx'
import { MaterialCompared, MoneyCompared } from './GoodsCompared.tsx'
import { keepReviewPage } from './keep-review-page.ts'
import { RatesLearned } from './RatesLearned.tsx'
import { ReceiptForm } from './ReceiptForm.tsx'

/** What the job took against what was counted, and what that says for the shop's next ones. */
export function AfterwardsTab(props: {
  readonly job: Job
  readonly specification: Specification
  readonly estimate: Estimate
}) {
  const { job, specification, estimate } = props
  const agreement = useAgreement()
  const { today } = useSiteNow()
  const review = useMemo(
    () => jobReview(job, specification, estimate, agreement),
    [job, specification, estimate, agreement],
  )
  const on = today.slice(0, 10)
  const own = useMemo(
    () => ownJobOf(job, specification, estimate, agreement, on),
    [job, specification, estimate, agreement, on],
  )
  return (
    <div className="two-panes">
      <div className="pane pane-wide scroll">
        <HoursCompared review={review} />
        <MoneyCompared money={review.money} />
        <MaterialCompared rows={review.material} system={job.header.unitSystem} />
        <RatesLearned job={job} own={own} />
      </div>
      <aside className="pane pane-side scroll" aria-label="What was spent and used">
        <ReceiptForm job={job} on={on} />
        <CansForm job={job} estimate={estimate} on={on} />
        <section className="block" aria-label="Page">
          <h3>Page</h3>
          <p className="quiet">For the shop: money, hours and material, planned against actual.</p>
          <div className="button-row">
            <Button className="act-button" onPress={() => void keepReviewPage(review, own, today)}>
              Make the page
            </Button>
          </div>
        </section>
      </aside>
    </div>
  )
}

function HoursCompared({ review }: { readonly review: JobReview }) {
  const [grouping, setGrouping] = useState<HourGrouping>('work')
  const rows = review.hours[grouping]
  return (
    <section className="block" aria-label="Hours">
      <OneOf
        label="Hours by"
        options={optionsOf(hourGroupings, hourGroupingWords)}
        chosen={grouping}
        onChoose={setGrouping}
      />
      <ComparedTable
        heads={[hourGroupingWords[grouping], 'Planned', 'Actual', 'Over or under', 'Still to do']}
        rows={rows.map((row) => ({ key: row.key, cells: [row.label, ...hourCells(row)] }))}
        sum={['Total', ...hourCells(hoursSum(rows))]}
      />
      <p className="quiet">{hoursBasis(review)}</p>
    </section>
  )
}

function hourCells({ planned, worked, left }: Omit<ComparedHours, 'key' | 'label'>): readonly string[] {
  const difference = worked - planned
  return [
    orDash(planned),
    orDash(worked),
    Math.abs(difference) < 0.5 ? '–' : `${difference > 0 ? '+' : '−'} ${formatMinutes(Math.abs(difference))}`,
    orDash(left),
  ]
}

function orDash(minutes: number): string {
  return minutes < 0.5 ? '–' : formatMinutes(minutes)
}
