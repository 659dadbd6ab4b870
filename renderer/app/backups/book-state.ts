import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { BookState } from '../../../core/contract/book.ts'
import { ask } from '../../bridge/client.ts'
import { jobStore, viewStore } from '../../state/app.ts'

/** A page about the book that stands on the table instead of a job. */
type BookPage = 'backups' | 'allJobs'

interface BookView {
  /** What the host said last; null before it was asked. */
  readonly book: BookState | null
  readonly page: BookPage | null
}

/** How often the host is asked whether the book is open and its backups succeed (ms). */
const betweenLooks = 15_000

export const bookViewStore = createStore<BookView>(() => ({ book: null, page: null }))

export function useBookView<Part>(pick: (view: BookView) => Part): Part {
  return useStore(bookViewStore, pick)
}

/** The page about the backups stands on the table: because somebody wants it, or because there is no open book. */
export function useBackupPage(): boolean {
  return useBookView(({ book, page }) => page === 'backups' || isShut(book))
}

export function isShut(book: BookState | null): boolean {
  return book !== null && book.shut !== null
}

/** Null is the job again. */
export function wantBookPage(page: BookPage | null): void {
  bookViewStore.setState({ page })
}

/** Asks the host how the book is; null where it does not answer. */
export async function refreshBook(): Promise<BookState | null> {
  const answer = await ask('bookState', {})
  if (!answer.ok) return null
  bookViewStore.setState({ book: answer.value })
  return answer.value
}

/** Hears that the book was shut or a backup failed: now and then, and at once when a request was refused for it. Answers how to stop. */
export function watchBookState(): () => void {
  const timer = window.setInterval(() => {
    if (document.visibilityState === 'visible') void refreshBook()
  }, betweenLooks)
  const stop = jobStore.store.subscribe(({ problem, trouble }, before) => {
    const isNew = problem !== before.problem || trouble !== before.trouble
    if (isNew && [problem?.kind, trouble?.problem.kind].includes('bookShut')) void refreshBook()
  })
  // Whoever turns to a station has left the page.
  const stopLooking = viewStore.subscribe(({ station }, before) => {
    if (station !== before.station) wantBookPage(null)
  })
  return () => {
    window.clearInterval(timer)
    stop()
    stopLooking()
  }
}
