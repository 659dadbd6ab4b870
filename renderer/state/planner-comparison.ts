import type { Job } from '../../core/project/job.ts'
import { type PlanAim, planAims } from '../../core/project/vocabulary.ts'
import { chosenPlans } from '../../core/schedule/choice/choose.ts'
import type { PlanningFacts } from '../../core/schedule/job/problem-of-job.ts'
import { createKeepingSearch, keptPlan } from '../../core/schedule/keeping-search.ts'
import { refusalOf } from '../../core/schedule/plan-job.ts'
import type { WorkPlan } from '../../core/work-order/work-plan.ts'
import type { FoundPlan } from './planner-messages.ts'
import { askedOf, foundPlan, seed } from './planner-search.ts'

/** Searches for one plan of each aim, taken a slice at a time; each has the same time. */
export interface Comparison {
  /** One slice of the search that had the least time. */
  readonly step: () => void
  /** Share of the time that is spent, 0 to 1. */
  readonly share: () => number
  /** The best plan found for each aim so far; fewer than there are aims until each has one. */
  readonly plans: () => ReadonlyMap<PlanAim, FoundPlan>
}

/** Tries in one slice. */
const slice = 16

interface AimSearch {
  readonly aim: PlanAim
  readonly search: ReturnType<typeof createKeepingSearch>
  spent: number
  found: FoundPlan | null
}

/**
 * `seconds` for each aim; `shown` is the plan on screen. Only the balanced search goes on from it, because from one kind of plan it is far to
 * another; where it is better than what is found it is taken all the same. `clock` gives milliseconds.
 */
export function createComparison(
  job: Job,
  input: {
    readonly now: string
    readonly shown: WorkPlan | null
    readonly busy: PlanningFacts['busy']
    readonly seconds: number
  },
  clock: () => number,
): Comparison | null {
  const { asked, keeps } = askedOf(job, input.now, input.shown, input.busy)
  if (refusalOf(job, asked) !== null) return null
  const free = askedOf(job, input.now, null, input.busy)
  const kept = keptPlan(asked, keeps)
  const others = kept === null ? [] : [foundPlan(asked, kept)]
  const budget = input.seconds * 1000
  const searches = planAims.map((aim): AimSearch => {
    const from = aim === 'balanced' ? { asked, keeps } : free
    const search = createKeepingSearch({ ...from.asked, aim }, from.keeps, seed)
    return { aim, search, spent: 0, found: null }
  })
  return {
    step: () => {
      const [next] = searches.toSorted((one, other) => one.spent - other.spent)
      if (next === undefined || next.spent >= budget) return
      const begun = clock()
      next.search.step(next.search.best() === undefined ? 1 : slice)
      next.spent = next.search.isFinished() ? budget : next.spent + Math.max(1, clock() - begun)
    },
    share: () => {
      const spent = searches.reduce((sum, each) => sum + Math.min(budget, each.spent), 0)
      return spent / (budget * searches.length)
    },
    plans: () => {
      for (const each of searches) {
        const plan = each.search.best()
        if (plan !== undefined && each.found?.plan !== plan) each.found = foundPlan(asked, plan)
      }
      const found = searches.flatMap(({ aim, found }) => (found === null ? [] : [[aim, found] as const]))
      return chosenPlans(new Map(found), others, ({ workPlan }) => workPlan)
    },
  }
}
