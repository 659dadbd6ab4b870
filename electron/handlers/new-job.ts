import { emptyJob, tableOf } from '../../core/project/empty-job.ts'
import { type Job, type JobId, records } from '../../core/project/job.ts'
import { rulesForNextJob } from '../../core/project/safety-limits.ts'
import type { Storey, StoreyId } from '../../core/project/sketch-records.ts'
import { startingFinishes, whiteOf } from '../../core/project/usual-finishes.ts'

/** What a new job starts with besides the shop's own lists. */
interface NewJobFacts {
  /** Like no other job's anywhere. */
  readonly id: JobId
  readonly title: string
  readonly unitSystem: 'imperial' | 'metric'
  /** Local date of the day it is made, `2027-03-31`; work is taken to start then until somebody says otherwise. */
  readonly today: string
  /** IANA name of the machine's time zone. */
  readonly timeZone: string
}

const groundStorey: Storey = { id: 'ground' as StoreyId, name: 'Ground floor', level: 0 }

/**
 * A job with one storey, the usual finishes for the whole house and nothing drawn. The shop's lists are copied from `shop`, so that the new job never changes when another
 * one does; settings of safety rules stay behind, for they belong to one house. The year is unknown, so the house counts as old.
 */
export function newJob(shop: Job, facts: NewJobFacts): Job {
  const header: Job['header'] = {
    id: facts.id,
    title: facts.title,
    client: '',
    site: '',
    yearBuilt: null,
    occupied: true,
    childrenOrPets: false,
    startsOn: facts.today,
    planFor: 'balanced',
    timeZone: facts.timeZone,
    unitSystem: facts.unitSystem,
    air: shop.header.air,
  }
  const white = whiteOf(records(shop.colours))
  return {
    ...emptyJob(header, { ...shop, rules: rulesForNextJob(shop.rules) }, [groundStorey]),
    colours: { ...shop.colours, [white.id]: white },
    finishes: tableOf(startingFinishes(white.id)),
  }
}
