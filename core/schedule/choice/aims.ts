import type { PlanAim } from '../../project/vocabulary.ts'
import type { ScheduleProblem } from '../model.ts'

/** So many times as much as in the job's own money, and at least so many cents where the job counts little or nothing. */
interface Weight {
  readonly times: number
  readonly atLeast: number
}

const asItIs: Weight = { times: 1, atLeast: 0 }
/** Enough to tell two plans apart that cost the same otherwise. */
const little: Weight = { times: 0.25, atLeast: 0 }

/** Shop assumptions: enough for the plans to choose from to lie apart, and not so much that a plan is bought at any price. */
const weights: Readonly<Record<PlanAim, { readonly siteDay: Weight; readonly roomDay: Weight }>> = {
  balanced: { siteDay: asItIs, roomDay: asItIs },
  soonest: { siteDay: { times: 10, atLeast: 100_000 }, roomDay: asItIs },
  calmest: { siteDay: asItIs, roomDay: { times: 3, atLeast: 6_000 } },
  cheapest: { siteDay: little, roomDay: little },
}

/** The problem as somebody with this aim counts: the same rules, people and tasks, other prices. Cost of it is not in the job's money. */
export function asAimed(problem: ScheduleProblem, aim: PlanAim): ScheduleProblem {
  if (aim === 'balanced') return problem
  const { siteDay, roomDay } = weights[aim]
  const { prices, rooms } = problem
  return {
    ...problem,
    prices: {
      siteDay: weighed(prices.siteDay, siteDay),
      handOver: weighed(prices.handOver, aim === 'cheapest' ? little : asItIs),
      takeUp: weighed(prices.takeUp, aim === 'cheapest' ? little : asItIs),
    },
    rooms: rooms.map((room) => ({
      ...room,
      centsPerDay: weighed(room.centsPerDay, roomDay),
      centsPerDayWaiting: Math.round(room.centsPerDayWaiting * roomDay.times),
    })),
  }
}

function weighed(cents: number, { times, atLeast }: Weight): number {
  return Math.max(atLeast, Math.round(cents * times))
}
