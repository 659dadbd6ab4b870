import type { PlanBound } from './bounds/bounds.ts'
import type { Clash } from './explain.ts'
import type { Plan, ScheduleProblem } from './model.ts'
import { createSearch, type Improvement, type ScheduleSearch } from './search.ts'
import { verifyPlan } from './verify.ts'

export interface SolveOptions {
  readonly seed: number
  /** Decodings; a demo-sized house does some thousands a second. */
  readonly iterations: number
  readonly onImprovement?: (improvement: Improvement, plan: Plan) => void
}

/**
 * `gap`: finish of the plan minus the bound, in days (grid steps on an unbroken clock); 0 is "proved best finish".
 * `impossible` is proved; `noneFoundYet` names where the attempts got stuck.
 */
export type SolveOutcome =
  | { readonly kind: 'scheduled'; readonly plan: Plan; readonly bound: PlanBound; readonly gap: number }
  | { readonly kind: 'impossible'; readonly clash: Clash }
  | { readonly kind: 'noneFoundYet'; readonly clash: Clash }

const slice = 64

/** Searches for the given number of iterations. Needs a problem without faults (`validateProblem`). */
export function solve(problem: ScheduleProblem, options: SolveOptions): SolveOutcome {
  const search = createSearch(problem, options.seed)
  for (let done = 0; done < options.iterations && !search.isFinished(); done += slice) {
    const found = search.step(Math.min(slice, options.iterations - done))
    const last = found[found.length - 1]
    const plan = search.best()
    if (last !== undefined && plan !== undefined) options.onImprovement?.(last, checked(problem, plan))
  }
  return outcomeOf(problem, search)
}

/** The answer a search can give now. Every plan is judged by `verifyPlan` first; one that breaks a rule is our fault and throws. */
export function outcomeOf(problem: ScheduleProblem, search: ScheduleSearch): SolveOutcome {
  const plan = search.best()
  const bound = plan && search.bound()
  if (plan !== undefined && bound !== undefined) {
    return {
      kind: 'scheduled',
      plan: checked(problem, plan),
      bound,
      gap: plan.value.finish - bound.finish,
    }
  }
  const clash = search.clash()
  if (clash === undefined) throw new Error('outcomeOf needs a search that has taken at least one step')
  return clash.isProved
    ? { kind: 'impossible', clash: clash.clash }
    : { kind: 'noneFoundYet', clash: clash.clash }
}

/** A complete plan as soon as there is one, without looking for a better one; at most a thousand attempts. */
export function firstPlan(problem: ScheduleProblem): SolveOutcome {
  const search = createSearch(problem, 1)
  for (let attempt = 0; attempt < 1000 && search.best() === undefined && !search.isFinished(); attempt++)
    search.step(1)
  return outcomeOf(problem, search)
}

function checked(problem: ScheduleProblem, plan: Plan): Plan {
  const violations = verifyPlan(problem, plan)
  if (violations.length > 0)
    throw new Error(`the search made a plan that breaks a rule: ${JSON.stringify(violations[0])}`)
  return plan
}
