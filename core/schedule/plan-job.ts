import type { Job } from '../project/job.ts'
import { type Outcome, type Problem, problem, succeed } from '../project/problem.ts'
import type { CrewMemberId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Specification } from '../specification/types.ts'
import type { PlanBound } from './bounds/bounds.ts'
import { dateOfDay, dayOfDate } from './calendar.ts'
import type { Relaxed } from './job/planning-site.ts'
import { localMoments } from './job/site-hours.ts'
import type { MinutesByStep } from './job/step-facts.ts'
import {
  nothingHappened,
  type PlanningFacts,
  type TasksOfJob,
  tasksFromSpecification,
} from './job/tasks-from-specification.ts'
import type { Plan, PlannedTask, PlanValue, ScheduleProblem, Task } from './model.ts'
import { stretchOutOfUse } from './rules/out-of-use.ts'
import { isOpen, placedTasks } from './rules/rule-parts.ts'
import { createSearch } from './search.ts'
import { validateProblem } from './validate.ts'
import { type Violation, verifyPlan } from './verify.ts'
import { clashSentence } from './words/clash-words.ts'
import { faultSentence } from './words/fault-words.ts'
import { wordsOfJob } from './words/job-words.ts'

/** One task of the plan as people read it. Moments are local, `2027-03-31T08:30`. */
export interface JobPlanTask {
  readonly key: string
  readonly roomId: RoomId
  /** The steps worked in it, in order. */
  readonly stepKeys: readonly string[]
  readonly startsAt: string
  readonly endsAt: string
  /** Between breaks and nights. */
  readonly segments: readonly { readonly startsAt: string; readonly endsAt: string }[]
  readonly crewMemberIds: readonly CrewMemberId[]
  /** Touch dry then; null for dry work. */
  readonly dryUntil: string | null
  readonly state: Task['state']['kind']
}

/** A stretch in which the household cannot use a room: from the first task in it to the end of the last, drying included. */
export interface RoomOutOfUse {
  readonly roomId: RoomId
  readonly from: string
  readonly to: string
}

export interface JobPlan {
  readonly tasks: readonly JobPlanTask[]
  readonly roomsOutOfUse: readonly RoomOutOfUse[]
  /** Local dates of the first and the last day of work. */
  readonly startsOn: string
  readonly finishesOn: string
  readonly value: PlanValue
  /** What the independent judge says; empty for every plan that is shown. */
  readonly violations: readonly Violation[]
  /** No plan can finish before this date; days between it and this plan's finish. Null while that is not worked out. */
  readonly bound: { readonly finishesOn: string; readonly gapDays: number } | null
  readonly relaxed: readonly Relaxed[]
}

export interface PlanOptions {
  readonly seed: number
  /** Attempts of the search; the plan gets better with more of them, never worse. */
  readonly iterations: number
  readonly planning?: PlanningFacts
}

/** A search for a plan that can be stopped and gone on with at will, for a worker that shows what it has so far. */
export interface JobPlanning {
  /** Tries so many times more; true when the plan got better. */
  step(iterations: number): boolean
  /** The best plan so far, judged; a problem in words when there is none. Needs at least one step. */
  current(): Outcome<JobPlan>
  /** Works out what no plan can beat; `current` says it from then on. Takes longer than a first plan. */
  prove(): void
  isFinished(): boolean
}

/** Plans a job whole: as many attempts as asked for, or fewer when the best is proved. */
export function planJob(
  job: Job,
  specification: Specification,
  minutes: MinutesByStep,
  options: PlanOptions,
): Outcome<JobPlan> {
  const started = startPlanning(job, specification, minutes, options.seed, options.planning)
  if (!started.ok) return started
  started.value.step(Math.max(1, options.iterations))
  started.value.prove()
  return started.value.current()
}

