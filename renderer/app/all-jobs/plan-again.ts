import { viewStore } from '../../state/app.ts'
import { wantBookPage } from '../backups/book-state.ts'
import { openJob } from '../job-book.ts'

/** Opens a job at its Calendar, where a plan around the other jobs of the book is looked for at once. */
export async function planAgain(jobKey: string): Promise<void> {
  await openJob(jobKey)
  viewStore.setState({ station: 'calendar' })
  wantBookPage(null)
}
