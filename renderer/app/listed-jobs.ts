import { useEffect } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { JobSummary } from '../../core/contract/requests.ts'
import { ask } from '../bridge/client.ts'
import { jobStore, useJobState } from '../state/app.ts'

/** The jobs of the book as they were read last; null before. One list, for it can stand on the table and in a dialog at once. */
const listedStore = createStore<{ readonly jobs: readonly JobSummary[] | null }>(() => ({ jobs: null }))

/** Reads the list again. */
export async function listJobsAgain(): Promise<void> {
  const answer = await ask('listJobs', {})
  if (answer.ok) listedStore.setState({ jobs: answer.value })
  else jobStore.refuse(answer.problem)
}

/** The jobs of the book; read again when another one is on the table. */
export function useListedJobs(): readonly JobSummary[] | null {
  const openKey = useJobState((state) => state.jobKey)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the open job is why the list is read again
  useEffect(() => void listJobsAgain(), [openKey])
  return useStore(listedStore, ({ jobs }) => jobs)
}
