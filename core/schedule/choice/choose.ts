import { type PlanAim, planAims } from '../../project/vocabulary.ts'
import { dayOfDate } from '../../time/local-date.ts'
import type { JobPlan } from '../job-plan.ts'

/** What plans are compared by, in the job's own money. */
export type ComparedPlan = Pick<JobPlan, 'finishesOn' | 'roomDays' | 'days' | 'roomsOutOfUse'> & {
  readonly cost: Pick<JobPlan['cost'], 'pay' | 'total'>
}

/**
 * The best plan for each aim among all that were found for any. What is looked for counts first (last day, room-days, pay), and between plans
 * alike in that the cost in the job's own money; so none is worse than another at its own aim. An aim keeps its own plan where another is
 * only as good. `others` are plans that were found for no aim of their own, as the one on screen.
 */
export function chosenPlans<Found>(
  found: ReadonlyMap<PlanAim, Found>,
  others: readonly Found[],
  planOf: (found: Found) => ComparedPlan,
): ReadonlyMap<PlanAim, Found> {
  const all = [...others, ...found.values()]
  const chosen = planAims.flatMap((aim) => {
    const own = found.get(aim)
    if (own === undefined) return []
    const best = all.reduce((least, each) => (isBetter(aim, planOf(each), planOf(least)) ? each : least), own)
    return [[aim, best] as const]
  })
  return new Map(chosen)
}

/** Whether somebody with this aim would rather have the one plan than the other. */
export function isBetter(aim: PlanAim, one: ComparedPlan, other: ComparedPlan): boolean {
  const difference = measureOf(aim, one) - measureOf(aim, other)
  return difference === 0 ? one.cost.total < other.cost.total : difference < 0
}

function measureOf(aim: PlanAim, { finishesOn, roomDays, cost }: ComparedPlan): number {
  switch (aim) {
    case 'balanced':
      return cost.total
    case 'soonest':
      return dayOfDate(finishesOn)
    case 'calmest':
      return roomDays
    case 'cheapest':
      return cost.pay
  }
}
