import type { Job } from '../../../core/project/job.ts'
import type { Pin } from '../../../core/project/progress-records.ts'
import { finishOf, type Plan } from '../../../core/schedule/model.ts'
import { spanWords } from '../../../core/time/date-words.ts'
import type { LocalTime } from '../../../core/time/local-time.ts'
import { instantOf } from '../../../core/time/site-moment.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import type { PlanLook } from './LaneDrawing.tsx'
import { type Lane, lanesOf } from './lanes.ts'
import { type Neighbour, neighboursOf } from './neighbours.ts'
import type { TaskWords } from './task-words.ts'
import { type TimeAxis, timeAxis } from './time-axis.ts'

/** How wide an hour is drawn, in pixels, the whole job in the width there is, or the house on a day. */
export type Scale = number | 'whole' | 'house'

/** Lanes and axis of a plan, an hour so many pixels wide. */
export function drawingOf(input: {
  readonly job: Job
  readonly found: FoundPlan
  readonly local: LocalTime
  readonly pixelsPerHour: number
}): { readonly axis: TimeAxis; readonly lanes: readonly Lane[] } {
  const { found, local, pixelsPerHour } = input
  const { problem, plan } = found
  const ends = new Map<string, number>(plan.tasks.map((planned) => [planned.task, planned.end]))
  const dry = problem.tasks.map((task) => (ends.get(task.id) ?? 0) + (task.effects.touchDry ?? 0))
  const what = {
    problem,
    local,
    from: Math.min(...plan.tasks.map((task) => task.start)),
    to: Math.max(finishOf(plan), ...dry),
  }
  return { axis: timeAxis({ ...what, pixelsPerHour }), lanes: lanesOf(input.job, found, local) }
}

/** How the tasks are marked, and the words while one is dragged. */
export function planLook(input: {
  readonly job: Job
  readonly found: FoundPlan
  readonly comparedTo: FoundPlan | null
  readonly words: TaskWords
  readonly pins: readonly Pin[]
  readonly pickedId: string | null
  readonly momentOf: (instant: number) => string
}): PlanLook {
  const { job, found, comparedTo, words, pickedId, momentOf } = input
  const { unitSystem } = job.header
  const { before, after } = pickedId === null ? { before: [], after: [] } : neighboursOf(found, pickedId)
  const byId = new Map(found.plan.tasks.map((planned) => [planned.task, planned]))
  return {
    pickedId,
    before: tightness(before),
    after: tightness(after),
    pinned: new Set(input.pins.map((pin) => pin.passKey)),
    moved: new Set(comparedTo === null ? [] : movedTasks(comparedTo.plan, found.plan)),
    lineOf: (id) => {
      const planned = byId.get(id)
      if (planned === undefined) return words.title(id)
      const span = spanWords(momentOf(planned.start), momentOf(planned.end), unitSystem)
      const people = planned.people.map((person) => job.crew[person]?.name ?? person)
      return [words.title(id), span, ...people].join(', ')
    },
    shortOf: words.short,
    roomOf: (roomId) => job.rooms[roomId]?.name ?? roomId,
  }
}

function tightness(neighbours: readonly Neighbour[]): ReadonlyMap<string, boolean> {
  return new Map(neighbours.map(({ id, spare }) => [id, spare <= 0]))
}

/** Where pinned tasks would begin, as far as the plan does not have them there, give or take its grid. */
export function triedStarts(
  { problem, plan }: FoundPlan,
  pins: readonly Pin[],
  timeZone: string,
): ReadonlyMap<string, number> {
  const starts = new Map<string, number>(plan.tasks.map((planned) => [planned.task, planned.start]))
  const facts = problem.tasks.filter(({ state }) => state.kind === 'done' || state.kind === 'started')
  for (const fact of facts) starts.delete(fact.id)
  return new Map(
    pins.flatMap((pin) => {
      const [start, planned] = [instantOf(pin.startsAt, timeZone), starts.get(pin.passKey)]
      const isThere = planned !== undefined && Math.abs(planned - start) < problem.gridMinutes
      return planned === undefined || isThere ? [] : [[pin.passKey, start] as const]
    }),
  )
}

/** Tasks that begin at another time than they did. */
function movedTasks(before: Plan, after: Plan): readonly string[] {
  const was = new Map(before.tasks.map((task) => [task.task, task.start]))
  return after.tasks.filter((task) => was.get(task.task) !== task.start).map((task) => task.task)
}
