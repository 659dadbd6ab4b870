import { emptyJob, type ShopLists, tableOf } from '../../core/project/empty-job.ts'
import { type HouseRules, type Job, type JobHeader, type JobId, records } from '../../core/project/job.ts'
import { rulesForNextJob } from '../../core/project/safety-limits.ts'
import type { Storey } from '../../core/project/sketch-records.ts'
import { storeyIdSchema } from '../../core/project/sketch-records.ts'
import { startingFinishes, whiteOf } from '../../core/project/usual-finishes.ts'
import { holidaysAhead, withDaysOff } from '../../core/time/usual-holidays.ts'

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

const groundStorey: Storey = { id: storeyIdSchema.parse('ground'), name: 'First floor', level: 0 }

/** Degrees Celsius: a heated house in a mild season, until somebody reads a thermometer. */
const usualAir: JobHeader['air'] = {
  temperatureC: 20,
  relativeHumidityPercent: 50,
  outdoorTemperatureC: 10,
  surfaceTemperatureC: null,
}

function freshHeader(facts: NewJobFacts): JobHeader {
  const { id, title, unitSystem, today, timeZone } = facts
  return {
    id,
    title,
    client: '',
    phones: '',
    mail: '',
    site: '',
    access: '',
    yearBuilt: null,
    occupied: true,
    childrenOrPets: false,
    startsOn: today,
    planFor: 'balanced',
    timeZone,
    unitSystem,
    paper: unitSystem === 'metric' ? 'a4' : 'letter',
    isDemonstration: false,
    isPutAway: false,
    proposalNumber: null,
    air: usualAir,
  }
}

/**
 * A job with one storey, the usual finishes for the whole house and nothing drawn. The shop's lists are copied from `shop`, so that the new job never changes when another
 * one does; settings of safety rules stay behind, for they belong to one house. The year is unknown, so the house counts as old.
 */
export function newJob(shop: ShopLists, facts: NewJobFacts): Job {
  const white = whiteOf(records(shop.colours))
  const lists = {
    ...shop,
    rules: rulesForNextJob(shop.rules),
    houseRules: withHolidays(shop.houseRules, facts),
  }
  return {
    ...emptyJob(freshHeader(facts), lists, [groundStorey]),
    colours: { ...shop.colours, [white.id]: white },
    finishes: tableOf(startingFinishes(white.id)),
  }
}

/** A job in feet is taken to be in the United States: nobody is sent to a house there on one of its holidays unasked. */
function withHolidays(rules: HouseRules, { unitSystem, today }: NewJobFacts): HouseRules {
  if (unitSystem === 'metric') return rules
  const dates = holidaysAhead(today).map(({ date }) => date)
  return { ...rules, holidays: withDaysOff(rules.holidays, dates) }
}

/** The shop sheet is kept in the form of a job in which nothing is drawn. */
export function shopSheetOf(lists: ShopLists, facts: NewJobFacts): Job {
  return emptyJob(freshHeader(facts), { ...lists, rules: rulesForNextJob(lists.rules) }, [])
}

/** The same house as a job of its own: what was given out, accepted and done on site belongs to the first one. */
export function duplicateOf(job: Job, id: JobId): Job {
  const title = `Copy of ${job.header.title}`.slice(0, 200)
  const header = { ...job.header, id, title, isPutAway: false, proposalNumber: null }
  return { ...job, header, pins: {}, marks: {}, issued: {}, dealings: {}, receipts: {}, cansUsed: {} }
}
