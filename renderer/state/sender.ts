import type { StoreApi } from 'zustand/vanilla'
import type { Ask, OpenedJob } from '../../core/contract/requests.ts'
import { diffJobs, isEmptyDiff } from '../../core/project/diff.ts'
import { changesOf } from '../../core/project/rebase.ts'
import type { JobState } from './job-state.ts'
import { createSending, noteNews, openSending, remember, type UnsentEdit } from './sending.ts'
import { isGone, work } from './sending-work.ts'
import { reapply, takeBackRefused, takeNewer } from './settling.ts'
import type { Timer } from './timer.ts'

/**
 * Brings the page's job into the book: keeps what the book acknowledged last, and sends the difference from there to the page, one
 * request at a time. What fails is sent again by itself, what is refused waits for the user, and a newer state in the book is taken
 * over where the page has nothing of its own. `sending.ts` is what it knows, `sending-work.ts` what it does by itself, `settling.ts`
 * how the page comes to count from another state of the book.
 */
export function createSender(ask: Ask, timer: Timer, store: StoreApi<JobState>, hasDrafts: () => boolean) {
  const own = createSending({ ask, timer, store, hasDrafts })
  const ahead = () => {
    const { job } = store.getState()
    return job === null || own.held === null ? null : diffJobs(own.held.job, job)
  }
  return {
    open: (opened: OpenedJob | null) => openSending(own, opened),
    moved(edit: UnsentEdit): void {
      remember(own, edit)
      void work(own)
    },
    work: () => work(own),
    heard(revision: number): void {
      if (noteNews(own, revision)) void work(own)
    },
    isGone: () => isGone(own),
    reapply(): void {
      if (reapply(own)) void work(own)
    },
    takeNewer: () => takeNewer(own),
    takeBackRefused(): void {
      if (takeBackRefused(own)) void work(own)
    },
    settled: () => own.activity ?? Promise.resolve(),
    /** Nothing of the page is missing in the book, as far as is known. */
    isEqual(): boolean {
      const diff = ahead()
      return diff === null || (!own.isDoubtful && isEmptyDiff(diff))
    },
    /** What the page has and the book does not, record by record. */
    unsent() {
      const diff = ahead()
      return diff === null ? [] : changesOf(diff)
    },
  }
}
