import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import { jobStore } from './app.ts'
import { putDraft, removeDraft } from './drafts.ts'

/** The list of rooms that is being written, one for each job, kept until rooms are made of it. */
interface TapeListState {
  readonly texts: Readonly<Record<string, string>>
  readonly isOpen: boolean
}

const tapeListStore = createStore<TapeListState>(() => ({ texts: {}, isOpen: false }))

export function useTapeList<Part>(pick: (state: TapeListState) => Part): Part {
  return useStore(tapeListStore, pick)
}

export function showTapeList(isOpen: boolean): void {
  tapeListStore.setState({ isOpen })
}

/** The list of the open job. */
export function tapeText({ texts }: TapeListState): string {
  const jobId = jobStore.store.getState().job?.header.id
  return jobId === undefined ? '' : (texts[jobId] ?? '')
}

/** What is written and not made yet counts as not stored. */
export function writeTapeText(text: string): void {
  const jobId = jobStore.store.getState().job?.header.id
  if (jobId === undefined) return
  tapeListStore.setState(({ texts }) => ({ texts: { ...texts, [jobId]: text } }))
  if (text.trim() === '') removeDraft('tape-list')
  else putDraft('tape-list', { label: 'List of rooms', text, take: () => false })
}
