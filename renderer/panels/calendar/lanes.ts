import type { Job } from '../../../core/project/job.ts'
import type { Plan, PlannedTask, ScheduleProblem, Task } from '../../../core/schedule/model.ts'

/** A stretch to draw in a lane: work, or what stays wet after it. */
export interface Bar {
  readonly kind: 'work' | 'drying'
  readonly task: Task
  readonly planned: PlannedTask
  /** Epoch minutes. */
  readonly from: number
  readonly to: number
  /** Which line of its lane, 0 at the top. */
  readonly line: number
  /** Which piece of its task, between breaks and nights; the first takes the focus. */
  readonly piece: number
}

export interface Lane {
  readonly id: string
  readonly kind: 'person' | 'room'
  readonly name: string
  readonly lines: number
  readonly bars: readonly Bar[]
}

/** Lanes by person, then by room in the order in which work there begins. */
export function lanesOf(job: Job, problem: ScheduleProblem, plan: Plan): readonly Lane[] {
  const tasks = new Map(problem.tasks.map((task) => [task.id, task]))
  const pairs = plan.tasks.flatMap((planned) => {
    const task = tasks.get(planned.task)
    return task === undefined || planned.segments.length === 0 ? [] : [{ task, planned }]
  })
  const people = problem.people.map((person): Lane => {
    const own = pairs.filter(({ planned }) => planned.people.includes(person.id))
    const bars = own.flatMap(({ task, planned }) => workBars(task, planned, 0))
    return { id: person.id, kind: 'person', name: job.crew[person.id]?.name ?? person.id, lines: 1, bars }
  })
  const rooms = problem.rooms
    .map((room) =>
      roomLane(
        job,
        room.id,
        pairs.filter(({ task }) => task.room === room.id),
      ),
    )
    .filter((lane) => lane.bars.length > 0)
    .sort((one, other) => startOf(one) - startOf(other))
  return [...people, ...rooms]
}

function startOf(lane: Lane): number {
  return Math.min(...lane.bars.map((bar) => bar.from))
}

function workBars(task: Task, planned: PlannedTask, line: number): readonly Bar[] {
  return planned.segments.map((segment, index) => ({
    kind: 'work',
    task,
    planned,
    from: segment.start,
    to: segment.end,
    line,
    piece: index,
  }))
}

/** Packs work and the drying after it into as few lines as keep things apart; drying may lie under later work of other surfaces. */
function roomLane(
  job: Job,
  roomId: string,
  pairs: readonly { readonly task: Task; readonly planned: PlannedTask }[],
): Lane {
  const ends: number[] = []
  const bars = pairs
    .toSorted((one, other) => one.planned.start - other.planned.start)
    .flatMap(({ task, planned }) => {
      const free = ends.findIndex((end) => end <= planned.start)
      const line = free < 0 ? ends.length : free
      const wetUntil = planned.end + (task.effects.wetFor ?? 0)
      ends[line] = wetUntil
      const work = workBars(task, planned, line)
      if (wetUntil <= planned.end) return work
      const drying: Bar = {
        kind: 'drying',
        task,
        planned,
        from: planned.end,
        to: wetUntil,
        line,
        piece: 0,
      }
      return [...work, drying]
    })
  return { id: roomId, kind: 'room', name: job.rooms[roomId]?.name ?? roomId, lines: ends.length, bars }
}
