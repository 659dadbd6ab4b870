import type { Plan, PooledResource, ScheduleProblem } from '../model.ts'
import { isOpen, type Placed, placedTasks, type RuleBreak } from './rule-parts.ts'

/** Pooled resources, for instance one sprayer. */
export function pooledResourceRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  const placed = placedTasks(problem, plan).filter(isOpen)
  return problem.resources.flatMap(({ id, capacity }: PooledResource): readonly RuleBreak[] => {
    const over = firstOver(placed, capacity, ({ task }) => {
      return task.demands.reduce((sum, demand) => (demand.resource === id ? sum + demand.amount : sum), 0)
    })
    return over === undefined ? [] : [{ rule: 'pooledResource', resource: id, ...over }]
  })
}

/** Tasks and people at once in one room. */
export function roomCapacityRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  const placed = placedTasks(problem, plan).filter(isOpen)
  return problem.rooms.flatMap((room): readonly RuleBreak[] => {
    const inRoom = placed.filter(({ task }) => task.room === room.id)
    const over =
      firstOver(inRoom, room.tasksAtOnce ?? Number.POSITIVE_INFINITY, () => 1) ??
      firstOver(inRoom, room.peopleAtOnce ?? Number.POSITIVE_INFINITY, ({ planned }) => planned.people.length)
    return over === undefined ? [] : [{ rule: 'roomCapacity', room: room.id, ...over }]
  })
}

function firstOver(placed: readonly Placed[], capacity: number, amountOf: (placed: Placed) => number) {
  for (const { planned } of placed) {
    for (const { start } of planned.segments) {
      const busy = placed.filter((other) => {
        return (
          amountOf(other) > 0 &&
          other.planned.segments.some((segment) => segment.start <= start && start < segment.end)
        )
      })
      const used = busy.reduce((sum, other) => sum + amountOf(other), 0)
      if (used > capacity) return { tasks: busy.map(({ task }) => task.id), at: start as number }
    }
  }
  return undefined
}
