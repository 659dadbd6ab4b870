import { type OpenedJob, shopKey } from '../../core/contract/requests.ts'
import { mostBytesInFile } from '../../core/pictures/picture-bounds.ts'
import { type Job, type JobHeader, records } from '../../core/project/job.ts'
import { writeJobFile } from '../../core/project/job-file.ts'
import { fail, type Outcome, problem, succeed } from '../../core/project/problem.ts'
import type { Storey } from '../../core/project/sketch-records.ts'
import { ask } from '../bridge/client.ts'
import { changeHeader } from '../panels/parts/edits.ts'
import { jobStore, viewStore } from '../state/app.ts'
import { storeChanged } from '../state/other-jobs.ts'
import { mayLeave, storeEverything } from './leaving.ts'

const lastJobKey = 'coatwright-last-job'

/** The job that was on the table when the page was last open. */
function rememberedJob(): string | null {
  return window.localStorage.getItem(lastJobKey)
}

/** Puts an opened job on the table, or says why it could not be opened. */
export function showOpened(opened: Outcome<OpenedJob>): void {
  if (!opened.ok) {
    jobStore.refuse(opened.problem)
    return
  }
  jobStore.show(opened.value)
  if (opened.value.jobKey !== shopKey) window.localStorage.setItem(lastJobKey, opened.value.jobKey)
  const ground = records(opened.value.job.storeys).reduce<Storey | null>(
    (best, storey) => (best === null || Math.abs(storey.level) < Math.abs(best.level) ? storey : best),
    null,
  )
  viewStore.setState({ storeyId: ground?.id ?? null, selectedIds: [], surfaceKey: null, roomId: null })
}

export async function openJob(jobKey: string): Promise<void> {
  if (!(await mayLeave())) return
  showOpened(await ask('openJob', { jobKey }))
}

/** Puts the shop sheet on the table, which is stored like a job. */
export async function openShop(): Promise<void> {
  if (!(await mayLeave())) return
  showOpened(await ask('openShop', {}))
}

/** Opens what was open last, else the job edited last. In an empty book nothing is open, and the page shows how to begin. */
export async function openLast(): Promise<void> {
  const jobs = await ask('listJobs', {})
  if (!jobs.ok) return jobStore.refuse(jobs.problem)
  const last = rememberedJob()
  const latest = [...jobs.value].sort((a, b) => (a.editedAt < b.editedAt ? 1 : -1))
  const chosen = latest.find((job) => job.jobKey === last) ?? latest[0]
  if (chosen === undefined) return jobStore.close()
  await openJob(chosen.jobKey)
}

export async function duplicateJob(jobKey: string): Promise<void> {
  if (!(await mayLeave())) return
  showOpened(await ask('duplicateJob', { jobKey }))
}

/** Changes facts of a job from the list of jobs; on the open one it can be undone. */
export async function changeListed(
  jobKey: string,
  action: string,
  change: Partial<JobHeader>,
): Promise<void> {
  if (jobKey === jobStore.store.getState().jobKey) {
    changeHeader(action, change)
    await jobStore.storeNow()
    return
  }
  const opened = await ask('openJob', { jobKey })
  if (!opened.ok) return jobStore.refuse(opened.problem)
  const { job } = opened.value
  await storeChanged(opened.value, { ...job, header: { ...job.header, ...change } })
}

export async function openDemo(): Promise<void> {
  if (!(await mayLeave())) return
  showOpened(await ask('openDemo', {}))
}

export async function createJob(title: string, unitSystem: 'imperial' | 'metric'): Promise<void> {
  if (!(await mayLeave())) return
  const made = await ask('createJob', { title, unitSystem })
  showOpened(made)
  if (made.ok) viewStore.setState({ station: 'house', jobSheet: 'first' })
}

export async function importJob(file: File): Promise<void> {
  if (!(await mayLeave())) return
  showOpened(await ask('importJob', { text: await file.text() }))
}

/** Writes the open job as a job file where the user wants it. */
export async function exportJob(): Promise<void> {
  const { jobKey } = jobStore.store.getState()
  if (jobKey === null) return
  await jobStore.storeNow()
  // What the book does not have yet belongs to the job all the same.
  if (!jobStore.isEqual()) return saveCopy()
  const file = await ask('exportJob', { jobKey })
  if (!file.ok) return jobStore.refuse(file.problem)
  await saveFile(file.value.fileName, file.value.text)
  const { picturesLeftOut } = file.value
  if (picturesLeftOut === 0) return
  const words = `${picturesLeftOut} of the pictures had no room in the file (it takes ${mostBytesInFile / 1e6} MB of them). The small ones went first; the large ones stay in this book.`
  jobStore.refuse(problem('notAllowed', words))
}

/** The job as it stands on the page, as a job file; needs no book. */
export async function saveCopy(): Promise<void> {
  const { job } = jobStore.store.getState()
  if (job === null) return
  const text = fileTextOf(job)
  if (text.ok) await saveFile('job-not-stored.json', text.value)
  else jobStore.refuse(text.problem)
}

/** A record that should not be there at all may keep a job from being written. */
function fileTextOf(job: Job): Outcome<string> {
  try {
    return succeed(writeJobFile(job))
  } catch {
    return fail('notValid', 'Something in this job is not right, so no copy of it can be written.')
  }
}

async function saveFile(fileName: string, text: string): Promise<void> {
  if (viewStore.getState().host?.host === 'desktop') {
    const saved = await ask('saveDocument', { fileName, mediaType: 'application/json', text })
    if (!saved.ok) jobStore.refuse(saved.problem)
    return
  }
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }))
  link.download = fileName
  link.click()
  URL.revokeObjectURL(link.href)
}

/** Puts a job that was taken out elsewhere into the book again, as it stands on the page. */
export async function putBack(): Promise<void> {
  const { job } = jobStore.store.getState()
  if (job === null) return
  const text = fileTextOf(job)
  showOpened(text.ok ? await ask('importJob', { text: text.value }) : text)
}

/** Takes a job out of the book; the open one gives way to the book's page. */
export async function deleteJob(jobKey: string): Promise<void> {
  await storeEverything()
  const answer = await ask('deleteJob', { jobKey })
  if (!answer.ok) return jobStore.refuse(answer.problem)
  if (jobStore.store.getState().jobKey === jobKey) jobStore.close()
}
