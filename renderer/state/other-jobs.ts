import type { OpenedJob } from '../../core/contract/requests.ts'
import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import type { Outcome } from '../../core/project/problem.ts'
import { ask } from '../bridge/client.ts'
import { jobStore } from './app.ts'

/** The shop sheet as the book has it, beside the open job; null, with the reason said, where it cannot be read. */
export async function readShop(): Promise<OpenedJob | null> {
  const answer = await ask('openShop', {})
  if (answer.ok) return answer.value
  jobStore.refuse(answer.problem)
  return null
}

/** Stores a changed shop sheet; what stands against it is said. */
export async function storeInShop(shop: OpenedJob, next: Outcome<Job>): Promise<void> {
  if (next.ok) await storeChanged(shop, next.value)
  else jobStore.refuse(next.problem)
}

/** Stores what a job of the book that is not the open one becomes; a refusal is shown. */
export async function storeChanged({ jobKey, revision, job }: OpenedJob, next: Job): Promise<void> {
  const stored = await ask('storeEdit', { jobKey, revision, diff: diffJobs(job, next) })
  if (!stored.ok) jobStore.refuse(stored.problem)
}
