import { createStore } from 'zustand/vanilla'
import { jobStore } from '../state/app.ts'
import { dropDrafts, pendingDrafts, takeDrafts } from '../state/drafts.ts'
import { pageTimer } from '../state/timer.ts'

export interface LeavingQuestion {
  /** What would be left: the job for another one, the desktop window for good, or the page, which the browser itself asks about. */
  readonly what: 'job' | 'window' | 'page'
  readonly answer: (may: boolean) => void
}

export const leavingStore = createStore<{ readonly question: LeavingQuestion | null }>(() => ({
  question: null,
}))

/** What is stored at once needs no question (ms). */
const shortWait = 1500

export function isEverythingStored(): boolean {
  return jobStore.store.getState().stored === 'stored' && pendingDrafts().length === 0
}

/** Stores what can be stored, and asks where something would be lost. */
export async function mayLeave(what: LeavingQuestion['what'] = 'job'): Promise<boolean> {
  if (leavingStore.getState().question !== null) return false
  await storeEverything()
  if (isEverythingStored()) return true
  return new Promise((resolve) => {
    const answer = (may: boolean) => {
      leavingStore.setState({ question: null })
      if (may && !isEverythingStored()) dropDrafts()
      resolve(may)
    }
    leavingStore.setState({ question: { what, answer } })
  })
}

/** Takes what is typed and sends what is not stored, waiting a moment for it. */
export async function storeEverything(): Promise<void> {
  takeDrafts()
  if (isEverythingStored()) return
  const waited = new Promise<void>((resolve) => pageTimer.after(shortWait, resolve))
  await Promise.race([jobStore.storeNow(), waited])
}

/** The user has said that the window may go. */
let isLeft = false

/**
 * Keeps the page from being closed with something unsent. A browser asks in its own words; a desktop window just stays, is asked about
 * here, and is closed from here. Answers how to stop.
 */
export function guardClosing(): () => void {
  window.addEventListener('beforeunload', onClosing)
  return () => window.removeEventListener('beforeunload', onClosing)
}

function onClosing(event: BeforeUnloadEvent): void {
  takeDrafts()
  if (isLeft || isEverythingStored()) return
  event.preventDefault()
  // Chromium before 119 goes by this alone.
  event.returnValue = 'not stored'
  const what = window.coatwright === undefined ? 'page' : 'window'
  pageTimer.after(0, () => void mayLeave(what).then((may) => may && what === 'window' && closeWindow()))
}

function closeWindow(): void {
  isLeft = true
  window.close()
}
