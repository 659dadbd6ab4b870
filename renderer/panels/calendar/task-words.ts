import type { Job } from '../../../core/project/job.ts'
import type { Specification, Step } from '../../../core/specification/types.ts'
import { stepTitle } from '../../../core/work-order/step-lines.ts'
import { surfaceClassWords } from '../../../core/work-order/trade-words.ts'
import type { WorkPlan, WorkPlanTask } from '../../../core/work-order/work-plan.ts'

/** Words for the tasks of a plan, by the id the scheduler knows them by. */
export interface TaskWords {
  readonly task: (id: string) => WorkPlanTask | undefined
  readonly steps: (id: string) => readonly Step[]
  /** `Dining room: Sand to dull the gloss; Dust off (trim)`. */
  readonly title: (id: string) => string
  /** Without the room. */
  readonly work: (id: string) => string
  readonly room: (id: string) => string
}

export function taskWords(job: Job, specification: Specification, plan: WorkPlan | null): TaskWords {
  const tasks = new Map((plan?.tasks ?? []).map((task) => [task.key, task]))
  const byKey = new Map(specification.steps.map((step) => [step.key, step]))
  const steps = (id: string) => (tasks.get(id)?.stepKeys ?? []).flatMap((key) => byKey.get(key) ?? [])
  const work = (id: string) => workOf(steps(id)) || id
  const room = (id: string) => {
    const task = tasks.get(id)
    return task === undefined ? '' : (job.rooms[task.roomId]?.name ?? task.roomId)
  }
  return {
    task: (id) => tasks.get(id),
    steps,
    work,
    room,
    title: (id) => (room(id) === '' ? work(id) : `${room(id)}: ${work(id)}`),
  }
}

function workOf(steps: readonly Step[]): string {
  const titles = [...new Set(steps.map(stepTitle))]
  const classes = new Set(steps.map((step) => step.surfaceClass))
  const [only] = classes
  const place = classes.size === 1 && only ? ` (${surfaceClassWords[only].toLowerCase()})` : ''
  return titles.length === 0 ? '' : `${titles.join('; ')}${place}`
}
