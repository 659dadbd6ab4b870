import type { Plan, ScheduleProblem } from '../model.ts'
import { type Court, courtOf, entriesOf, type PlacedTask } from './court.ts'
import {
  dustRule,
  fumesRule,
  leadRule,
  roomBackRules,
  roomsOutOfUseRule,
  wayOutRules,
} from './house-rules.ts'
import { brokenOffRule, calendarRule, crewRule, notBeforeRule, shapeRule } from './task-rules.ts'
import { capacityRules, onePlaceRule, timeSpentRule, waitRules } from './time-rules.ts'
import type { Violation } from './violation.ts'

type Rule = (court: Court, entries: readonly PlacedTask[]) => readonly Violation[]

const rules: readonly Rule[] = [
  crewRule,
  calendarRule,
  brokenOffRule,
  notBeforeRule,
  onePlaceRule,
  timeSpentRule,
  waitRules,
  capacityRules,
  leadRule,
  dustRule,
  fumesRule,
  roomsOutOfUseRule,
  roomBackRules,
  wayOutRules,
]

/**
 * Judges a plan from its pieces alone, knowing only the problem. An empty list means every rule holds. Rules are not held against facts
 * alone: at least one of the tasks concerned must still be open. This is the only statement of the rules; search and bounds share no code
 * with it.
 */
export function verifyPlan(problem: ScheduleProblem, plan: Plan): readonly Violation[] {
  const missing = missingTasks(problem, plan)
  if (missing.length > 0) return missing
  const court = courtOf(problem)
  const entries = entriesOf(problem, plan)
  const misshapen = shapeRule(court, entries)
  return misshapen.length > 0 ? misshapen : rules.flatMap((rule) => rule(court, entries))
}

function missingTasks(problem: ScheduleProblem, plan: Plan): readonly Violation[] {
  const planned = new Set(plan.tasks.map(({ task }) => task))
  const known = new Set(problem.tasks.map(({ id }) => id))
  const strange = plan.tasks.filter(({ task }) => !known.has(task)).map(({ task }) => task)
  const missing = problem.tasks.filter(({ id }) => !planned.has(id)).map(({ id }) => id)
  const twice = planned.size === plan.tasks.length ? [] : [plan.tasks[0]?.task ?? '']
  return [...strange, ...missing, ...twice].map((task) => ({ rule: 'everyTaskPlanned', tasks: [task] }))
}
