import { intersectWindows, type LocalTime, workingWindows } from '../calendar.ts'
import {
  type EpochMinutes,
  epochMinutes,
  type Plan,
  type PlanSegment,
  type ScheduleProblem,
} from '../model.ts'
import type { RuleBreak } from './rule-parts.ts'
import { brokenRules } from './rules.ts'

/** Longer than any row of days off; a task whose people are never there again keeps the segments found by then. */
const daysAhead = 60

/**
 * The plan with one task begun at another moment by the same people and everything else where it was: what a hand that moves
 * the task sees before a new plan is looked for. The task goes on in the hours all of its people work; where they are not all
 * there at `start` it lies there in one piece, for the rules to say so.
 */
export function withTaskMoved(
  problem: ScheduleProblem,
  plan: Plan,
  local: LocalTime,
  taskId: string,
  start: EpochMinutes,
): Plan {
  const tasks = plan.tasks.map((planned) => {
    if (planned.task !== taskId) return planned
    const length = planned.segments.reduce((sum, segment) => sum + segment.end - segment.start, 0)
    const segments = laidFrom(problem, local, planned.people, start, length)
    return { ...planned, segments, start, end: segments.at(-1)?.end ?? start }
  })
  return { ...plan, tasks }
}

/** What the move alone would break; its own pin is not among it, for the hand is about to set another. */
export function breaksWhenMoved(
  problem: ScheduleProblem,
  plan: Plan,
  local: LocalTime,
  taskId: string,
  start: EpochMinutes,
): readonly RuleBreak[] {
  const moved = withTaskMoved(problem, plan, local, taskId, start)
  return brokenRules(problem, moved).filter((each) => each.rule !== 'pinned')
}

/** The tasks a break is about; too many rooms out of use is about rooms. */
export function tasksIn(each: RuleBreak): readonly string[] {
  switch (each.rule) {
    case 'drying':
    case 'openTime':
      return [each.from, each.to]
    case 'dustNearWet':
      return [each.dusty, each.wet]
    case 'wayOut':
      return [each.behind, each.hall]
    case 'hallsLast':
      return [each.task, each.hall]
    case 'onePlaceAtATime':
    case 'pooledResource':
    case 'roomCapacity':
      return each.tasks
    case 'roomsOutOfUse':
      return []
    default:
      return [each.task]
  }
}

function laidFrom(
  problem: ScheduleProblem,
  local: LocalTime,
  peopleIds: readonly string[],
  start: EpochMinutes,
  length: number,
): readonly PlanSegment[] {
  const people = problem.people.filter((person) => peopleIds.includes(person.id))
  const segments: PlanSegment[] = []
  let left = length
  const firstDay = local.dayAt(start)
  for (let day = firstDay; left > 0 && day < firstDay + daysAhead; day++) {
    const windows = people
      .map((person) => workingWindows(problem, person, day))
      .reduce(intersectWindows, [{ from: 0, to: 1440 }])
    for (const window of windows) {
      const from = Math.max(start, local.instantOf(day, window.from))
      const to = Math.min(local.instantOf(day, window.to), from + left)
      if (to <= from) continue
      segments.push({ start: epochMinutes(from), end: epochMinutes(to) })
      left -= to - from
      if (left === 0) break
    }
  }
  const isThere = segments[0]?.start === start
  return isThere ? segments : [{ start, end: epochMinutes(start + length) }]
}
