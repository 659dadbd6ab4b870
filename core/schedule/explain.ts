import type { PersonId, ScheduleProblem, ScheduleRoomId, SkillName, Task, TaskId } from './model.ts'
import { type Heads, propagateHeads } from './net/heads.ts'
import type { SiteNet } from './net/site-net.ts'
import type { Stuck } from './site/site-placing.ts'

/** What stands in the way of a plan. Task ids come in the order in which one pushes the next. */
export type Clash =
  /** The waits round this cycle cannot all hold: each task pushes the next one until the first is late for itself. */
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
  /** The chain of tasks that must come first ends after the room is due back. */
  | { readonly kind: 'roomBackTooEarly'; readonly room: ScheduleRoomId; readonly tasks: readonly TaskId[] }
  /** The last task of the chain has no working time that suits it: no stretch long enough, or a pinned or latest start already past. */
  | { readonly kind: 'noWorkingTime'; readonly tasks: readonly TaskId[] }
  | { readonly kind: 'pinnedCannotHold'; readonly task: TaskId }
  /** Not a proof: where most attempts got stuck. */
  | {
      readonly kind: 'stuckMost'
      readonly task: TaskId
      readonly because: 'noFreePlace' | 'waitTooLong' | 'roomsOutOfUse'
    }

/** People or resources that no calendar could ever supply. Each is a proof that no plan exists. */
export function findShortage(problem: ScheduleProblem): Clash | undefined {
  for (const task of problem.tasks) {
    if (task.state.kind === 'done') continue
    const clash = crewShortage(problem, task) ?? resourceShortage(problem, task)
    if (clash !== undefined) return clash
  }
  return undefined
}

function crewShortage(problem: ScheduleProblem, task: Task): Clash | undefined {
  if (task.crew.max === 0 || task.work === 0 || task.state.kind === 'started') return undefined
  const skilled = problem.people.filter((person) =>
    task.skills.every((skill) => person.skills.includes(skill)),
  )
  if (skilled.length >= task.crew.min) return undefined
  if (problem.people.length < task.crew.min) {
    return { kind: 'crewTooSmall', task: task.id, needed: task.crew.min, available: problem.people.length }
  }
  return {
    kind: 'skillMissing',
    task: task.id,
    skills: task.skills,
    people: skilled.map((person) => person.id),
  }
}

function resourceShortage(problem: ScheduleProblem, task: Task): Clash | undefined {
  if (task.work === 0) return undefined
  for (const { resource, amount } of task.demands) {
    const capacity = problem.resources.find((entry) => entry.id === resource)?.capacity ?? 0
    if (amount > capacity) return { kind: 'resourceTooSmall', task: task.id, resource, needed: amount }
  }
  return undefined
}

/** Names why heads could not be propagated; a proof, since heads leave out people and rooms. */
export function explainHeads(net: SiteNet, heads: Exclude<Heads, { kind: 'heads' }>): Clash {
  const { problem } = net
  const names = (tasks: readonly number[]): readonly TaskId[] =>
    tasks.map((task) => problem.tasks[task]?.id ?? '')
  if (heads.kind === 'loop') {
    const pinned = heads.tasks.find((task) => net.tasks[task]?.fixed === 3)
    if (pinned !== undefined && propagateHeads(withoutPins(net)).kind !== 'loop')
      return { kind: 'pinnedCannotHold', task: problem.tasks[pinned]?.id ?? '' }
    return { kind: 'waitsContradict', tasks: names(heads.tasks) }
  }
  const tasks = names([...heads.chain].reverse())
  const last = net.tasks[heads.task]
  const room = problem.rooms[last?.room ?? -1]
  if (last !== undefined && room !== undefined && last.endBy < net.axis.horizon) {
    return { kind: 'roomBackTooEarly', room: room.id, tasks }
  }
  if (last?.fixed === 3) return { kind: 'pinnedCannotHold', task: tasks[tasks.length - 1] ?? '' }
  return { kind: 'noWorkingTime', tasks }
}

/** Tasks that a pin and a maximum wait push round in a circle do not contradict each other when the pin is gone. */
function withoutPins(net: SiteNet): SiteNet {
  return { ...net, tasks: net.tasks.map((task) => (task.fixed === 3 ? { ...task, fixed: 0 } : task)) }
}

/** Where the search failed most, when nothing is proved. */
export function explainStuck(
  net: SiteNet,
  stuck: ReadonlyMap<number, { readonly count: number; readonly why: Stuck['why'] }>,
): Clash {
  const worst = [...stuck].reduce((most, entry) => (entry[1].count > most[1].count ? entry : most))
  const task = net.problem.tasks[worst[0]]?.id ?? ''
  if (net.tasks[worst[0]]?.fixed === 3) return { kind: 'pinnedCannotHold', task }
  const reasons = { noPlace: 'noFreePlace', wait: 'waitTooLong', rooms: 'roomsOutOfUse' } as const
  return { kind: 'stuckMost', task, because: reasons[worst[1].why] }
}
