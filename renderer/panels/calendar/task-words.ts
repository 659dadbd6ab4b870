import type { Job } from '../../../core/project/job.ts'
import { stepTitle, surfaceClassWords } from '../../../core/specification/trade-words.ts'
import type { Specification, Step } from '../../../core/specification/types.ts'
import type { WorkPlan, WorkPlanTask } from '../../../core/work-order/work-plan.ts'
import { shortWords } from './short-words.ts'

/** Words for the tasks of a plan, by the id the scheduler knows them by. */
export interface TaskWords {
  readonly task: (id: string) => WorkPlanTask | undefined
  readonly steps: (id: string) => readonly Step[]
  /** `Dining room: Sand to dull the gloss; Dust off (trim)`; a room by its name. */
  readonly title: (id: string) => string
  /** Without the room. */
  readonly work: (id: string) => string
  readonly room: (id: string) => string
  /** For a bar, the longest first. */
  readonly short: (id: string) => readonly string[]
}

export function taskWords(job: Job, specification: Specification, plan: WorkPlan | null): TaskWords {
  const tasks = new Map((plan?.tasks ?? []).map((task) => [task.key, task]))
  const byKey = new Map(specification.steps.map((step) => [step.key, step]))
  // A task is called by its first step, which names it too where there is no plan.
  const steps = (id: string) => (tasks.get(id)?.stepKeys ?? [id]).flatMap((key) => byKey.get(key) ?? [])
  const room = (id: string) => {
    const roomId = tasks.get(id)?.roomId ?? byKey.get(id)?.roomId ?? id
    return job.rooms[roomId]?.name ?? ''
  }
  const work = remembered((id) => tasks.get(id)?.name ?? workOf(steps(id)))
  const title = remembered((id) => [room(id), work(id)].filter((part) => part !== '').join(': ') || id)
  return {
    task: (id) => tasks.get(id),
    steps,
    work,
    room,
    title,
    short: remembered((id) => shortWords(steps(id))),
  }
}

function remembered<Value>(compute: (id: string) => Value): (id: string) => Value {
  const known = new Map<string, Value>()
  return (id) => {
    const value = known.get(id) ?? compute(id)
    known.set(id, value)
    return value
  }
}

function workOf(steps: readonly Step[]): string {
  const titles = [...new Set(steps.map(stepTitle))]
  const classes = new Set(steps.map((step) => step.surfaceClass))
  const [only] = classes
  const place = classes.size === 1 && only ? ` (${surfaceClassWords[only].toLowerCase()})` : ''
  return titles.length === 0 ? '' : `${titles.join('; ')}${place}`
}
