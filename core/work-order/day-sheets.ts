import { type Job, records } from '../project/job.ts'
import type { CrewMember } from '../project/shop-records.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import { gravestFirst } from '../specification/cautions.ts'
import { stepTitle } from '../specification/trade-words.ts'
import type { Caution, Specification, Step } from '../specification/types.ts'
import type { DayEntry, DaySheet } from './document-types.ts'
import { materialWords } from './step-lines.ts'
import { placeInSentence, stepPlace } from './surface-words.ts'
import type { WorkPlan, WorkPlanTask } from './work-plan.ts'

/** One sheet for each day each person works, by date and then by the crew list. */
export function daySheets(
  job: Job,
  takeoff: Takeoff,
  specification: Specification,
  plan: WorkPlan,
): readonly DaySheet[] {
  const steps = new Map(specification.steps.map((step) => [step.key, step]))
  const sheets = records(job.crew).flatMap((person) =>
    workDays(plan, person).map((date) => daySheet(job, takeoff, steps, plan, person, date)),
  )
  return sheets.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
}

function workDays(plan: WorkPlan, person: CrewMember): readonly string[] {
  const days = plan.tasks
    .filter((task) => task.crewMemberIds.includes(person.id))
    .flatMap((task) => task.segments.map((segment) => segment.startsAt.slice(0, 10)))
  return [...new Set(days)]
}

function daySheet(
  job: Job,
  takeoff: Takeoff,
  steps: ReadonlyMap<string, Step>,
  plan: WorkPlan,
  person: CrewMember,
  date: string,
): DaySheet {
  const entries = plan.tasks
    .filter((task) => task.crewMemberIds.includes(person.id) && isWorkedOn(task, date))
    .flatMap((task) => dayEntries(job, takeoff, steps, task, person, date))
    .toSorted((a, b) => (a.startsAt < b.startsAt ? -1 : 1))
  return {
    date,
    crewMemberId: person.id,
    name: person.name,
    entries,
    cautions: cautionsOfDay(steps, plan, person, date),
    everyDay: everyDay(job, takeoff, steps, plan, date),
  }
}

/** Those that protect from lead and asbestos go with the work onto every sheet that lists it; the others stand on the room sheets. */
function cautionsOfDay(
  steps: ReadonlyMap<string, Step>,
  plan: WorkPlan,
  person: CrewMember,
  date: string,
): readonly Caution[] {
  const worked = plan.tasks
    .filter((task) => task.crewMemberIds.includes(person.id))
    .filter((task) => isWorkedOn(task, date))
    .flatMap((task) => task.stepKeys.flatMap((key) => steps.get(key) ?? []))
  return gravestFirst(worked.flatMap((step) => step.cautions)).filter(
    ({ id }) => id === 'lead' || id === 'asbestos',
  )
}

function isWorkedOn(task: WorkPlanTask, date: string): boolean {
  return task.segments.some((segment) => segment.startsAt.slice(0, 10) === date)
}

function dayEntries(
  job: Job,
  takeoff: Takeoff,
  steps: ReadonlyMap<string, Step>,
  task: WorkPlanTask,
  person: CrewMember,
  date: string,
): readonly DayEntry[] {
  const worked = task.stepKeys.flatMap((key) => steps.get(key) ?? [])
  const what = worked.map((step) => `${stepTitle(step)}: ${placeInSentence(stepPlace(job, takeoff, step))}`)
  const materials = worked.map((step) => materialWords(job, step)).filter((words) => words !== '')
  return task.segments.flatMap((segment, index) => {
    if (segment.startsAt.slice(0, 10) !== date) return []
    return [
      {
        startsAt: segment.startsAt,
        endsAt: segment.endsAt,
        roomName: job.rooms[task.roomId]?.name ?? task.roomId,
        what: index === 0 ? what : what.map((each) => `${each} (goes on)`),
        materials: [...new Set(materials)],
        with: task.crewMemberIds.filter((id) => id !== person.id).map((id) => job.crew[id]?.name ?? id),
      },
    ]
  })
}

/** Daily steps of the rooms anybody works in on that day. */
function everyDay(
  job: Job,
  takeoff: Takeoff,
  steps: ReadonlyMap<string, Step>,
  plan: WorkPlan,
  date: string,
): readonly string[] {
  const rooms = new Set(plan.tasks.filter((task) => isWorkedOn(task, date)).map((task) => task.roomId))
  return [...steps.values()]
    .filter((step) => step.daily && rooms.has(step.roomId))
    .map(
      (step) =>
        `${job.rooms[step.roomId]?.name ?? ''}: ${stepTitle(step)} (${placeInSentence(stepPlace(job, takeoff, step))})`,
    )
}
