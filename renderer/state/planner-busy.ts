import { useEffect } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Job } from '../../core/project/job.ts'
import { sameValue } from '../../core/project/same-value.ts'
import { busyOf, type WorkElsewhere } from '../../core/schedule/job/elsewhere.ts'
import type { Busy } from '../../core/schedule/job/problem-of-job.ts'
import { ask } from '../bridge/client.ts'
import { jobStore, useJobState } from './app.ts'

interface ElsewhereState {
  readonly jobKey: string | null
  readonly work: readonly WorkElsewhere[]
}

const nowhere: ElsewhereState = { jobKey: null, work: [] }
const store = createStore<ElsewhereState>(() => nowhere)

/** Asks the book when people are on its other jobs, and answers what is known then. An answer that says the same as before changes nothing. */
export async function askElsewhere(): Promise<readonly WorkElsewhere[]> {
  const { jobKey } = jobStore.store.getState()
  if (jobKey === null) return nowhere.work
  const answer = await ask('workElsewhere', { jobKey })
  const known = store.getState()
  if (answer.ok && jobStore.store.getState().jobKey === jobKey) {
    if (known.jobKey !== jobKey || !sameValue(known.work, answer.value))
      store.setState({ jobKey, work: answer.value })
    return answer.value
  }
  return known.jobKey === jobKey ? known.work : nowhere.work
}

/** What the book says of the open job, asked when a station shows it and whenever the window is turned to. */
export function useElsewhere(): readonly WorkElsewhere[] {
  const jobKey = useJobState((state) => state.jobKey)
  useEffect(() => {
    const look = () => void askElsewhere()
    if (jobKey !== null) look()
    window.addEventListener('focus', look)
    return () => window.removeEventListener('focus', look)
  }, [jobKey])
  return useStore(store, (state) => (state.jobKey === jobKey ? state.work : nowhere.work))
}

/** When people of the job's crew are on other jobs, as far as the book has said. */
export function busyNow({ crew }: Job): Busy {
  const { jobKey, work } = store.getState()
  return jobKey === jobStore.store.getState().jobKey ? busyOf(crew, work) : {}
}
