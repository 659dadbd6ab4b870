import { randomUUID } from 'node:crypto'
import type { JobId } from '../../core/project/job.ts'
import { jobIdSchema } from '../../core/project/job.ts'
import { machineMoment } from '../../core/time/site-moment.ts'

/** The machine's clock, zone and randomness, so that everything behind the handlers can be given others in tests. */
export interface Clock {
  /** The present instant, ISO, UTC. */
  readonly instant: () => string
  /** Local date and time of this machine, `2027-03-31T08:30`. */
  readonly local: () => string
  readonly timeZone: () => string
}

export const machineClock: Clock = {
  instant: () => new Date().toISOString(),
  local: () => machineMoment(new Date()),
  timeZone: () => Intl.DateTimeFormat().resolvedOptions().timeZone,
}

/** For the job itself, wherever it goes. */
export function newJobId(): JobId {
  return jobIdSchema.parse(`job-${randomUUID()}`)
}

/** For a job in one book. */
export function newJobKey(): string {
  return `job-${randomUUID()}`
}
