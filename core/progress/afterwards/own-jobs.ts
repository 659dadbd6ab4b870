import { defaultRate } from '../../price/default-rates.ts'
import { type Job, type RecordOf, records } from '../../project/job.ts'
import type { Spreads } from '../../project/outcome-records.ts'
import type { Rate } from '../../project/shop-records.ts'
import { towardsObserved } from '../rate-suggestions.ts'

type OwnJob = RecordOf<'ownJobs'>

/** So many own jobs say something of how far jobs come out; shop assumption. */
const enoughJobs = 5

/** A rate of the shop and what its own finished jobs say of it. */
export interface OwnRate {
  /** As the shop has it now. */
  readonly rate: Rate
  /** With the figure of the jobs, their number and how far they lie from one another. */
  readonly suggested: Rate
  readonly plannedMinutes: number
  readonly workedMinutes: number
}

/** What the jobs on the shop sheet and this one say of the rates that this one used; a copy of it that was kept before does not count. */
export function ownRatesWith(shop: Job, job: OwnJob): readonly OwnRate[] {
  const used = new Set(job.rates.map(({ rateId }) => rateId))
  const jobs = [...records(shop.ownJobs).filter(({ id }) => id !== job.id), job]
  return ownRates(shop, jobs).filter(({ rate }) => used.has(rate.id))
}

/** The shop sheet with a finished job in it, and, from enough of them on, with what all of them say of how far jobs come out. */
export function shopWithJob(shop: Job, job: OwnJob): Job {
  const ownJobs = { ...shop.ownJobs, [job.id]: job }
  const spreads = spreadsFrom(records(ownJobs), shop.houseRules.spreads)
  return { ...shop, ownJobs, houseRules: { ...shop.houseRules, spreads } }
}

/**
 * What the shop's jobs say of each of its rates: all they worked over all the hours it took, weighed against the present figure by how much
 * was worked.
 */
export function ownRates(shop: Pick<Job, 'rates'>, jobs: readonly OwnJob[]): readonly OwnRate[] {
  const ids = [...new Set(jobs.flatMap(({ rates }) => rates.map(({ rateId }) => rateId)))]
  return ids.flatMap((id) => {
    const rate = shop.rates[id] ?? defaultRate(id)
    const own = jobs.flatMap((job) => {
      const line = job.rates.find(({ rateId }) => rateId === id)
      return line === undefined || line.workedMinutes <= 0 || line.workedAmount <= 0 ? [] : [{ job, line }]
    })
    if (rate === undefined || own.length === 0) return []
    const worked = own.reduce((sum, { line }) => sum + line.workedMinutes, 0)
    const amount = own.reduce((sum, { line }) => sum + line.workedAmount, 0)
    // What rests on own jobs already is weighed anew from where the shop began, or the same hours would count twice.
    const start = rate.own === undefined ? rate.perHour : (defaultRate(id)?.perHour ?? rate.perHour)
    const planned = (amount / start) * 60
    const ratios = own.map(
      ({ job, line }) => Math.log(line.workedMinutes / line.plannedMinutes) - paceOf(job),
    )
    const jobsWord = own.length === 1 ? '1 job' : `${own.length} jobs`
    const suggested: Rate = {
      ...rate,
      perHour: towardsObserved(start, planned, worked),
      source: `own finished jobs: ${jobsWord}, ${Math.round(worked)} min worked where ${Math.round(planned)} min were counted`,
      own: {
        jobs: own.length,
        spreadPercent: own.length < enoughJobs ? null : percentOf(deviation(ratios), 200),
      },
    }
    return [{ rate, suggested, plannedMinutes: (amount / rate.perHour) * 60, workedMinutes: worked }]
  })
}

/** How far jobs come out by what finished ones say; what they do not say, or too few of them, stays as it is. */
export function spreadsFrom(jobs: readonly OwnJob[], before: Spreads): Spreads {
  const told = jobs.filter(({ plannedMinutes, workedMinutes }) => plannedMinutes > 0 && workedMinutes > 0)
  if (told.length < enoughJobs) return before
  const sum = (of: (job: OwnJob) => number) => told.reduce((all, job) => all + of(job), 0)
  const kinds = told.flatMap((job) =>
    job.rates
      .filter((line) => line.plannedMinutes > 0 && line.workedMinutes > 0)
      .map((line) => Math.log(line.workedMinutes / line.plannedMinutes) - paceOf(job)),
  )
  const paid = told
    .filter(
      ({ plannedMaterialCents, paidMaterialCents }) => plannedMaterialCents > 0 && paidMaterialCents > 0,
    )
    .map((job) => Math.log(job.paidMaterialCents / job.plannedMaterialCents))
  const rooms = sum((job) => job.rooms)
  const preparation = sum((job) => job.preparationMinutes)
  const coats = sum((job) => job.coats)
  return {
    pacePercent: percentOf(deviation(told.map(paceOf)), 200),
    ratePercent: kinds.length < enoughJobs ? before.ratePercent : percentOf(deviation(kinds), 200),
    materialPercent: paid.length < enoughJobs ? before.materialPercent : percentOf(deviation(paid), 200),
    findingChancePercent:
      rooms === 0 ? before.findingChancePercent : tenths((100 * sum((job) => job.roomsFound)) / rooms, 100),
    findingSizePercent:
      preparation === 0
        ? before.findingSizePercent
        : tenths((100 * sum((job) => job.foundMinutes)) / preparation, 1000),
    coatAgainPercent:
      coats === 0 ? before.coatAgainPercent : tenths((100 * sum((job) => job.coatsAgain)) / coats, 100),
    restsOn: told.length,
  }
}

/** The logarithm of hours worked over hours counted. */
function paceOf({ workedMinutes, plannedMinutes }: OwnJob): number {
  return Math.log(workedMinutes / plannedMinutes)
}

/** The standard deviation of some of many: over one less than there are. */
function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return values.length < 2 ? 0 : Math.sqrt(squares / (values.length - 1))
}

/** The relative deviation of a lognormal, from the deviation of its logarithm, in percent. */
function percentOf(ofLog: number, most: number): number {
  return tenths(100 * Math.sqrt(Math.exp(ofLog * ofLog) - 1), most)
}

function tenths(value: number, most: number): number {
  return Math.min(most, Math.round(value * 10) / 10)
}
