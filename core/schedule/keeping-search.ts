import { instantOf } from '../time/site-moment.ts'
import { asAimed } from './choice/aims.ts'
import type { PlanningFacts, ProblemOfJob } from './job/problem-of-job.ts'
import { figuresOf } from './judge/plan-costs.ts'
import { verifyPlan } from './judge/verify.ts'
import type { Plan, PlannedTask, ScheduleProblem, Task } from './model.ts'
import { createSearch, type ScheduleSearch } from './tries/search.ts'

/**
 * A search for what the job aims at that also knows the plan to keep as it stands: while that still holds, nothing dearer takes its place. The search itself only
 * comes near to it, because its own plans put every pass as early as they can.
 */
export function createKeepingSearch(
  asked: ProblemOfJob,
  keeps: PlanningFacts['keeps'],
  seed: number,
): ScheduleSearch {
  const aimed = asAimed(asked.problem, asked.aim)
  const search = createSearch(aimed, seed)
  const kept = keptPlan(asked, keeps)
  if (kept === null) return search
  const weight = weightOfPlan(aimed, kept)
  const isKept = (): boolean => (search.weight() ?? Number.POSITIVE_INFINITY) >= weight
  return {
    ...search,
    best: () => (isKept() ? kept : search.best()),
    weight: () => (isKept() ? weight : search.weight()),
    clash: () => undefined,
  }
}

/** The plan to keep, piece by piece; null where a pass is new, has other steps or is begun, or where a rule would be broken. */
export function keptPlan(asked: ProblemOfJob, keeps: PlanningFacts['keeps']): Plan | null {
  const { problem } = asked
  if (keeps === null || problem.clock.kind !== 'site') return null
  const planned = problem.tasks.map((task) => plannedAsKept(asked, task, keeps.tasks))
  if (planned.some((each) => each === null)) return null
  const plan = { tasks: planned.filter((each) => each !== null) }
  return verifyPlan(problem, plan).length === 0 ? plan : null
}

type KeptTasks = NonNullable<PlanningFacts['keeps']>['tasks']

function plannedAsKept({ problem, tasks }: ProblemOfJob, task: Task, kept: KeptTasks): PlannedTask | null {
  const { clock } = problem
  const steps = new Set(tasks.get(task.id)?.stepKeys ?? [])
  if (clock.kind !== 'site' || task.state.kind !== 'open' || steps.size === 0) return null
  const rows = kept.filter(({ stepKeys }) => stepKeys.some((key) => steps.has(key)))
  const isSame = rows.every(
    ({ stepKeys }) => stepKeys.length === steps.size && stepKeys.every((key) => steps.has(key)),
  )
  const segments = rows
    .flatMap((row) => row.segments)
    .map(({ startsAt, endsAt }) => ({
      start: instantOf(startsAt, clock.timeZone),
      end: instantOf(endsAt, clock.timeZone),
    }))
    .toSorted((one, other) => one.start - other.start)
  const [first, last] = [segments[0], segments.at(-1)]
  if (!isSame || first === undefined || last === undefined) return null
  return { task: task.id, segments, start: first.start, end: last.end, people: rows[0]?.crewMemberIds ?? [] }
}

/** What the search counts: the cost of a plan and what it does not keep, in cents. */
function weightOfPlan(problem: ScheduleProblem, plan: Plan): number {
  const { cost } = figuresOf(problem, plan)
  const { centsPerMove, centsPerLateDay } = problem.keeping
  return cost.total + cost.movedTasks * centsPerMove + cost.lateDays * centsPerLateDay
}
