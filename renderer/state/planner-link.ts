import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { JobNews, PlannerAsk, PlannerTell } from './planner-messages.ts'

/** The one worker that plans, started when it is first asked for something. */
let worker: Worker | null = null
/** The job the worker was told last. */
let told: Job | null = null

interface Listener {
  readonly hear: (tell: PlannerTell) => void
  /** The worker did not start. */
  readonly fail: (sentence: string) => void
}

const listeners: Listener[] = []

export function listen(listener: Listener): void {
  listeners.push(listener)
}

export function send(message: PlannerAsk): void {
  worker ??= startWorker()
  worker.postMessage(message)
}

/** What to say of a job so that the worker knows it. */
export function newsOfJob(job: Job): JobNews {
  const news = told === null ? { job } : { edit: diffJobs(told, job) }
  told = job
  return news
}

export function isToldLast(job: Job): boolean {
  return job === told
}

function startWorker(): Worker {
  const started = new Worker(new URL('./planner-worker.ts', import.meta.url), { type: 'module' })
  started.onmessage = (event: MessageEvent<PlannerTell>) => {
    for (const { hear } of listeners) hear(event.data)
  }
  started.onerror = (event) => {
    for (const { fail } of listeners) fail(`The planner did not start: ${event.message}`)
  }
  return started
}
