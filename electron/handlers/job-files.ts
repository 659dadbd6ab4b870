import { type BookPicture, lookAtKept } from '../../core/pictures/picture-bounds.ts'
import type { Job } from '../../core/project/job.ts'
import { readWholeJobFile, writeJobFile } from '../../core/project/job-file.ts'
import type { TravelingPicture } from '../../core/project/job-file-schema.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { type JobBodies, type PreparedJob, prepareJob, readBodies } from '../storage/job-bodies.ts'
import { pictureHash } from '../storage/picture-rows.ts'

/** A job file that was read, ready to be put into a book. */
interface PreparedFile {
  readonly job: PreparedJob
  readonly pictures: readonly BookPicture[]
}

interface FileToWrite {
  readonly job: Job
  readonly pictures: readonly BookPicture[]
}

/** The work on whole jobs that takes long: pure steps, done in another thread where there is one. */
export interface JobFiles {
  readonly read: (text: string) => Promise<Outcome<PreparedFile>>
  readonly write: (file: FileToWrite) => Promise<string>
  readonly readBodies: (bodies: JobBodies) => Promise<Outcome<Job>>
}

export const jobFilesHere: JobFiles = {
  read: async (text) => {
    const file = readWholeJobFile(text)
    if (!file.ok) return file
    const pictures = readPictures(file.value.pictures)
    if (!pictures.ok) return pictures
    const job = prepareJob(file.value.job)
    return job.ok ? succeed({ job: job.value, pictures: pictures.value }) : job
  },
  write: async ({ job, pictures }) =>
    writeJobFile(
      job,
      pictures.map(({ hash, bytes }) => ({ hash, base64: Buffer.from(bytes).toString('base64') })),
    ),
  readBodies: async (bodies) => readBodies(bodies),
}

function readPictures(traveling: readonly TravelingPicture[]): Outcome<readonly BookPicture[]> {
  const pictures: BookPicture[] = []
  for (const [index, { hash, base64 }] of traveling.entries()) {
    const bytes = Buffer.from(base64, 'base64')
    const place = `pictures[${index}]`
    if (pictureHash(bytes) !== hash) {
      return fail('notValid', `At ${place}: the picture was damaged on its way.`, [], place)
    }
    const look = lookAtKept(bytes)
    if (!look.ok) return fail('notValid', `At ${place}: ${look.problem.sentence}`, [], place)
    pictures.push({ hash, mediaType: look.value.mediaType, bytes })
  }
  return succeed(pictures)
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
