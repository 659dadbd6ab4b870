import { type EpochMinutes, epochMinutes } from '../time/instant.ts'
import { localTimeIn } from '../time/local-time.ts'
import { intersectWindows, workingWindows } from './calendar.ts'
import { verifyPlan } from './judge/verify.ts'
import type { Violation } from './judge/violation.ts'
import type { Plan, PlanSegment, ScheduleProblem } from './model.ts'

/** Longer than any row of days off; a task whose people are never there again keeps the segments found by then. */
const daysAhead = 60

/**
 * The plan with one task begun at another moment by the same people and everything else where it was: what a hand that moves
 * the task sees before a new plan is looked for. The task goes on in the hours all of its people work; where they are not all
 * there at `start` it lies there in one piece, for the judge to say so.
 */
export function planWithTaskMoved(
  problem: ScheduleProblem,
  plan: Plan,
  taskId: string,
  start: EpochMinutes,
): Plan {
  const tasks = plan.tasks.map((planned) => {
    if (planned.task !== taskId) return planned
    const length = planned.segments.reduce((sum, segment) => sum + segment.end - segment.start, 0)
    const segments = laidFrom(problem, planned.people, start, length)
    return { ...planned, segments, start, end: segments.at(-1)?.end ?? start }
  })
  return { ...plan, tasks }
}

/**
 * What the move alone would break. Time for moving in and for product changes is left out, here and at what follows: the plan that is made
 * with the pin finds it.
 */
export function breaksWhenMoved(
  problem: ScheduleProblem,
  plan: Plan,
  taskId: string,
  start: EpochMinutes,
): readonly Violation[] {
  const moved = planWithTaskMoved(problem, plan, taskId, start)
  return verifyPlan(problem, moved).filter(({ rule }) => rule !== 'pinned' && rule !== 'timeSpent')
}

function laidFrom(
  problem: ScheduleProblem,
  peopleIds: readonly string[],
  start: EpochMinutes,
  length: number,
): readonly PlanSegment[] {
  const whole = [{ start, end: epochMinutes(start + length) }]
  if (problem.clock.kind === 'unbroken') return whole
  const local = localTimeIn(problem.clock.timeZone)
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
  return segments[0]?.start === start ? segments : whole
}
