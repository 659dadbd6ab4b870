import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import { isAlikeBut } from '../../core/project/alike.ts'
import type { Job } from '../../core/project/job.ts'
import type { WorkPlan } from '../../core/work-order/work-plan.ts'
import { jobStore } from './app.ts'
import type { JobState } from './job-state.ts'
import { answeringPlan } from './planner.ts'

export interface LastChange {
  /** What was done. */
  readonly name: string
  readonly before: Job
  /** The plan of the job before, as far as one was known. */
  readonly planBefore: WorkPlan | null
}

const store = createStore<{ readonly last: LastChange | null }>(() => ({ last: null }))

/** Remembers how the open job was before its last change; answers how to stop. */
export function watchChanges(): () => void {
  return jobStore.store.subscribe((now, was) => {
    if (now.job === was.job) return
    const { job: before } = was
    if (now.jobKey !== was.jobKey || now.job === null || before === null)
      return store.setState({ last: null })
    // What was given out and photos are beside the work; a tick moves the plan, but by nothing that was decided.
    if (isAlikeBut(now.job, before, ['photos', 'issued', 'dealings', 'receipts'])) return
    const isTick = now.job.marks !== before.marks
    store.setState({
      last: isTick ? null : { name: nameOf(now, was), before, planBefore: answeringPlan(before) },
    })
  })
}

function nameOf(now: JobState, was: JobState): string {
  if (now.future.length > was.future.length) return `Undo: ${was.past.at(-1)?.name ?? ''}`
  return now.past === was.past ? 'Changed elsewhere' : (now.past.at(-1)?.name ?? '')
}

export function dismissChange(): void {
  store.setState({ last: null })
}

export function useLastChange(): LastChange | null {
  return useStore(store, ({ last }) => last)
}
