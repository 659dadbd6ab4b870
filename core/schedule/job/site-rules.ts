import { present } from '../../lists/lists.ts'
import type { Job } from '../../project/job.ts'
import type { PlanRules, Prices, Spending } from '../model.ts'

/** A house rule of the schedule that the owner may switch or give other numbers. Times of day are minutes after midnight. */
export interface SiteRule {
  readonly id: string
  readonly reason: string
  readonly source: string
  readonly numbers: Readonly<Record<string, number>>
}

const practice = 'common practice'
const assumption = 'shop assumption'

/** Switched and renumbered in the job's `rules` under these ids. */
export const siteRules = {
  dust: {
    id: 'schedule-no-dust-near-wet',
    reason: 'Sanding dust settles in wet paint of the same room and of rooms open to it.',
    source: practice,
    numbers: {},
  },
  fumes: {
    id: 'schedule-no-fumes-while-sleeping',
    reason: 'Nobody sleeps where solvent is drying, nor openly next to it.',
    source: `${practice}; hours: ${assumption}`,
    numbers: { from: 1260, to: 420 },
  },
  wayOut: {
    id: 'schedule-way-out-open',
    reason: 'No work goes on in a room whose only way out is closed just then.',
    source: practice,
    numbers: {},
  },
  hallsLast: {
    id: 'schedule-halls-last',
    reason:
      'Halls and stairs are painted when nothing has to be carried through them any more: top down and toward the door.',
    source: practice,
    numbers: {},
  },
  alarms: {
    id: 'schedule-alarms-daily',
    reason: 'Wired alarms are covered for the working hours only and work every night.',
    source: `${practice}; minutes: ${assumption}`,
    numbers: { minutes: 5 },
  },
  evenings: {
    id: 'schedule-rooms-needed-in-the-evening',
    reason: 'The only bath and the kitchen of a house that is lived in are usable from evening to morning.',
    source: assumption,
    numbers: { from: 1080, to: 420 },
  },
  lead: {
    id: 'schedule-lead-and-one-more',
    reason: 'A room that one person answers for, with one more at most, is not passed around half done.',
    source: assumption,
    numbers: {},
  },
  moving: {
    id: 'schedule-time-between',
    reason:
      'Carrying everything to another room, washing brushes for another product and coming at all take time that is paid.',
    source: assumption,
    numbers: { moveMinutes: 10, productMinutes: 10, leastPaidMinutes: 240 },
  },
  dayCosts: {
    id: 'schedule-what-days-cost',
    reason:
      'What a day more on site, a room out of use for a day or begun and waiting, and handing a room over or taking a coat up again are worth, so that plans can be compared.',
    source: assumption,
    numbers: {
      siteDay: 200,
      roomDayLivedIn: 40,
      roomDayEmpty: 5,
      waitingPercent: 35,
      handOver: 10,
      takeUp: 25,
    },
  },
  crowding: {
    id: 'schedule-people-in-a-room',
    reason: 'Too many people in a small room stand in each other’s way.',
    source: assumption,
    numbers: { squareFeetForTwo: 60 },
  },
} as const satisfies Record<string, SiteRule>

/** Site rules hold until the job switches them off. */
export function isSiteRuleOn(job: Job, rule: SiteRule): boolean {
  return job.rules[rule.id]?.on ?? true
}

/** The job's own number, else the rule's default. */
export function siteRuleNumber<Rule extends SiteRule>(
  job: Job,
  rule: Rule,
  name: keyof Rule['numbers'] & string,
): number {
  return job.rules[rule.id]?.numbers[name] ?? present(rule.numbers[name])
}

/** The house rules as the engine takes them; minutes go up to the grid. */
export function engineRules(job: Job, gridMinutes: number): PlanRules {
  const onGrid = (minutes: number) => Math.ceil(minutes / gridMinutes) * gridMinutes
  const { houseRules, header } = job
  const sleeping = header.occupied && isSiteRuleOn(job, siteRules.fumes)
  return {
    roomsOutOfUse: header.occupied && houseRules.maxRoomsOutOfUse > 0 ? houseRules.maxRoomsOutOfUse : null,
    noDustNearWet: isSiteRuleOn(job, siteRules.dust),
    noFumesWhileSleeping: sleeping
      ? {
          from: onGrid(siteRuleNumber(job, siteRules.fumes, 'from')),
          to: onGrid(siteRuleNumber(job, siteRules.fumes, 'to')),
        }
      : null,
    leadAndOneMore: isSiteRuleOn(job, siteRules.lead),
    roomBackInTime: true,
    wayOutKeptOpen: isSiteRuleOn(job, siteRules.wayOut),
    hallsLast: isSiteRuleOn(job, siteRules.hallsLast),
    dailyChores: { setUp: onGrid(houseRules.setUpMinutes), cleanUp: onGrid(houseRules.cleanUpMinutes) },
    alarmsRestoredDaily: isSiteRuleOn(job, siteRules.alarms)
      ? { minutes: onGrid(siteRuleNumber(job, siteRules.alarms, 'minutes')) }
      : null,
  }
}

/** Minutes between tasks, by the job's rules. */
export function spendingOf(job: Job): Spending {
  const number = (name: keyof typeof siteRules.moving.numbers) => siteRuleNumber(job, siteRules.moving, name)
  return {
    moving: number('moveMinutes'),
    changingProduct: number('productMinutes'),
    leastPaid: number('leastPaidMinutes'),
  }
}

/** What days, hand-overs and coats taken up again cost, in cents; the rule gives dollars, and percent of a room-day for a begun room that waits. */
export function pricesOf(job: Job): Prices & { readonly roomDay: number; readonly waitingDay: number } {
  const cents = (name: keyof typeof siteRules.dayCosts.numbers) =>
    Math.round(100 * siteRuleNumber(job, siteRules.dayCosts, name))
  const roomDay = cents(job.header.occupied ? 'roomDayLivedIn' : 'roomDayEmpty')
  return {
    siteDay: cents('siteDay'),
    handOver: cents('handOver'),
    takeUp: cents('takeUp'),
    roomDay,
    waitingDay: Math.round((roomDay * siteRuleNumber(job, siteRules.dayCosts, 'waitingPercent')) / 100),
  }
}
