import { minutesIn, presentWindows } from '../calendar.ts'
import type { Person } from '../model.ts'
import { planGrid, type Site } from './planning-site.ts'
import { siteRuleNumber, siteRules } from './site-rules.ts'

/** The longest day of anybody of these in a plain week, chores taken off; minutes. */
export function longestDay({ job, clock }: Site, people: readonly Person[]): number {
  const { setUpMinutes, cleanUpMinutes } = job.houseRules
  const chores =
    setUpMinutes + cleanUpMinutes + 2 * siteRuleNumber(job, siteRules.alarms, 'minutes') + 2 * planGrid
  // 2001-01-07 was a Sunday, long before any day off of a job.
  const sunday = Date.UTC(2001, 0, 7) / 86_400_000
  const days = people.flatMap((person) =>
    Array.from({ length: 7 }, (_, day) => minutesIn(presentWindows(clock, person, sunday + day))),
  )
  return Math.max(0, ...days) - chores
}
