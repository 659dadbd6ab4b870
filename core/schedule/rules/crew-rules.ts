import { localTimeIn, presentWindows, subtractWindows, withoutChores, workingWindows } from '../calendar.ts'
import type {
  DayWindow,
  Person,
  PersonId,
  Plan,
  PlannedTask,
  ScheduleProblem,
  Task,
  TaskId,
} from '../model.ts'
import { isOpen, overlap, placedTasks, type RuleBreak } from './rule-parts.ts'

/** Crew sizes within the task's range, and everybody with the skills it asks for. */
export function crewCapacityRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return placedTasks(problem, plan)
    .filter((placed) => placed.task.state.kind === 'open' && placed.task.work > 0)
    .filter(({ task, planned }) => {
      const isSized = planned.people.length >= task.crew.min && planned.people.length <= task.crew.max
      return !isSized || !planned.people.every((id) => hasSkills(problem.people, id, task))
    })
    .map(({ task, planned }) => ({ rule: 'crewCapacity', task: task.id, people: planned.people }))
}

function hasSkills(people: readonly Person[], id: PersonId, task: Task): boolean {
  const person = people.find((entry) => entry.id === id)
  return person !== undefined && task.skills.every((skill) => person.skills.includes(skill))
}

/** Work only while each of its people is there: their week, part days and breaks, site hours, holidays. */
export function crewCalendarRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return personDays(problem, plan).flatMap(({ task, person, from, to, present }): readonly RuleBreak[] => {
    const isThere = present.some((window) => window.from <= from && to <= window.to)
    return isThere ? [] : [{ rule: 'crewCalendar', task, person, at: from }]
  })
}

/** Setting up and clearing away keep the begin and the end of each person's day. */
export function dailyChoresRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return workInChores(problem, plan, 'dailyChores', (day) => ({ whole: day.present, rest: day.afterChores }))
}

/** Covered alarms are restored every day: the minutes next to the chores belong to them. */
export function alarmsRestoredRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return workInChores(problem, plan, 'alarmsRestored', (day) => ({
    whole: day.afterChores,
    rest: day.working,
  }))
}

/** A piece of work of one person on one day, with the windows of that day; all in epoch minutes. */
interface PersonDay {
  readonly task: TaskId
  readonly person: PersonId
  readonly from: number
  readonly to: number
  readonly present: readonly DayWindow[]
  /** Without setting up and clearing away. */
  readonly afterChores: readonly DayWindow[]
  /** Without covering and restoring alarms either. */
  readonly working: readonly DayWindow[]
}

function personDays(problem: ScheduleProblem, plan: Plan): readonly PersonDay[] {
  const { clock, rules } = problem
  if (clock.kind === 'unbroken') return []
  const local = localTimeIn(clock.timeZone)
  const chores = { before: rules.dailyChores?.setUp ?? 0, after: rules.dailyChores?.cleanUp ?? 0 }
  const people = new Map(problem.people.map((person) => [person.id, person]))
  return placedTasks(problem, plan)
    .filter(isOpen)
    .flatMap(({ task, planned }) =>
      planned.people.flatMap((id) => {
        const person = people.get(id)
        if (person === undefined) return []
        return planned.segments.map(({ start, end }): PersonDay => {
          const day = local.dayAt(start)
          const instants = (windows: readonly DayWindow[]) =>
            windows.map(({ from, to }) => ({
              from: local.instantOf(day, from),
              to: local.instantOf(day, to),
            }))
          const present = presentWindows(clock, person, day)
          return {
            task: task.id,
            person: id,
            from: start,
            to: end,
            present: instants(present),
            afterChores: instants(withoutChores(present, chores)),
            working: instants(workingWindows(problem, person, day)),
          }
        })
      }),
    )
}

function workInChores(
  problem: ScheduleProblem,
  plan: Plan,
  rule: 'dailyChores' | 'alarmsRestored',
  partOf: (day: PersonDay) => { readonly whole: readonly DayWindow[]; readonly rest: readonly DayWindow[] },
): readonly RuleBreak[] {
  return personDays(problem, plan).flatMap((day): readonly RuleBreak[] => {
    const { whole, rest } = partOf(day)
    const chores = subtractWindows(whole, rest)
    const at = chores
      .map(({ from, to }) => overlap(day.from, day.to, from, to))
      .find((each) => each !== undefined)
    return at === undefined ? [] : [{ rule, task: day.task, person: day.person, at }]
  })
}

/** Nobody on two tasks at once. */
export function onePlaceAtATimeRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  const placed = placedTasks(problem, plan).filter(isOpen)
  return problem.people.flatMap(({ id }) => {
    const own = placed.filter(({ planned }) => planned.people.includes(id))
    return pairsOf(own).flatMap(([one, other]): readonly RuleBreak[] => {
      const at = sharedMinute(one.planned, other.planned)
      return at === undefined
        ? []
        : [{ rule: 'onePlaceAtATime', person: id, tasks: [one.task.id, other.task.id], at }]
    })
  })
}

function pairsOf<Entry>(entries: readonly Entry[]): readonly (readonly [Entry, Entry])[] {
  return entries.flatMap((one, index) => entries.slice(index + 1).map((other) => [one, other] as const))
}

function sharedMinute(one: PlannedTask, other: PlannedTask): number | undefined {
  for (const a of one.segments) {
    for (const b of other.segments) {
      const at = overlap(a.start, a.end, b.start, b.end)
      if (at !== undefined) return at
    }
  }
  return undefined
}