export function startPlanning(
  job: Job,
  specification: Specification,
  minutes: MinutesByStep,
  seed: number,
  planning: PlanningFacts = nothingHappened,
): Outcome<JobPlanning> {
  const tasks = tasksFromSpecification(job, specification, minutes, planning)
  const refusal = refusalOf(job, tasks)
  if (refusal !== null) return { ok: false, problem: refusal }
  const search = createSearch(tasks.problem, seed)
  let bound: PlanBound | undefined
  return succeed({
    step: (iterations) => search.step(iterations).length > 0,
    isFinished: () => search.isFinished(),
    prove: () => {
      bound = search.bound()
    },
    current: () => {
      const plan = search.best()
      if (plan !== undefined) return succeed(jobPlanOf(tasks, plan, bound))
      const clash = search.clash()
      if (clash === undefined) throw new Error('a plan is asked for before the first step of the search')
      const { sentence, ids } = clashSentence(clash.clash, wordsOfJob(job, tasks))
      const lead = clash.isProved ? 'No plan can hold' : 'No plan was found yet'
      return { ok: false, problem: problem('noPlan', `${lead}: ${sentence}`, ids) }
    },
  })
}

/** Why the tasks of a job cannot be handed to a search at all, in words; null where they can. */
export function refusalOf(job: Job, tasks: TasksOfJob): Problem | null {
  const { problem: asked } = tasks
  if (asked.tasks.length === 0) return problem('noPlan', 'There is nothing to plan: no step is left to do.')
  if (asked.people.length === 0)
    return problem('noPlan', 'Nobody is on the crew. Add somebody before planning.')
  const fault = validateProblem(asked)[0]
  if (fault === undefined) return null
  const { sentence, ids } = faultSentence(fault, wordsOfJob(job, tasks))
  return problem('noPlan', `The plan cannot be made: ${sentence}`, ids)
}

/** A plan of the engine as people read it; for searches that run outside of `startPlanning`. */
export function jobPlanOf(tasks: TasksOfJob, plan: Plan, bound?: PlanBound): JobPlan {
  const { problem: asked, groups, relaxed } = tasks
  if (asked.clock.kind !== 'site') throw new Error('a job is planned by the clock of its site')
  const moment = localMoments(asked.clock.timeZone)
  const byId = new Map(asked.tasks.map((task) => [task.id, task]))
  const firstDay = dayOfDate(dateOf(moment(asked.clock.start)))
  const rows = plan.tasks
    .map((planned) => taskRow(byId.get(planned.task) as Task, planned, groups, moment))
    .toSorted((one, other) => compareText(one.startsAt, other.startsAt) || compareText(one.key, other.key))
  return {
    tasks: rows,
    roomsOutOfUse: roomsOutOfUse(asked, plan, moment),
    startsOn: dateOf(rows[0]?.startsAt ?? moment(asked.clock.start)),
    finishesOn: dateOf(rows.map((row) => row.endsAt).reduce(later, '')),
    value: plan.value,
    violations: verifyPlan(asked, plan),
    bound:
      bound === undefined
        ? null
        : { finishesOn: dateOfDay(firstDay + bound.finish), gapDays: plan.value.finish - bound.finish },
    relaxed,
  }
}

function taskRow(
  task: Task,
  planned: PlannedTask,
  groups: TasksOfJob['groups'],
  moment: (instant: number) => string,
): JobPlanTask {
  const { wetFor } = task.effects
  return {
    key: task.id,
    roomId: task.room as RoomId,
    stepKeys: groups.get(task.id)?.steps.map((step) => step.key) ?? [],
    startsAt: moment(planned.start),
    endsAt: moment(planned.end),
    segments: planned.segments.map(({ start, end }) => ({ startsAt: moment(start), endsAt: moment(end) })),
    crewMemberIds: planned.people as readonly CrewMemberId[],
    dryUntil: wetFor === null ? null : moment(planned.end + wetFor),
    state: task.state.kind,
  }
}

/** Of rooms with work left, in the order they are put out of use. */
function roomsOutOfUse(
  problem: ScheduleProblem,
  plan: Plan,
  moment: (instant: number) => string,
): readonly RoomOutOfUse[] {
  const placed = placedTasks(problem, plan)
  return problem.rooms
    .flatMap(({ id }) => {
      const inside = placed.filter(({ task }) => task.room === id)
      const stretch = inside.some(isOpen) ? stretchOutOfUse(inside) : undefined
      if (stretch === undefined) return []
      return [{ roomId: id as RoomId, from: moment(stretch.start), to: moment(stretch.end) }]
    })
    .toSorted((one, other) => compareText(one.from, other.from))
}

function dateOf(moment: string): string {
  return moment.slice(0, 10)
}

/** Moments are written so that they sort as text. */
function later(one: string, other: string): string {
  return one > other ? one : other
}

function compareText(one: string, other: string): number {
  return one === other ? 0 : one < other ? -1 : 1
}
