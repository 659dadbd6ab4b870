import { groupedBy } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import type { Condition } from '../project/survey-records.ts'
import type { Because, Caution, Specification, Step, StepOrder } from './types.ts'

interface Explanation {
  readonly step: Step
  /** Why it is here: each rule with its reason, its source and the conditions that triggered it. */
  readonly because: readonly (Because & { readonly conditions: readonly Condition[] })[]
  /** What it waits for, and what waits for it, with the reasons. */
  readonly after: readonly StepOrder[]
  readonly before: readonly StepOrder[]
  readonly cautions: readonly Caution[]
}

/** Everything to be said about one step; null when the specification has no such step. */
export function explainStep(job: Job, specification: Specification, stepKey: string): Explanation | null {
  const step = specification.steps.find((each) => each.key === stepKey)
  if (step === undefined) return null
  return {
    step,
    because: step.because.map((because) => ({
      ...because,
      conditions: because.conditionIds.flatMap((id) => job.conditions[id] ?? []),
    })),
    after: specification.order.filter((precedence) => precedence.after === stepKey),
    before: specification.order.filter((precedence) => precedence.before === stepKey),
    cautions: step.cautions,
  }
}

/**
 * Why one step comes before another: the shortest chain of neighbours that leads from the first to the second, each with
 * its rule and reason. Empty when nothing says so and they may go in either order.
 */
export function explainOrder(
  specification: Specification,
  firstKey: string,
  secondKey: string,
): readonly StepOrder[] {
  const outgoing = groupedBy(specification.order, ({ before }) => before)
  const reachedBy = new Map<string, StepOrder>()
  let frontier = [firstKey]
  while (frontier.length > 0 && !reachedBy.has(secondKey)) {
    const next: string[] = []
    for (const key of frontier) {
      for (const precedence of outgoing.get(key) ?? []) {
        if (precedence.after === firstKey || reachedBy.has(precedence.after)) continue
        reachedBy.set(precedence.after, precedence)
        next.push(precedence.after)
      }
    }
    frontier = next
  }
  return chainTo(secondKey, reachedBy)
}

function chainTo(key: string, reachedBy: ReadonlyMap<string, StepOrder>): readonly StepOrder[] {
  const chain: StepOrder[] = []
  for (
    let precedence = reachedBy.get(key);
    precedence !== undefined;
    precedence = reachedBy.get(precedence.before)
  ) {
    chain.unshift(precedence)
  }
  return chain
}
