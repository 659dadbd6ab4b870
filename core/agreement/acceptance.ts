import type { DealingOf, JobChange, JobOption, Money } from '../project/agreement-records.ts'
import type { Job } from '../project/job.ts'
import { type Outcome, succeed } from '../project/problem.ts'
import { contractOf } from './agreement.ts'
import { applyChanges } from './changes.ts'
import { checkTaken } from './quote.ts'
import { type PriceJob, priceTogether } from './whole-price.ts'

/** What an acceptance of a quote with some of its options comes to. */
interface Acceptance {
  /** Of the options taken, to be made to the job. */
  readonly changes: readonly JobChange[]
  /** What the options cost together, less the sum of their printed prices. */
  readonly together: Money
  /** What is agreed: all that comes after goes by it. */
  readonly contract: Money
  /** The whole job by its hours, with the options taken. */
  readonly counted: Money
}

/** Refused, with a sentence, where alternatives are taken together, or an option no longer fits the job. */
export function acceptanceOf(
  priceJob: PriceJob,
  job: Job,
  quote: DealingOf<'quoted'>,
  optionIds: readonly JobOption['id'][],
): Outcome<Acceptance> {
  const taken = checkTaken(quote, optionIds)
  if (!taken.ok) return taken
  const lists = taken.value.map(({ changes }) => changes)
  const changed = applyChanges(job, lists.flat())
  if (!changed.ok) return changed
  const together = priceTogether(priceJob, job, lists)
  if (!together.ok) return together
  const { beforeTaxCents, taxCents } = priceJob(changed.value)
  return succeed({
    changes: lists.flat(),
    together: together.value,
    contract: contractOf(quote, { optionIds, together: together.value }),
    counted: { beforeTaxCents, taxCents },
  })
}
