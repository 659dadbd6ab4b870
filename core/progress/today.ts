import { groupedBy } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import type { CrewMemberId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { dateOf, type SiteMoment } from '../time/site-moment.ts'
import { compareText } from '../words/text.ts'
import type { WorkPlan, WorkPlanTask } from '../work-order/work-plan.ts'
import { counted } from './pass-states.ts'
import { isSettled, type StepProgress } from './step-states.ts'

/** What is planned of a pass on one day. */
export interface DayPass {
  readonly key: string
  readonly name: string
  readonly roomSetId: RoomId
  readonly roomName: string
  readonly half: 'morning' | 'afternoon'
  readonly crewMemberIds: readonly CrewMemberId[]
  /** Its last work on that day as planned. */
  readonly endsAt: SiteMoment
  /** It goes on another day: as planned it is begun, not done. */
  readonly goesOn: boolean
  /** Those that count, in order. */
  readonly steps: readonly StepProgress[]
  readonly isTicked: boolean
}

interface DayOnSite {
  /** Local date: the day asked for, or the next one on which somebody works. */
  readonly date: string
  /** Planned for days before and not ticked, the oldest first. */
  readonly left: readonly DayPass[]
  /** In the order of the day. */
  readonly passes: readonly DayPass[]
}

/** Of a plan what a day holds, and what days before left open; null where nobody works from that day on and nothing is open. */
export function dayOnSite(
  job: Job,
  plan: WorkPlan,
  states: ReadonlyMap<string, StepProgress>,
  asked: string,
): DayOnSite | null {
  // A coat that goes on the next day is a task of its own with the same steps.
  const lastDates = new Map(
    [...groupedBy(plan.tasks, partOf)].map(([part, tasks]) => [
      part,
      tasks.flatMap(datesOf).toSorted().at(-1),
    ]),
  )
  const visits = plan.tasks
    .flatMap((task) => visitsOf(job, task, lastDates.get(partOf(task)) ?? '', states))
    .toSorted((one, other) => compareText(one.startsAt, other.startsAt))
  const left = visits.filter(({ date, pass }) => date < asked && !pass.isTicked).map(({ pass }) => pass)
  const next = visits.find(({ date }) => date >= asked)?.date
  if (next === undefined && left.length === 0) return null
  const date = next ?? asked
  return { date, left, passes: visits.filter((each) => each.date === date).map(({ pass }) => pass) }
}

interface Visit {
  readonly date: string
  readonly startsAt: SiteMoment
  readonly pass: DayPass
}

function partOf({ passKey, key }: WorkPlanTask): string {
  return passKey ?? key
}

function datesOf({ segments }: WorkPlanTask): readonly string[] {
  return segments.map(({ startsAt }) => dateOf(startsAt))
}

function visitsOf(
  job: Job,
  task: WorkPlanTask,
  lastDate: string,
  states: ReadonlyMap<string, StepProgress>,
): readonly Visit[] {
  const steps = counted(task.stepKeys.flatMap((key) => states.get(key) ?? []))
  if (steps.length === 0) return []
  const roomSetId = task.roomSetId ?? task.roomId
  return [...groupedBy(task.segments, ({ startsAt }) => dateOf(startsAt))].map(([date, own]) => {
    const startsAt = own[0]?.startsAt ?? task.startsAt
    const goesOn = date < lastDate
    const isBegun = steps.some(({ state }) => state.kind === 'started' || isSettled(state))
    const pass: DayPass = {
      key: `${task.key} ${date}`,
      name: task.name ?? 'Work',
      roomSetId,
      roomName: job.rooms[roomSetId]?.name ?? roomSetId,
      half: startsAt.slice(11) < '12:00' ? 'morning' : 'afternoon',
      crewMemberIds: task.crewMemberIds.filter((id) => job.crew[id] !== undefined),
      endsAt: own.at(-1)?.endsAt ?? task.endsAt,
      goesOn,
      steps,
      isTicked: goesOn ? isBegun : steps.every(({ state }) => isSettled(state)),
    }
    return { date, startsAt, pass }
  })
}

interface PlannedMark {
  readonly stepKey: string
  readonly mark: 'started' | 'done'
  readonly at: SiteMoment
  readonly crewMemberIds: readonly CrewMemberId[]
}

/** The marks that say passes went as planned: done when planned, or now where that is earlier; what goes on another day is begun. */
export function marksAsPlanned(passes: readonly DayPass[], now: SiteMoment): readonly PlannedMark[] {
  const said = new Set<string>()
  return passes
    .filter(({ isTicked }) => !isTicked)
    .flatMap(({ steps, goesOn, endsAt, crewMemberIds }) => {
      const open = steps.filter(({ step, state }) => !isSettled(state) && !said.has(step.key))
      const marked = goesOn ? open.slice(0, 1) : open
      for (const { step } of marked) said.add(step.key)
      return marked.map(({ step }) => ({
        stepKey: step.key,
        mark: goesOn ? ('started' as const) : ('done' as const),
        at: endsAt < now ? endsAt : now,
        crewMemberIds,
      }))
    })
}
