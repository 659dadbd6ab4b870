import { isBegun, type PersonId, type Plan, type ScheduleProblem } from '../model.ts'
import { placedTasks, type RuleBreak } from './rule-parts.ts'

/** Pinned tasks start when they are pinned, with the people pinned. */
export function pinnedRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return placedTasks(problem, plan).flatMap(({ task, planned }): readonly RuleBreak[] => {
    if (task.state.kind !== 'pinned') return []
    const isKept =
      planned.start === task.state.start && isSameTeam(task.state.people ?? planned.people, planned.people)
    return isKept ? [] : [{ rule: 'pinned', task: task.id }]
  })
}

/** What is held is not touched before its day. */
export function heldRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return placedTasks(problem, plan).flatMap(({ task, planned }): readonly RuleBreak[] => {
    if (isBegun(task) || task.earliestStart === null || planned.start >= task.earliestStart) return []
    return [{ rule: 'held', task: task.id, until: task.earliestStart }]
  })
}

/** What is done stays as it was done. */
export function doneRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return placedTasks(problem, plan).flatMap(({ task, planned }): readonly RuleBreak[] => {
    if (task.state.kind !== 'done') return []
    const isKept = planned.start === task.state.start && planned.end === task.state.end
    return isKept ? [] : [{ rule: 'done', task: task.id }]
  })
}

function isSameTeam(one: readonly PersonId[], other: readonly PersonId[]): boolean {
  return one.length === other.length && one.every((person) => other.includes(person))
}
