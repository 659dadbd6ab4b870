import { type Job, records } from '../../../core/project/job.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import { dateOfDay, dayOfDate } from '../../../core/time/local-date.ts'
import { compareText } from '../../../core/words/text.ts'
import type { WorkPlan, WorkPlanTask } from '../../../core/work-order/work-plan.ts'

/** A plan of which is known which rooms are out of use when, and perhaps what of it is done. */
export type ShownPlan = Omit<WorkPlan, 'tasks'> & {
  readonly tasks: readonly (WorkPlanTask & { readonly state?: string })[]
  readonly roomsOutOfUse: readonly { readonly roomId: string; readonly to: string }[]
}

/** What is otherwise in the second of two plans, in sentences of passes and rooms. */
export interface Moved {
  /** `The Bath is back on Fri Jun 4 instead of Wed Jun 2`. */
  readonly rooms: readonly string[]
  /** `Walls, first coat in the Dining room: Tue Jun 1 to Thu Jun 3`, by the day it begins in the second plan. */
  readonly passes: readonly string[]
}

/** Passes that begin on another day or are done by others, and rooms that come back on another day. */
export function movedBetween(job: Job, before: ShownPlan, after: ShownPlan): Moved {
  return { rooms: movedRooms(job, before, after), passes: movedPasses(job, before, after) }
}

function movedRooms(job: Job, before: ShownPlan, after: ShownPlan): readonly string[] {
  const { unitSystem } = job.header
  const [was, is] = [backDays(before), backDays(after)]
  return records(job.rooms).flatMap(({ id, name }) => {
    const [from, to] = [was.get(id), is.get(id)]
    if (from === undefined || to === undefined || from === to) return []
    const [old, now] = [from, to].map((day) => dateWords(dateOfDay(day), unitSystem))
    return [`The ${name} is back on ${now} instead of ${old}`]
  })
}

/** By room, the day after its last day out of use. */
function backDays({ roomsOutOfUse }: ShownPlan): ReadonlyMap<string, number> {
  const days = new Map<string, number>()
  for (const { roomId, to } of roomsOutOfUse)
    days.set(roomId, Math.max(days.get(roomId) ?? 0, dayOfDate(to.slice(0, 10)) + 1))
  return days
}

function movedPasses(job: Job, before: ShownPlan, after: ShownPlan): readonly string[] {
  const { unitSystem } = job.header
  const was = firstVisits(before)
  return [...firstVisits(after)]
    .toSorted(([, one], [, other]) => compareText(one.startsAt, other.startsAt))
    .flatMap(([key, task]) => {
      const old = was.get(key)
      if (old === undefined) return []
      const [from, to] = [old.startsAt.slice(0, 10), task.startsAt.slice(0, 10)]
      const isByOthers = peopleOf(old) !== peopleOf(task)
      if (from === to && !isByOthers) return []
      const days = from === to ? '' : `${dateWords(from, unitSystem)} to ${dateWords(to, unitSystem)}`
      const people = isByOthers ? `${namesOf(job, task)} instead of ${namesOf(job, old)}` : ''
      const what = [days, people].filter((words) => words !== '').join(', ')
      return [
        `${task.name ?? key} in the ${job.rooms[task.roomSetId ?? task.roomId]?.name ?? 'room'}: ${what}`,
      ]
    })
}

/** The first visit of each pass that is not done; plans of before passes have none. */
function firstVisits({ tasks }: ShownPlan): ReadonlyMap<string, WorkPlanTask> {
  const first = new Map<string, WorkPlanTask>()
  for (const task of tasks) {
    const key = task.state === 'done' ? undefined : task.passKey
    const known = key === undefined ? undefined : first.get(key)
    if (key !== undefined && (known === undefined || task.startsAt < known.startsAt)) first.set(key, task)
  }
  return first
}

function peopleOf({ crewMemberIds }: WorkPlanTask): string {
  return crewMemberIds.toSorted().join()
}

function namesOf(job: Job, { crewMemberIds }: WorkPlanTask): string {
  return crewMemberIds.map((id) => job.crew[id]?.name ?? id).join(' and ') || 'nobody'
}
