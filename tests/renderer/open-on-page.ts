import { vi } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { succeed } from '../../core/project/problem.ts'
import { jobStore } from '../../renderer/state/app.ts'

/** Opens a job in the page's own store, before a host that takes every edit. */
export function openOnPage(job: Job): void {
  let revision = 1
  vi.stubGlobal('window', {
    coatwright: { ask: async () => succeed({ revision: ++revision }) },
    setTimeout,
    clearTimeout,
  })
  jobStore.show({ jobKey: '1', job, revision })
}

/** The job as the page has it now. */
export function pageJob(): Job {
  const { job } = jobStore.store.getState()
  if (job === null) throw new Error('no job is open')
  return job
}
