import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { HostFacts } from '../../core/contract/requests.ts'
import type { Job } from '../../core/project/job.ts'
import type { RoomId, StoreyId } from '../../core/project/sketch-records.ts'
import { ask } from '../bridge/client.ts'
import { pendingDrafts } from './drafts.ts'
import type { JobState } from './job-state.ts'
import { createJobStore, type JobStore } from './job-store.ts'

/** The stations of the window, left to right as the job goes. */
export const stations = ['house', 'walk', 'finish', 'figures', 'calendar', 'site', 'paper'] as const
export type Station = (typeof stations)[number]

interface ViewState {
  readonly station: Station
  readonly storeyId: StoreyId | null
  /** Ids of selected sketch records (rooms, openings, corners' walls as `roomId/wallId`). */
  readonly selectedIds: readonly string[]
  /** Key of the selected surface (core/project/surface-ref.ts), or null. */
  readonly surfaceKey: string | null
  readonly roomId: RoomId | null
  readonly host: HostFacts | null
  /** The job sheet over the station; `first` while it is the first step of a new job. */
  readonly jobSheet: 'closed' | 'open' | 'first'
  readonly isHelpOpen: boolean
  /** The paper given out that Paper opens on; null for none. */
  readonly paperId: string | null
}

export const viewStore = createStore<ViewState>(() => ({
  station: 'house',
  storeyId: null,
  selectedIds: [],
  surfaceKey: null,
  roomId: null,
  host: null,
  jobSheet: 'closed',
  isHelpOpen: false,
  paperId: null,
}))

export const jobStore: JobStore = createJobStore(ask, { hasDrafts: () => pendingDrafts().length > 0 })

export function useView<Part>(pick: (state: ViewState) => Part): Part {
  return useStore(viewStore, pick)
}

export function useJobState<Part>(pick: (state: JobState) => Part): Part {
  return useStore(jobStore.store, pick)
}

/** The open job. Stations are only shown while one is open. */
export function useJob(): Job {
  const job = useJobState((state) => state.job)
  if (job === null) throw new Error('useJob outside an open job')
  return job
}
