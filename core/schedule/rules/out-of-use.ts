import { epochMinutes, minutesUntilUsable, type PlanSegment } from '../model.ts'
import type { Placed } from './rule-parts.ts'

/** How long a room is out of use for the tasks in it: from the first of them until the last is dry; undefined when no work is in it. */
export function stretchOutOfUse(inside: readonly Placed[]): PlanSegment | undefined {
  const worked = inside.filter(({ planned }) => planned.segments.length > 0)
  if (worked.length === 0) return undefined
  return {
    start: epochMinutes(Math.min(...worked.map(({ planned }) => planned.start))),
    end: epochMinutes(
      Math.max(...worked.map(({ task, planned }) => planned.end + minutesUntilUsable(task.effects))),
    ),
  }
}
