import { type Job, records } from './job.ts'
import type { Storey } from './sketch-records.ts'

/** The floors of the job from the lowest to the highest. */
export function storeysUpwards(job: Pick<Job, 'storeys'>): readonly Storey[] {
  return records(job.storeys).toSorted((one, other) => one.level - other.level)
}
