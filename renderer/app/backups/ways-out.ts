import type { BookState, WayOut } from '../../../core/contract/book.ts'
import type { Outcome } from '../../../core/project/problem.ts'
import { ask } from '../../bridge/client.ts'
import { jobStore } from '../../state/app.ts'
import { openLast, showOpened } from '../job-book.ts'
import { mayLeave } from '../leaving.ts'
import { bookViewStore, isShut, wantBookPage } from './book-state.ts'

/** Opens a backup in the book's place. What is on the page of an open book is brought into it first, and is set aside with it. */
export async function goBackTo(name: string): Promise<void> {
  if (!isShut(bookViewStore.getState().book) && !(await mayLeave())) return
  await afterExchange(await ask('goBackToBackup', { name }))
}

export async function leaveShutBook(way: WayOut): Promise<void> {
  await afterExchange(await ask('leaveShutBook', { way }))
}

/** A job that was on the page when its book was shut stays there with its edits, which go into the book that is open now. */
async function afterExchange(answer: Outcome<BookState>): Promise<void> {
  if (!answer.ok) return jobStore.refuse(answer.problem)
  const wasShut = isShut(bookViewStore.getState().book)
  bookViewStore.setState({ book: answer.value })
  if (answer.value.shut !== null) return
  wantBookPage(null)
  if (wasShut && jobStore.store.getState().job !== null) {
    await jobStore.storeNow()
    return
  }
  jobStore.close()
  await openLast()
}

/** Puts one job of a backup into the book and on the table. */
export async function bringJobBack(name: string, jobKey: string): Promise<void> {
  if (!(await mayLeave())) return
  const opened = await ask('bringJobBack', { name, jobKey })
  showOpened(opened)
  if (opened.ok) wantBookPage(null)
}
