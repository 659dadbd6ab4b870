import { ask, enterByCode } from '../bridge/client.ts'
import { jobStore, viewStore } from '../state/app.ts'
import { isShut, refreshBook } from './backups/book-state.ts'
import { openLast } from './job-book.ts'

/** Asks the host what it is and how its book is, and opens a job. */
export async function startUp(): Promise<void> {
  const entered = await enterByCode()
  if (!entered.ok) return jobStore.refuse(entered.problem)
  const facts = await ask('hostFacts', {})
  if (!facts.ok) return jobStore.refuse(facts.problem)
  viewStore.setState({ host: facts.value })
  const book = await refreshBook()
  // The page says what is so and what to do.
  if (book !== null && isShut(book)) return
  await openLast()
}
