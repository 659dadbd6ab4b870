import type { Job } from '../../core/project/job.ts'
import { readJobFile, writeJobFile } from '../../core/project/job-file.ts'
import type { Outcome } from '../../core/project/problem.ts'
import { type JobBodies, type PreparedJob, prepareJob, readBodies } from '../storage/job-bodies.ts'

/** The work on whole jobs that takes long: pure steps, done in another thread where there is one. */
export interface JobFiles {
  readonly read: (text: string) => Promise<Outcome<PreparedJob>>
  readonly write: (job: Job) => Promise<string>
  readonly readBodies: (bodies: JobBodies) => Promise<Outcome<Job>>
}

export const jobFilesHere: JobFiles = {
  read: async (text) => {
    const job = readJobFile(text)
    return job.ok ? prepareJob(job.value) : job
  },
  write: async (job) => writeJobFile(job),
  readBodies: async (bodies) => readBodies(bodies),
}

/** What is asked of the thread and what it answers; `id` ties the two. */
export interface ThreadRequest {
  readonly id: number
  readonly name: keyof JobFiles
  readonly argument: never
}
export interface ThreadAnswer {
  readonly id: number
  readonly value?: unknown
  /** The step threw; a fault of the program, told as such. */
  readonly failure?: string
}
