import { useEffect, useState } from 'react'
import type { JobSummary } from '../../../core/contract/requests.ts'
import type { Job } from '../../../core/project/job.ts'
import type { JobAtWork } from '../../../core/schedule/jobs/book-people.ts'
import { ask } from '../../bridge/client.ts'
import { jobStore, viewStore } from '../../state/app.ts'

export interface BookWork {
  readonly jobs: readonly JobSummary[]
  /** Those with an accepted plan, in the order in which they begin. */
  readonly atWork: readonly JobAtWork[]
  /** The shop sheet, for its people and hours. */
  readonly shop: Job
  /** Local date of the machine. */
  readonly today: string
}

/** What the book says of all its jobs, read when the page is opened and whenever the window is turned to; null until it is there. */
export function useBookWork(): BookWork | null {
  const [work, setWork] = useState<BookWork | null>(null)
  useEffect(() => {
    const look = () => void readBookWork().then((read) => read !== null && setWork(read))
    look()
    window.addEventListener('focus', look)
    return () => window.removeEventListener('focus', look)
  }, [])
  return work
}

async function readBookWork(): Promise<BookWork | null> {
  await jobStore.storeNow()
  const shop = await ask('openShop', {})
  const [jobs, atWork, facts] = [
    await ask('listJobs', {}),
    await ask('workOfBook', {}),
    await ask('hostFacts', {}),
  ]
  const refused = [jobs, atWork, shop].find(({ ok }) => !ok)
  if (refused !== undefined && !refused.ok) jobStore.refuse(refused.problem)
  if (!jobs.ok || !atWork.ok || !shop.ok) return null
  const now = facts.ok ? facts.value.now : (viewStore.getState().host?.now ?? '')
  return { jobs: jobs.value, atWork: atWork.value, shop: shop.value.job, today: now.slice(0, 10) }
}
