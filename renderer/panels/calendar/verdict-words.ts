import type { SearchState } from '../../state/planner.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'

/** How good a plan is known to be. Small steps are joined into tasks before anything is proved, so the words say of what. */
export function gapWords(found: FoundPlan, search: SearchState): string {
  if (found.gap <= 0)
    return search.isFinished ? 'Proved best for these tasks.' : 'The last day is proved best for these tasks.'
  const days = found.gap === 1 ? '1 day' : `${found.gap} days`
  return `At most ${days} from the best possible for these tasks.`
}
