import type { Job } from '../../project/job.ts'
import { dateOfDay, dayOfDate } from '../../time/local-date.ts'
import { daysTouched, minutesIn, presentWindows, withoutChores } from '../calendar.ts'
import { crewOf, planGrid } from '../job/planning-site.ts'
import type { Busy } from '../job/problem-of-job.ts'
import { siteClock } from '../job/site-hours.ts'
import { engineRules } from '../job/site-rules.ts'

/** What one person has to give on each day from a first one on. */
export interface PersonDays {
  readonly name: string
  /** Minutes at work, setting up and leaving taken off; 0 on a day off. */
  readonly minutes: readonly number[]
  /** At another job on that day, for however short. */
  readonly isAway: readonly boolean[]
}

/** Days that are looked at when somebody asks for a start: two years. */
const daysLookedAt = 730

/**
 * The days of the crew on the shop sheet, from `from` on: own weeks, days off and part days within the shop's site hours, and where they are
 * on other jobs (`busy`, by id).
 */
export function crewDays(shop: Job, busy: Busy, from: string, days = daysLookedAt): readonly PersonDays[] {
  const clock = siteClock({ ...shop, header: { ...shop.header, startsOn: from } }, null, planGrid)
  const { setUp, cleanUp } = engineRules(shop, planGrid).dailyChores ?? { setUp: 0, cleanUp: 0 }
  const first = dayOfDate(from)
  return crewOf(shop, busy).map((person) => {
    const away = daysTouched(clock, person.busy)
    const each = Array.from({ length: days }, (_, index) => first + index)
    const minutesOn = (day: number) =>
      minutesIn(withoutChores(presentWindows(clock, person, day), { before: setUp, after: cleanUp }))
    return {
      name: shop.crew[person.id]?.name ?? person.id,
      minutes: each.map(minutesOn),
      isAway: each.map((day) => away.has(day)),
    }
  })
}

interface StartAsked {
  /** Minutes of work, of all people together. */
  readonly minutes: number
  /** How many work on it from the first day on. */
  readonly people: number
  /** They may go to another job in between and come back. */
  readonly mayLeave: boolean
  /** Local date of the first of the days. */
  readonly from: string
}

interface FirstStart {
  readonly startsOn: string
  readonly finishesOn: string
  readonly names: readonly string[]
}

/**
 * The first day on which so many people are free, and the day on which they have put in the minutes asked for, each all of their hours. Drying
 * and the rooms of a house are not in it. Null where there is no such day in the days given.
 */
export function firstStart(
  days: readonly PersonDays[],
  { minutes, people, mayLeave, from }: StartAsked,
): FirstStart | null {
  const length = days[0]?.minutes.length ?? 0
  for (let first = 0; first < length; first++) {
    const team = days.filter((each) => (each.minutes[first] ?? 0) > 0 && each.isAway[first] === false)
    const done = team.length < people ? null : teamDone(team, first, length, { minutes, people, mayLeave })
    if (done === null) continue
    const date = (day: number) => dateOfDay(dayOfDate(from) + day)
    return { startsOn: date(first), finishesOn: date(done.last), names: done.names }
  }
  return null
}

/** Of those who are there on the first day, the ones who are done first. */
function teamDone(
  team: readonly PersonDays[],
  first: number,
  length: number,
  { minutes, people, mayLeave }: Omit<StartAsked, 'from'>,
): { readonly last: number; readonly names: readonly string[] } | null {
  let there = team.map(({ name, ...each }) => ({ name, each, given: 0 }))
  for (let last = first; last < length; last++) {
    if (!mayLeave) there = there.filter(({ each }) => each.isAway[last] === false)
    if (there.length < people) return null
    for (const one of there) if (one.each.isAway[last] === false) one.given += one.each.minutes[last] ?? 0
    const chosen = there.toSorted((one, other) => other.given - one.given).slice(0, people)
    const given = chosen.reduce((sum, one) => sum + one.given, 0)
    if (given >= minutes) return { last, names: chosen.map(({ name }) => name) }
  }
  return null
}
