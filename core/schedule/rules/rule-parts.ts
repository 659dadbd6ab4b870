import type { PersonId, Plan, PlannedTask, ScheduleProblem, ScheduleRoomId, Task, TaskId } from '../model.ts'

/** What breaks, and where; one kind for every rule. Instants are epoch minutes. */
export type RuleBreak =
  | { readonly rule: 'crewCapacity'; readonly task: TaskId; readonly people: readonly PersonId[] }
  | {
      readonly rule: 'crewCalendar' | 'dailyChores' | 'alarmsRestored'
      readonly task: TaskId
      readonly person: PersonId
      readonly at: number
    }
  | {
      readonly rule: 'onePlaceAtATime'
      readonly person: PersonId
      readonly tasks: readonly [TaskId, TaskId]
      readonly at: number
    }
  | { readonly rule: 'drying'; readonly from: TaskId; readonly to: TaskId; readonly missing: number }
  | { readonly rule: 'openTime'; readonly from: TaskId; readonly to: TaskId; readonly late: number }
  | {
      readonly rule: 'pooledResource'
      readonly resource: string
      readonly tasks: readonly TaskId[]
      readonly at: number
    }
  | {
      readonly rule: 'roomCapacity'
      readonly room: ScheduleRoomId
      readonly tasks: readonly TaskId[]
      readonly at: number
    }
  | { readonly rule: 'dustNearWet'; readonly dusty: TaskId; readonly wet: TaskId; readonly at: number }
  | { readonly rule: 'fumesWhileSleeping'; readonly task: TaskId; readonly at: number }
  | { readonly rule: 'roomsOutOfUse'; readonly rooms: readonly ScheduleRoomId[]; readonly at: number }
  | { readonly rule: 'roomBack'; readonly task: TaskId; readonly room: ScheduleRoomId; readonly at: number }
  | { readonly rule: 'wayOut'; readonly behind: TaskId; readonly hall: TaskId; readonly at: number }
  | { readonly rule: 'hallsLast'; readonly task: TaskId; readonly hall: TaskId }
  | { readonly rule: 'held'; readonly task: TaskId; readonly until: number }
  | { readonly rule: 'pinned'; readonly task: TaskId }
  | { readonly rule: 'done'; readonly task: TaskId }

/** What every rule of the schedule is: a function over the whole plan that answers with what breaks. */
export type Rule = (problem: ScheduleProblem, plan: Plan) => readonly RuleBreak[]

/** A task with its place in the plan. */
export interface Placed {
  readonly task: Task
  readonly planned: PlannedTask
}

/** Tasks that the plan holds, in the order of the problem; the others are not judged. */
export function placedTasks(problem: ScheduleProblem, plan: Plan): readonly Placed[] {
  const byId = new Map(plan.tasks.map((planned) => [planned.task, planned]))
  return problem.tasks.flatMap((task) => {
    const planned = byId.get(task.id)
    return planned === undefined ? [] : [{ task, planned }]
  })
}

/** Not a fact: what was done need not respect rules that were broken on site. */
export function isOpen({ task }: Placed): boolean {
  return task.state.kind !== 'done'
}

/** First instant two stretches share, or undefined. */
export function overlap(
  oneFrom: number,
  oneTo: number,
  otherFrom: number,
  otherTo: number,
): number | undefined {
  const from = Math.max(oneFrom, otherFrom)
  return from < Math.min(oneTo, otherTo) ? from : undefined
}
