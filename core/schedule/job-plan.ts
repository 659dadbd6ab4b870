import { groupedBy, present } from '../lists/lists.ts'
import type { PassLine } from '../passes/pass-types.ts'
import type { CrewMemberId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { dateOfDay, dayOfDate } from '../time/local-date.ts'
import { dateOf, momentsIn } from '../time/site-moment.ts'
import { compareText } from '../words/text.ts'
import type { PlanBound } from './bound/bound.ts'
import type { PassTask, Relaxed } from './job/planning-site.ts'
import type { ProblemOfJob } from './job/problem-of-job.ts'
import { type Attendance, figuresOf, type PlanFigures } from './judge/plan-costs.ts'
import { daysOutOfUse } from './judge/room-use.ts'
import { verifyPlan } from './judge/verify.ts'
import type { Violation } from './judge/violation.ts'
import { finishOf, type Plan, type PlanCost, type PlannedTask, type PlanSegment, type Task } from './model.ts'

/** One visit of a pass as people read it. Moments are local, `2027-03-31T08:30`. */
interface JobPlanTask {
  /** The pass's key; of a coat that goes on the next day, which is a task of its own, with `~2` behind it, and so on. */
  readonly key: string
  readonly passKey: string
  /** `Woodwork, second coat`. */
  readonly name: string
  readonly roomSetId: RoomId
  /** The first of the rooms of the set that it works in. */
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

/** What somebody is paid for on a day, in minutes. */
interface JobPlanDay {
  readonly crewMemberId: CrewMemberId
  readonly date: string
  /** First and last work of the day, setting up and leaving not counted. */
  readonly from: string
  readonly to: string
  readonly paidMinutes: number
  readonly setUpMinutes: number
  readonly leavingMinutes: number
  /** Moving to another room, changing product, setting a room up once more. */
  readonly betweenMinutes: number
  readonly workMinutes: number
}

/** Days, first and last included, on which the household cannot use a room set; between two stretches it is given back. */
interface RoomOutOfUse {
  readonly roomId: RoomId
  readonly from: string
  readonly to: string
}

export interface JobPlan {
  readonly tasks: readonly JobPlanTask[]
  /** By day and person. */
  readonly days: readonly JobPlanDay[]
  /** Of room sets with work left, by begin. */
  readonly roomsOutOfUse: readonly RoomOutOfUse[]
  /** Local dates of the first and the last day of work. */
  readonly startsOn: string
  readonly finishesOn: string
  /** Whole cents. */
  readonly cost: PlanCost
  readonly roomDays: number
  /** What the judge says; empty for every plan that is shown. */
  readonly violations: readonly Violation[]
  /** No plan can finish before this date or cost less; what lies between it and this plan. Null while that is not worked out. */
  readonly bound: {
    readonly finishesOn: string
    readonly gapDays: number
    readonly cents: number
    readonly gapCents: number
  } | null
  readonly relaxed: readonly Relaxed[]
}

/** A plan of the engine as people read it. */
export function jobPlanOf(asked: ProblemOfJob, plan: Plan, bound?: PlanBound): JobPlan {
  const { problem, tasks, relaxed } = asked
  if (problem.clock.kind !== 'site') throw new Error('a job is planned by the clock of its site')
  const moment = momentsIn(problem.clock.timeZone)
  const byId = new Map(problem.tasks.map((task) => [task.id, task]))
  const figures = figuresOf(problem, plan)
  const rows = plan.tasks
    .flatMap((planned) =>
      taskRows(present(byId.get(planned.task)), planned, present(tasks.get(planned.task)), moment),
    )
    .toSorted((one, other) => compareText(one.startsAt, other.startsAt) || compareText(one.key, other.key))
  const plannedOf = plannedByPerson(byId, plan)
  const firstDay = dayOfDate(dateOf(moment(problem.clock.start)))
  const finishesOn = dateOf(moment(finishOf(plan) - 1))
  return {
    tasks: rows,
    days: figures.attendance.map((each) =>
      dayRow(problem, byId, plannedOf.get(each.person) ?? [], each, moment),
    ),
    roomsOutOfUse: roomsOutOfUse(asked, figures),
    startsOn: dateOf(rows[0]?.startsAt ?? moment(problem.clock.start)),
    finishesOn,
    cost: figures.cost,
    roomDays: daysOutOfUse(figures.rooms.flatMap(({ stretches }) => stretches)),
    violations: verifyPlan(problem, plan),
    bound:
      bound === undefined
        ? null
        : {
            finishesOn: dateOfDay(firstDay + bound.finish),
            gapDays: Math.max(0, dayOfDate(finishesOn) - firstDay - bound.finish),
            cents: bound.cents,
            gapCents: figures.cost.total - bound.cents,
          },
    relaxed,
  }
}

/** A coat that is stopped over a night is a task of its own on each day: each day's film ends at an opening. */
function taskRows(
  task: Task,
  planned: PlannedTask,
  { pass, stepKeys }: PassTask,
  moment: (instant: number) => string,
): readonly JobPlanTask[] {
  const { touchDry } = task.effects
  const leavesFilm = touchDry !== null || pass.lines.some(leavesAFilm)
  const parts =
    leavesFilm && task.state.kind !== 'done' ? byDay(planned.segments, moment) : [planned.segments]
  return parts.map((segments, index) => {
    const [first, last] = [segments[0], segments.at(-1)]
    const start = index === 0 ? planned.start : (first?.start ?? planned.start)
    const end = last?.end ?? planned.end
    return {
      key: index === 0 ? task.id : `${task.id}~${index + 1}`,
      passKey: pass.key,
      name: pass.name,
      roomSetId: pass.roomSetId,
      roomId: pass.roomIds[0] ?? pass.roomSetId,
      stepKeys,
      startsAt: moment(start),
      endsAt: moment(end),
      segments: segments.map((each) => ({ startsAt: moment(each.start), endsAt: moment(each.end) })),
      crewMemberIds: planned.people as readonly CrewMemberId[],
      dryUntil: touchDry === null ? null : moment(end + touchDry),
      state: task.state.kind,
    }
  })
}

/** Whatever is put on with a product, and filler drawn over a whole surface. */
function leavesAFilm({ productId, operation }: PassLine): boolean {
  return productId !== null || operation === 'skim'
}

function byDay(
  segments: readonly PlanSegment[],
  moment: (instant: number) => string,
): readonly (readonly PlanSegment[])[] {
  const days = groupedBy(segments, ({ start }) => dateOf(moment(start)))
  return days.size === 0 ? [segments] : [...days.values()]
}

/** What each person is planned for and has not done yet. */
function plannedByPerson(
  byId: ReadonlyMap<string, Task>,
  { tasks }: Plan,
): ReadonlyMap<string, readonly PlannedTask[]> {
  const open = tasks.filter(({ task }) => byId.get(task)?.state.kind !== 'done')
  const shares = open.flatMap((planned) => planned.people.map((person) => ({ person, planned })))
  const found = groupedBy(shares, ({ person }) => person)
  return new Map([...found].map(([person, own]) => [person, own.map(({ planned }) => planned)]))
}

function dayRow(
  { rules, rooms }: ProblemOfJob['problem'],
  byId: ReadonlyMap<string, Task>,
  own: readonly PlannedTask[],
  { person, day, from, to, minutes }: Attendance,
  moment: (instant: number) => string,
): JobPlanDay {
  const date = dateOfDay(day)
  const alarms = rooms.some(({ alarm }) => alarm) ? (rules.alarmsRestoredDaily?.minutes ?? 0) : 0
  const spent = own.flatMap(({ segments }) => segments).filter(({ start }) => start >= from && start < to)
  const begun = own.filter(
    ({ segments }) => segments.some(({ start }) => start >= from && start < to) && isBegunOn(segments, from),
  )
  const between = begun.reduce(
    (sum, planned) => sum + minutesBetween(present(byId.get(planned.task)), planned),
    0,
  )
  const worked = spent.reduce((sum, { start, end }) => sum + end - start, 0)
  return {
    crewMemberId: person as CrewMemberId,
    date,
    from: moment(from),
    to: moment(to),
    paidMinutes: minutes,
    setUpMinutes: (rules.dailyChores?.setUp ?? 0) + alarms,
    leavingMinutes: (rules.dailyChores?.cleanUp ?? 0) + alarms,
    betweenMinutes: between,
    workMinutes: worked - between,
  }
}

function isBegunOn(segments: readonly PlanSegment[], from: number): boolean {
  return (segments[0]?.start ?? 0) >= from
}

/** What a task takes each of its people before its work. */
function minutesBetween({ work, state }: Task, { segments, people }: PlannedTask): number {
  const own = state.kind === 'started' ? state.remainingWork : work
  const spent = segments.reduce((sum, { start, end }) => sum + end - start, 0)
  return Math.max(0, Math.round(spent - Math.ceil(own / Math.max(1, people.length) / 5) * 5))
}

/** Of rooms with work left, in the order they are put out of use. */
function roomsOutOfUse({ problem }: ProblemOfJob, { rooms }: PlanFigures): readonly RoomOutOfUse[] {
  const open = new Set(problem.tasks.filter(({ state }) => state.kind !== 'done').map(({ room }) => room))
  return rooms
    .filter(({ room }) => open.has(room))
    .flatMap(({ room, stretches }) =>
      stretches.map(({ first, last }) => ({
        roomId: room as RoomId,
        from: `${dateOfDay(first)}T00:00`,
        to: `${dateOfDay(last)}T23:59`,
      })),
    )
    .toSorted((one, other) => compareText(one.from, other.from))
}
