import { rateName } from '../../../../core/price/rate-names.ts'
import type { JobReview } from '../../../../core/progress/afterwards/job-review.ts'
import { type OwnRate, ownRatesWith } from '../../../../core/progress/afterwards/own-jobs.ts'
import { reviewHtml } from '../../../../core/progress/afterwards/review-page.ts'
import { type Issued, nextPaperNumber } from '../../../../core/project/issued-records.ts'
import { type RecordOf, records } from '../../../../core/project/job.ts'
import { succeed } from '../../../../core/project/problem.ts'
import { viewStore } from '../../../state/app.ts'
import { newId } from '../../../state/new-id.ts'
import { readShop } from '../../../state/other-jobs.ts'
import { edit } from '../../parts/edits.ts'

/** Keeps the page of a review as it is now, with what the job says of the shop's rates, and shows it at Paper, where it is printed or saved. */
export async function keepReviewPage(
  review: JobReview,
  ownJob: RecordOf<'ownJobs'>,
  at: string,
): Promise<void> {
  const id = newId('paper')
  const shop = await readShop()
  const own: readonly OwnRate[] = shop === null ? [] : ownRatesWith(shop.job, ownJob)
  const rates = own.map((each) => ({ name: rateName(each.rate.id), own: each }))
  const isKept = edit('Make the page of planned against actual', (job) => {
    const issued: Issued = {
      id,
      kind: 'forClient',
      issuedAt: at,
      body: {
        version: 2,
        number: nextPaperNumber(records(job.issued)),
        name: 'Planned against actual',
        size: job.header.paper,
        html: reviewHtml(job, review, rates, at.slice(0, 10)),
      },
    }
    return succeed({ ...job, issued: { ...job.issued, [id]: issued } })
  })
  if (isKept) viewStore.setState({ station: 'paper', paperId: id })
}
