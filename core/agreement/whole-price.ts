import { estimate } from '../price/estimate.ts'
import type { JobChange, Money } from '../project/agreement-records.ts'
import type { Job } from '../project/job.ts'
import { type Outcome, succeed } from '../project/problem.ts'
import { createTakeOff } from '../quantities/take-off.ts'
import { createSpecify } from '../specification/specify.ts'
import { applyChanges } from './changes.ts'
import { lessMoney, noMoney, sumMoney } from './taxed-money.ts'

/** The price of a whole job and the working minutes in it. */
interface WholePrice extends Money {
  readonly minutes: number
}

export type PriceJob = (job: Job) => WholePrice

/**
 * Prices whole jobs by their hours: measured, specified and estimated from the start. It keeps what it worked out of each room, so that
 * the same job with one change is quick. By hours and not by a plan, because two plans differ by more than a small change costs.
 */
function createPriceJob(): PriceJob {
  const takeOff = createTakeOff()
  const specify = createSpecify()
  const known = new WeakMap<Job, WholePrice>()
  return (job) => {
    const before = known.get(job)
    if (before !== undefined) return before
    const takeoff = takeOff(job)
    const { totals } = estimate(job, takeoff, specify(job, takeoff))
    const price = { beforeTaxCents: totals.beforeTax, taxCents: totals.tax, minutes: totals.labourMinutes }
    known.set(job, price)
    return price
  }
}

/** One for the program, so that what was worked out of a room is kept from option to option. */
export const priceJob: PriceJob = createPriceJob()

/** What a list of changes costs: the whole job with them less the whole job without. Refused where they no longer fit. */
export function priceOfChanges(
  priceJob: PriceJob,
  job: Job,
  changes: readonly JobChange[],
): Outcome<WholePrice> {
  const changed = applyChanges(job, changes)
  if (!changed.ok) return changed
  const [before, after] = [priceJob(job), priceJob(changed.value)]
  return succeed({ ...lessMoney(after, before), minutes: after.minutes - before.minutes })
}

/**
 * What lists of changes cost all together, less what each costs alone on the job as it stands: less than nothing where they share work or a can,
 * more where one makes the other larger.
 */
export function priceTogether(
  priceJob: PriceJob,
  job: Job,
  lists: readonly (readonly JobChange[])[],
): Outcome<Money> {
  if (lists.length < 2) return succeed(noMoney)
  const all = priceOfChanges(priceJob, job, lists.flat())
  if (!all.ok) return all
  const alone: Money[] = []
  for (const changes of lists) {
    const price = priceOfChanges(priceJob, job, changes)
    if (!price.ok) return price
    alone.push(price.value)
  }
  return succeed(lessMoney(all.value, sumMoney(alone)))
}
