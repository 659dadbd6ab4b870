import type { PlanAim } from '../../project/vocabulary.ts'
import { dayOfDate } from '../../time/local-date.ts'
import { formatMinutes } from '../../units/duration.ts'
import { formatCents } from '../../units/money.ts'
import type { ComparedPlan } from './choose.ts'

export const aimWords: Readonly<Record<PlanAim, string>> = {
  balanced: 'Balanced',
  soonest: 'Soonest',
  calmest: 'Calmest',
  cheapest: 'Cheapest',
}

/**
 * How a plan differs from the balanced one, and why, in one sentence: `Calmest: 2 days longer, 31 fewer room-days, $1,240 more pay: 2.9 rooms are
 * out of use on a usual day instead of 3.6.`
 */
export function differenceSentence(aim: PlanAim, plan: ComparedPlan, balanced: ComparedPlan): string {
  const name = aimWords[aim]
  const days = dayOfDate(plan.finishesOn) - dayOfDate(balanced.finishesOn)
  const roomDays = plan.roomDays - balanced.roomDays
  const dollars = Math.round((plan.cost.pay - balanced.cost.pay) / 100)
  const parts = [
    ...(days === 0 ? [] : [`${counted(Math.abs(days), 'day')} ${days > 0 ? 'longer' : 'sooner'}`]),
    ...(roomDays === 0
      ? []
      : [
          `${Math.abs(roomDays)} ${roomDays > 0 ? 'more' : 'fewer'} room-day${Math.abs(roomDays) === 1 ? '' : 's'}`,
        ]),
    ...(dollars === 0 ? [] : [`${dollarWords(Math.abs(dollars))} ${dollars > 0 ? 'more' : 'less'} pay`]),
  ]
  if (parts.length === 0)
    return aim === 'balanced'
      ? `${name}: pay, days on site and rooms out of use as the job counts them.`
      : `${name}: no better than the balanced plan.`
  const reason = reasonOf(aim, plan, balanced)
  return `${name}: ${parts.join(', ')}${reason === null ? '' : `: ${reason}`}.`
}

/** Something about how the work goes on that makes a plan what it is, where it is clearly less (or more) than in the balanced one. */
interface Reason {
  readonly of: keyof Habits
  readonly when: 'less' | 'more'
  readonly words: (own: number, usual: number) => string
}

const roomsAtOnce = (own: number, usual: number): string =>
  `${tenths(own)} rooms are out of use on a usual day instead of ${tenths(usual)}`
const peopleADay = (own: number, usual: number): string =>
  `${tenths(own)} people come on a usual day instead of ${tenths(usual)}`
const minutesLess =
  (into: string) =>
  (own: number, usual: number): string =>
    `${formatMinutes(usual - own)} less ${into}`

/** What can explain each aim, the plainest first. */
const reasons: Readonly<Record<PlanAim, readonly Reason[]>> = {
  balanced: [],
  soonest: [
    { of: 'openAtOnce', when: 'more', words: roomsAtOnce },
    { of: 'peopleADay', when: 'more', words: peopleADay },
    { of: 'idle', when: 'less', words: minutesLess('is spent waiting') },
  ],
  calmest: [{ of: 'openAtOnce', when: 'less', words: roomsAtOnce }],
  cheapest: [
    { of: 'idle', when: 'less', words: minutesLess('is paid without work') },
    { of: 'between', when: 'less', words: minutesLess('goes into moving and washing out') },
    {
      of: 'personDays',
      when: 'less',
      words: (own, usual) => `somebody comes and sets up ${own} times instead of ${usual}`,
    },
  ],
}

function reasonOf(aim: PlanAim, plan: ComparedPlan, balanced: ComparedPlan): string | null {
  const [own, usual] = [habitsOf(plan), habitsOf(balanced)]
  const reason = reasons[aim].find(({ of, when }) =>
    when === 'less' ? own[of] < usual[of] * (1 - leastShare) : own[of] > usual[of] * (1 + leastShare),
  )
  return reason === undefined ? null : reason.words(own[reason.of], usual[reason.of])
}

/** Habits that differ by less explain nothing. */
const leastShare = 0.03

interface Habits {
  /** Rooms out of use, on the mean of the days on which one is. */
  readonly openAtOnce: number
  /** On the mean of the days on which somebody comes. */
  readonly peopleADay: number
  readonly personDays: number
  /** Person-minutes of moving, changing product and setting rooms up once more. */
  readonly between: number
  /** Person-minutes that are paid and neither work nor setting up, moving or leaving. */
  readonly idle: number
}

function habitsOf({ roomsOutOfUse, roomDays, days }: ComparedPlan): Habits {
  const outDays = new Set(
    roomsOutOfUse.flatMap(({ from, to }) => {
      const [first, last] = [dayOfDate(from.slice(0, 10)), dayOfDate(to.slice(0, 10))]
      return Array.from({ length: last - first + 1 }, (_, index) => first + index)
    }),
  )
  const dates = new Set(days.map(({ date }) => date))
  return {
    openAtOnce: roomDays / outDays.size,
    peopleADay: days.length / dates.size,
    personDays: days.length,
    between: days.reduce((sum, { betweenMinutes }) => sum + betweenMinutes, 0),
    idle: days.reduce((sum, day) => sum + day.paidMinutes - spentMinutes(day), 0),
  }
}

function spentMinutes(day: ComparedPlan['days'][number]): number {
  return day.setUpMinutes + day.leavingMinutes + day.betweenMinutes + day.workMinutes
}

function counted(count: number, noun: string): string {
  return count === 1 ? `1 ${noun}` : `${count} ${noun}s`
}

function tenths(value: number): string {
  return String(Math.round(value * 10) / 10)
}

function dollarWords(dollars: number): string {
  return formatCents(dollars * 100).replace(/\.00$/, '')
}
