import type { Plan, ScheduleProblem } from './model.ts'
import type { Entry } from './verify/entry.ts'
import { createPresences } from './verify/presence.ts'
import { verifyDust, verifyQuietHours, verifyRoomsOutOfUse, verifyWayOut } from './verify/room-rules.ts'
import { verifyCapacities, verifyLinks, verifyPeople } from './verify/shared-rules.ts'
import { verifyCrew, verifyFacts, verifyShape } from './verify/task-rules.ts'
import type { Violation } from './verify/violation.ts'
import { wallClock } from './verify/wall-clock.ts'

export type { Violation }

/**
 * Judges a plan from scratch, on the wall clock, minute by minute, knowing only the problem and the plan. It shares no code
 * with calendar, search or bounds on purpose. An empty list means every rule holds. Rules are not held against facts alone:
 * at least one of the tasks concerned must still be open.
 */
export function verifyPlan(problem: ScheduleProblem, plan: Plan): readonly Violation[] {
  const found: Violation[] = []
  const entries = pairUp(problem, plan, found)
  if (found.length > 0) return found
  const clock = wallClock(problem, entries)
  const presences = createPresences(problem, clock)
  for (const entry of entries) {
    verifyShape(problem, entry, found)
    verifyFacts(problem, entry, found)
    if (!entry.isFact) verifyCrew(problem, presences, entry, found)
  }
  if (found.length > 0) return found
  verifyPeople(problem, entries, found)
  verifyLinks(problem, entries, found)
  verifyCapacities(problem, entries, found)
  verifyDust(problem, entries, found)
  verifyQuietHours(problem, clock, entries, found)
  verifyRoomsOutOfUse(problem, entries, found)
  verifyWayOut(problem, entries, found)
  return found
}

function pairUp(problem: ScheduleProblem, plan: Plan, found: Violation[]): readonly Entry[] {
  const byId = new Map(plan.tasks.map((planned) => [planned.task, planned]))
  if (byId.size !== plan.tasks.length || plan.tasks.length !== problem.tasks.length) {
    for (const planned of plan.tasks) {
      if (!problem.tasks.some((task) => task.id === planned.task))
        found.push({ rule: 'everyTaskPlanned', task: planned.task })
    }
  }
  return problem.tasks.flatMap((task) => {
    const planned = byId.get(task.id)
    if (planned !== undefined) return [{ task, planned, isFact: task.state.kind === 'done' }]
    found.push({ rule: 'everyTaskPlanned', task: task.id })
    return []
  })
}
