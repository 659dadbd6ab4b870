import type { PersonId, ScheduleProblem, SkillName, Task, TaskId } from './model.ts'

/** What stands in the way of a plan. */
export type Clash =
  /** Each of these tasks waits for the one before it, and the first for the last. */
  | { readonly kind: 'waitsContradict'; readonly tasks: readonly TaskId[] }
  | {
      readonly kind: 'skillMissing'
      readonly task: TaskId
      readonly skills: readonly SkillName[]
      readonly people: readonly PersonId[]
    }
  | {
      readonly kind: 'crewTooSmall'
      readonly task: TaskId
      readonly needed: number
      readonly available: number
    }
  | {
      readonly kind: 'resourceTooSmall'
      readonly task: TaskId
      readonly resource: string
      readonly needed: number
    }
  /** Not a proof: the first rule that the best try breaks. */
  | {
      readonly kind: 'stuckMost'
      readonly task: TaskId
      readonly because: string
      readonly room: string | null
    }

/** Why no plan can ever be: a proof; undefined where nothing is known to stand in the way. */
export function findImpossible(problem: ScheduleProblem): Clash | undefined {
  for (const task of problem.tasks) {
    if (task.state.kind === 'done') continue
    const clash = crewShortage(problem, task) ?? resourceShortage(problem, task)
    if (clash !== undefined) return clash
  }
  return circleOfWaits(problem)
}

function crewShortage(problem: ScheduleProblem, task: Task): Clash | undefined {
  if (task.crew.max === 0 || task.work === 0 || task.state.kind === 'started') return undefined
  const skilled = problem.people.filter((person) =>
    task.skills.every((skill) => person.skills.includes(skill)),
  )
  const helpers = problem.people.filter((person) =>
    task.skills.some((skill) => person.skills.includes(skill)),
  )
  const available = task.skills.length === 0 ? problem.people.length : helpers.length
  if (skilled.length > 0 && available >= task.crew.min) return undefined
  if (problem.people.length < task.crew.min) {
    return { kind: 'crewTooSmall', task: task.id, needed: task.crew.min, available: problem.people.length }
  }
  return { kind: 'skillMissing', task: task.id, skills: task.skills, people: skilled.map(({ id }) => id) }
}

function resourceShortage(problem: ScheduleProblem, task: Task): Clash | undefined {
  if (task.work === 0) return undefined
  for (const { resource, amount } of task.demands) {
    const capacity = problem.resources.find((entry) => entry.id === resource)?.capacity ?? 0
    if (amount > capacity) return { kind: 'resourceTooSmall', task: task.id, resource, needed: amount }
  }
  return undefined
}

/** Tasks that wait for one another in a circle. */
function circleOfWaits({ tasks, links }: ScheduleProblem): Clash | undefined {
  const before = new Map<TaskId, TaskId[]>(tasks.map(({ id }) => [id, []]))
  for (const { from, to, atLeast } of links) if (atLeast !== null && atLeast >= 0) before.get(to)?.push(from)
  const done = new Set<TaskId>()
  for (const { id } of tasks) {
    const way: TaskId[] = []
    const circle = follow(id, before, done, way)
    if (circle !== undefined) return { kind: 'waitsContradict', tasks: circle }
  }
  return undefined
}

/** Goes back along waits; answers the circle it runs into. */
function follow(
  task: TaskId,
  before: ReadonlyMap<TaskId, readonly TaskId[]>,
  done: Set<TaskId>,
  way: TaskId[],
): readonly TaskId[] | undefined {
  if (done.has(task)) return undefined
  const seen = way.indexOf(task)
  if (seen >= 0) return way.slice(seen).reverse()
  way.push(task)
  for (const each of before.get(task) ?? []) {
    const circle = follow(each, before, done, way)
    if (circle !== undefined) return circle
  }
  way.pop()
  done.add(task)
  return undefined
}
