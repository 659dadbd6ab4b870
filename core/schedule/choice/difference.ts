import type { PlanAim } from '../../project/vocabulary.ts'
import { formatMinutes } from '../../units/duration.ts'
import { formatCents } from '../../units/money.ts'
import { dayOfDate } from '../calendar.ts'
import type { ComparedPlan } from './choose.ts'

export const aimWords: Readonly<Record<PlanAim, string>> = {
  balanced: 'Balanced',
  soonest: 'Soonest',
  calmest: 'Calmest',
  cheapest: 'Cheapest',
}

/**
 * How a plan differs from the balanced one, and why, in one sentence: `Calmest: 2 days longer, 31 fewer room-days, $1,240 more pay: 3 rooms are
 * out of use at once at most instead of 5.`
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
  const reason = reasonOf(plan, balanced)
  return `${name}: ${parts.join(', ')}${reason === null ? '' : `: ${reason}`}.`
}

/** What about the work is most unlike, as a share of what it is in the balanced plan; null where hardly anything is. */
function reasonOf(plan: ComparedPlan, balanced: ComparedPlan): string | null {
  const [own, usual] = [habitsOf(plan), habitsOf(balanced)]
  const reasons = [
    {
      share: own.openAtOnce / usual.openAtOnce,
      words: `${tenths(own.openAtOnce)} rooms are out of use on a usual day instead of ${tenths(usual.openAtOnce)}`,
    },
    {
      share: own.peopleADay / usual.peopleADay,
      words: `${tenths(own.peopleADay)} people come on a usual day instead of ${tenths(usual.peopleADay)}`,
    },
    {
      share: own.between / usual.between,
      words: `${formatMinutes(own.between)} go into moving and washing out instead of ${formatMinutes(usual.between)}`,
    },
  ].filter(({ share }) => Number.isFinite(share) && Math.abs(share - 1) >= leastShare)
  const [most] = reasons.toSorted((one, other) => Math.abs(other.share - 1) - Math.abs(one.share - 1))
  return most?.words ?? null
}

/** Habits that differ by less explain nothing. */
const leastShare = 0.04

interface Habits {
  /** Rooms out of use, on the mean of the days on which one is. */
  readonly openAtOnce: number
  /** On the mean of the days on which somebody comes. */
  readonly peopleADay: number
  /** Person-minutes of moving, changing product and setting rooms up once more. */
  readonly between: number
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
    between: days.reduce((sum, { betweenMinutes }) => sum + betweenMinutes, 0),
  }
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
